/** What every DXF flavour writes: the cuts of a sheet part, rounded, in cutting order, on one layer; bend lines on their own. */
import { stretchesOf } from '../geometry/contour.ts';
import type { Contour, ContourVertex, SheetPart } from '../model/sheet.ts';
import { cos, sin, tan } from '../units/trig.ts';

/** The layer of everything that is cut. */
export const CUT_LAYER = 'CUT';

/** The layers of the bends' middle lines, by the way the sheet folds; only on parts that are bent. */
export const BEND_LAYERS = { up: 'BEND_UP', down: 'BEND_DOWN' } as const;

/** Colours of the layers, by the numbers that every reader knows: white, green, blue. */
export const LAYER_COLOURS = { CUT: 7, BEND_UP: 3, BEND_DOWN: 5 } as const;

/** Largest distance between a short line and the curve that it stands for, mm, in the flavour without arcs. */
export const POLYLINE_CHORD_ERROR = 0.01;

/** A coordinate in mm, rounded to 1e-6: never "-0", never an exponent (below 1e15 mm). */
export function roundCoordinate(value: number): number {
  return Math.round(value * 1e6) / 1e6 + 0;
}

/**
 * A bulge, rounded to 1e-9 so that the arc keeps its place to 1e-6 mm even on a long chord. Bulges under 1e-6
 * become straight: they rise by 5e-7 mm on a 1 mm chord.
 */
export function roundBulge(value: number): number {
  return Math.abs(value) < 1e-6 ? 0 : Math.round(value * 1e9) / 1e9;
}

/**
 * The closed cuts of a part with rounded numbers: holes first, the outside last, so that the part is held
 * while its holes are cut. Arcs of more than half a turn become two alike: the wider an arc, the more a
 * rounding of its ends moves its middle. Corners that rounding has laid on one another become one.
 */
export function cutsOf(part: SheetPart): Contour[] {
  return [...part.holes, part.outside].map((contour): Contour => {
    const { feature } = contour;
    if (contour.kind === 'path') return { kind: 'path', feature, vertices: withoutEmpty(roundedVertices(contour)) };
    const { x, y, r } = contour;
    return { kind: 'circle', feature, x: roundCoordinate(x), y: roundCoordinate(y), r: roundCoordinate(r) };
  });
}

/** A bend's middle line on its layer, rounded. */
export interface BendMark {
  readonly layer: 'BEND_UP' | 'BEND_DOWN';
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

/** The bends of a part as lines to mark; none on a part that stays flat. */
export function bendMarksOf(part: SheetPart): BendMark[] {
  return (part.bends ?? []).map(({ from, to, direction }) => ({
    layer: BEND_LAYERS[direction],
    x1: roundCoordinate(from.x),
    y1: roundCoordinate(from.y),
    x2: roundCoordinate(to.x),
    y2: roundCoordinate(to.y),
  }));
}

/** The layers that a part's bends need, each once. */
export function bendLayersOf(part: SheetPart): BendMark['layer'][] {
  return [...new Set(bendMarksOf(part).map(({ layer }) => layer))];
}

function roundedVertices(contour: Contour): ContourVertex[] {
  return stretchesOf(contour).flatMap((stretch): ContourVertex[] => {
    const corner = (x: number, y: number, sweep: number): ContourVertex => {
      return { x: roundCoordinate(x), y: roundCoordinate(y), bulge: roundBulge(tan(sweep / 4)) };
    };
    if (stretch.kind === 'line') return [corner(stretch.x1, stretch.y1, 0)];
    const { x1, y1, x, y, r, start, sweep } = stretch;
    if (Math.abs(sweep) <= Math.PI + 1e-9) return [corner(x1, y1, sweep)];
    const middle = start + sweep / 2;
    return [corner(x1, y1, sweep / 2), corner(x + r * cos(middle), y + r * sin(middle), sweep / 2)];
  });
}

/**
 * A corner whose stretch has lost its length goes; the stretch of the next corner starts at the same place.
 */
function withoutEmpty(vertices: readonly ContourVertex[]): ContourVertex[] {
  return vertices.filter((v, i) => {
    const next = vertices[(i + 1) % vertices.length] ?? v;
    return v.x !== next.x || v.y !== next.y;
  });
}
