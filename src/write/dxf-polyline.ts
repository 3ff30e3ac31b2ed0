/** DXF, polyline flavour: closed LWPOLYLINE of short lines, for machines that read no arcs. */
import { serialize } from '@jscad/dxf-serializer';
import { polygonise } from '../geometry/contour.ts';
import type { Contour, SheetPart } from '../model/sheet.ts';
import { CUT_LAYER, cutsOf, POLYLINE_CHORD_ERROR, roundCoordinate } from './dxf-cuts.ts';
import { type DxfTag, findTag, readTags, writeTags } from './dxf-tags.ts';

const UNMOVED = [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1];
/** Handle of the layer; the serializer counts its entities from ...1. */
const LAYER_HANDLE = 'CAD00000';

/**
 * The DXF of a sheet part as text, in mm, release AC1027, every cut one closed run of lines on the layer CUT.
 * The outside is no larger and the holes are no smaller than drawn, by `chordError` mm at most. Same part,
 * same bytes.
 */
export function writeDxfPolyline(part: SheetPart, chordError = POLYLINE_CHORD_ERROR): string {
  const paths = cutsOf(part).map((cut, i) => {
    const side = i < part.holes.length ? 'outside' : 'inside';
    return { points: pointsOf(cut, chordError, side), isClosed: false, transforms: UNMOVED };
  });
  const [text] = serialize({}, ...paths);
  const tags = readTags(text).filter(([code]) => code !== 999);
  return writeTags(withEntitiesOnLayer(withLayer(tags)));
}

/** Rounded corners, none twice in a row. */
function pointsOf(cut: Contour, chordError: number, side: 'inside' | 'outside'): [number, number][] {
  const all = polygonise(cut, chordError, side).map(([x, y]): [number, number] => {
    return [roundCoordinate(x), roundCoordinate(y)];
  });
  return all.filter(([x, y], i) => {
    const [nextX, nextY] = all[(i + 1) % all.length] ?? [x, y];
    return x !== nextX || y !== nextY;
  });
}

/** Adds the layer to the table, before layer 0 and after its example. */
function withLayer(tags: readonly DxfTag[]): DxfTag[] {
  const table = findTag(tags, 2, 'LAYER');
  const first = findTag(tags, 0, 'LAYER', table);
  const second = findTag(tags, 0, 'LAYER', first + 1);
  const layer = tags.slice(first, second).map(([code, value]): DxfTag => {
    if (code === 2) return [code, CUT_LAYER];
    return code === 5 ? [code, LAYER_HANDLE] : [code, value];
  });
  const count = findTag(tags, 0, 'LAYER', table) - 1;
  const counted = tags.map(
    ([code, value], i): DxfTag => (i === count ? [70, String(Number(value) + 1)] : [code, value]),
  );
  return [...counted.slice(0, second), ...layer, ...counted.slice(second)];
}

/**
 * Puts the entities on the layer and closes them by their flag. The serializer would close a path by writing
 * its first point again, which is a cut of no length; and it gives each entity a group 3, which an LWPOLYLINE
 * does not have.
 */
function withEntitiesOnLayer(tags: readonly DxfTag[]): DxfTag[] {
  const start = findTag(tags, 2, 'ENTITIES');
  const end = findTag(tags, 0, 'ENDSEC', start);
  const entities = tags.slice(start, end).filter(([code]) => code !== 3);
  const closed = entities.map(([code, value]): DxfTag => {
    if (code === 8) return [code, CUT_LAYER];
    return code === 70 ? [code, '1'] : [code, value];
  });
  return [...tags.slice(0, start), ...closed, ...tags.slice(end)];
}
