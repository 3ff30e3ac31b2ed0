/**
 * DXF, r12 flavour: closed POLYLINE with true bulges and CIRCLE, for old controllers that know nothing newer.
 */
import makerjs from 'makerjs';
import { type Stretch, stretchesOf } from '../geometry/contour.ts';
import type { Contour, SheetPart } from '../model/sheet.ts';
import {
  bendLayersOf,
  bendMarksOf,
  CUT_LAYER,
  cutsOf,
  LAYER_COLOURS,
  roundBulge,
  roundCoordinate,
} from './dxf-cuts.ts';
import { type DxfTag, findTag, readTags, writeTags } from './dxf-tags.ts';

/** Ends nearer than this, mm, are joined into one chain: far below any stretch, far above rounding. */
const JOIN = 1e-5;
/** Numbers are written to this step: fine enough for bulges, coarse enough to need no exponent. */
const STEP = 1e-9;

/**
 * The DXF of a sheet part as text, in mm, on the layer CUT. The release has no units of its own; the header
 * carries `$INSUNITS` for readers that look. Same part, same bytes.
 */
export function writeDxfR12(part: SheetPart): string {
  const models: Record<string, makerjs.IModel> = {};
  cutsOf(part).forEach((cut, i) => {
    models[`cut${i}`] = { layer: CUT_LAYER, paths: pathsOf(cut) };
  });
  bendMarksOf(part).forEach(({ layer, x1, y1, x2, y2 }, i) => {
    models[`bend${i}`] = { layer, paths: { line: new makerjs.paths.Line([x1, y1], [x2, y2]) } };
  });
  const layers = [CUT_LAYER, ...bendLayersOf(part)] as const;
  const text = makerjs.exporter.toDXF(
    { models, units: makerjs.unitType.Millimeter },
    {
      usePOLYLINE: true,
      accuracy: STEP,
      pointMatchingDistance: JOIN,
      layerOptions: Object.fromEntries(layers.map((layer) => [layer, { color: LAYER_COLOURS[layer] }])),
    },
  );
  return writeTags(tidied(readTags(text)));
}

/** States the release, rounds the numbers once more, and puts the end mark of each chain on its layer. */
function tidied(tags: readonly DxfTag[]): DxfTag[] {
  const header = findTag(tags, 2, 'HEADER') + 1;
  const entities = findTag(tags, 2, 'ENTITIES');
  const body = tags.slice(header).flatMap(([code, value], i): DxfTag[] => {
    if (header + i < entities) return [[code, value]];
    if (code === 10 || code === 20 || code === 40) return [[code, String(roundCoordinate(Number(value)))]];
    if (code === 42) return [[code, String(roundBulge(Number(value)))]];
    return value === 'SEQEND'
      ? [
          [code, value],
          [8, CUT_LAYER],
        ]
      : [[code, value]];
  });
  return [...tags.slice(0, header), [9, '$ACADVER'], [1, 'AC1009'], ...body];
}

function pathsOf(cut: Contour): Record<string, makerjs.IPath> {
  if (cut.kind === 'circle') return { circle: new makerjs.paths.Circle([cut.x, cut.y], cut.r) };
  return Object.fromEntries(stretchesOf(cut).map((stretch, i) => [`s${i}`, pathOf(stretch)]));
}

function pathOf(stretch: Stretch): makerjs.IPath {
  if (stretch.kind === 'line') {
    return new makerjs.paths.Line([stretch.x1, stretch.y1], [stretch.x2, stretch.y2]);
  }
  // Arcs run counter-clockwise there, from start to end in degrees.
  const degrees = 180 / Math.PI;
  const start = (stretch.sweep > 0 ? stretch.start : stretch.start + stretch.sweep) * degrees;
  const turn = Math.abs(stretch.sweep) * degrees;
  return new makerjs.paths.Arc([stretch.x, stretch.y], stretch.r, start, start + turn);
}
