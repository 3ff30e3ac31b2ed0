/** DXF, polyline flavour: closed LWPOLYLINE of short lines, for machines that read no arcs. */
import { serialize } from '@jscad/dxf-serializer';
import { polygonise } from '../geometry/contour.ts';
import type { Contour, SheetPart } from '../model/sheet.ts';
import { bendLayersOf, bendMarksOf, CUT_LAYER, cutsOf, POLYLINE_CHORD_ERROR, roundCoordinate } from './dxf-cuts.ts';
import { type DxfTag, findTag, readTags, writeTags } from './dxf-tags.ts';

const UNMOVED = [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1];
/** Handles of the layers, in their order; the serializer counts its entities from CAD00001. */
const LAYER_HANDLES = ['CAD00000', 'CACFFFFF', 'CACFFFFE'];

/**
 * The DXF of a sheet part as text, in mm, release AC1027, every cut one closed run of lines on the layer CUT,
 * bend lines on layers of their own.
 * The outside is no larger and the holes are no smaller than drawn, by `chordError` mm at most. Same part,
 * same bytes.
 */
export function writeDxfPolyline(part: SheetPart, chordError = POLYLINE_CHORD_ERROR): string {
  const paths = cutsOf(part).map((cut, i) => {
    const side = i < part.holes.length ? 'outside' : 'inside';
    return { points: pointsOf(cut, chordError, side), isClosed: false, transforms: UNMOVED };
  });
  const marks = bendMarksOf(part);
  const bends = marks.map(({ x1, y1, x2, y2 }) => {
    const points: [number, number][] = [
      [x1, y1],
      [x2, y2],
    ];
    return { points, isClosed: false, transforms: UNMOVED };
  });
  const [text] = serialize({}, ...paths, ...bends);
  const tags = readTags(text).filter(([code]) => code !== 999);
  const layered = [CUT_LAYER, ...bendLayersOf(part)].reduce(withLayer, tags);
  return writeTags(withEntitiesOnLayers(layered, [...paths.map(() => CUT_LAYER), ...marks.map(({ layer }) => layer)]));
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

/** Adds a layer to the table, before layer 0 and after its example. */
function withLayer(tags: DxfTag[], name: string, index: number): DxfTag[] {
  const table = findTag(tags, 2, 'LAYER');
  const first = findTag(tags, 0, 'LAYER', table);
  const second = findTag(tags, 0, 'LAYER', first + 1);
  const layer = tags.slice(first, second).map(([code, value]): DxfTag => {
    if (code === 2) return [code, name];
    return code === 5 ? [code, LAYER_HANDLES[index] as string] : [code, value];
  });
  const count = findTag(tags, 0, 'LAYER', table) - 1;
  const counted = tags.map(
    ([code, value], i): DxfTag => (i === count ? [70, String(Number(value) + 1)] : [code, value]),
  );
  return [...counted.slice(0, second), ...layer, ...counted.slice(second)];
}

/**
 * Puts the entities on their layers and closes the cuts by their flag; bend lines stay open. The serializer would close a path by
 * writing its first point again, which is a cut of no length; and it gives each entity a group 3, which an LWPOLYLINE does not have.
 */
function withEntitiesOnLayers(tags: readonly DxfTag[], layers: readonly string[]): DxfTag[] {
  const start = findTag(tags, 2, 'ENTITIES');
  const end = findTag(tags, 0, 'ENDSEC', start);
  const entities = tags.slice(start, end).filter(([code]) => code !== 3);
  let index = -1;
  const placed = entities.map(([code, value]): DxfTag => {
    if (code === 0) index += 1;
    const layer = layers[index] ?? CUT_LAYER;
    if (code === 8) return [code, layer];
    return code === 70 ? [code, layer === CUT_LAYER ? '1' : '0'] : [code, value];
  });
  return [...tags.slice(0, start), ...placed, ...tags.slice(end)];
}
