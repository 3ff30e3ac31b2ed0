/** A plot with its axes, in drawing mm: where a value comes to stand, its frame and marks, and a curve in it. */
import type { Pen, Point, Shape } from '../model/drawing.ts';

/** Where a plot lies, and what its edges stand for. */
export interface PanelSize {
  readonly left: number;
  readonly top: number;
  readonly wide: number;
  readonly high: number;
  readonly from: number;
  readonly to: number;
  readonly low: number;
  readonly most: number;
}

export interface Panel extends PanelSize {
  /** Height of the lower edge. */
  readonly floor: number;
  /** Where a value stands on the sheet. */
  at(x: number, y: number): Point;
}

export function panel(sizes: PanelSize): Panel {
  const { left, top, wide, high, from, to, low, most } = sizes;
  return {
    ...sizes,
    floor: top - high,
    at: (x, y) => ({ x: left + (wide * (x - from)) / (to - from), y: top - high + (high * (y - low)) / (most - low) }),
  };
}

/** The next of 1, 2, 5, 10 ... at or above a number more than 0. */
export function niceAbove(least: number): number {
  const decade = 10 ** Math.floor(Math.log10(least));
  const step = [1, 2, 5, 10].map((m) => m * decade).find((one) => one >= least * (1 - 1e-9));
  return Number((step ?? 10 * decade).toPrecision(1));
}

/** A number as short as it may be. */
const short = (value: number): string => String(Number(value.toPrecision(3)));

/** The frame, marks along the bottom, and the least, middle and greatest value at the side. */
export function panelFrame(
  view: Panel,
  marks: readonly number[],
  marked: (x: number) => string,
  unit: string,
  size: number,
  numbered = true,
): Shape[] {
  const { left, top, wide, floor, low, most } = view;
  const corners = [
    [left, floor],
    [left + wide, floor],
    [left + wide, top],
    [left, top],
  ].map(([x, y]) => ({ x: x as number, y: y as number, bulge: 0 }));
  const heights = low < 0 ? [low, 0, most] : [low, most / 2 < low ? (low + most) / 2 : most / 2, most];
  const small = 0.85 * size;
  return [
    { kind: 'path', pen: 'dimension', fill: 'none', closed: true, loops: [corners] },
    ...marks.flatMap((mark): Shape[] => {
      const { x } = view.at(mark, low);
      return [
        { kind: 'line', pen: 'dimension', from: { x, y: floor }, to: { x, y: floor - 1 } },
        {
          kind: 'text',
          at: { x, y: floor - 1.9 - small },
          text: marked(mark),
          size: small,
          align: 'middle',
          angle: 0,
        },
      ];
    }),
    ...(numbered
      ? heights.flatMap((height): Shape[] => {
          const { y } = view.at(view.from, height);
          return [
            { kind: 'line', pen: 'dimension', from: { x: left - 1, y }, to: { x: left, y } },
            {
              kind: 'text',
              at: { x: left - 1.6, y: y - small / 2 },
              text: short(height),
              size: small,
              align: 'end',
              angle: 0,
            },
          ];
        })
      : []),
    {
      kind: 'text',
      at: { x: left - 14, y: (top + floor) / 2 },
      text: unit,
      size: small,
      align: 'middle',
      angle: 90,
    },
  ];
}

/** How far a curve may be drawn from where it is, mm on the sheet. */
const drawnWithin = 0.03;

/** A curve through points, in order; those that lie on the line between their neighbours are left out. */
export function plotted(
  view: Panel,
  points: readonly { readonly degrees: number; readonly value: number }[],
  pen: Pen,
): Shape {
  // Held to a thousandth of a mm, so that the last bit of a sine decides neither a point nor a place.
  const held = (length: number) => Math.round(length * 1e3 + 1e-4) / 1e3;
  const all = points.map(({ degrees, value }) => {
    const { x, y } = view.at(degrees, value);
    return { x: held(x), y: held(y) };
  });
  const loop = needed(all).map(({ x, y }) => ({ x, y, bulge: 0 }));
  return { kind: 'path', pen, fill: 'none', closed: false, loops: [loop] };
}

/** The points that a line within `drawnWithin` needs: from the ends inwards, the farthest one off at a time (Douglas and Peucker). */
function needed(points: readonly Point[]): Point[] {
  const keep = new Set([0, points.length - 1]);
  const spans: [number, number][] = [[0, points.length - 1]];
  for (let span = spans.pop(); span !== undefined; span = spans.pop()) {
    const [from, to] = span;
    let [far, at] = [drawnWithin, -1];
    for (let k = from + 1; k < to; k++) {
      const off = offLine(points[k] as Point, points[from] as Point, points[to] as Point);
      if (off > far + 1e-9) [far, at] = [off, k];
    }
    if (at < 0) continue;
    keep.add(at);
    spans.push([from, at], [at, to]);
  }
  return points.filter((_, k) => keep.has(k));
}

function offLine(p: Point, a: Point, b: Point): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const length = Math.hypot(dx, dy);
  if (length === 0) return Math.hypot(p.x - a.x, p.y - a.y);
  return Math.abs(dx * (p.y - a.y) - dy * (p.x - a.x)) / length;
}
