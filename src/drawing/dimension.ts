/** Dimension lines, arrows and centre marks. All sizes in mm, in drawing coordinates. */
import type { Point, Shape } from '../model/drawing.ts';
import { cos, sin } from '../units/trig.ts';
import { textWidth } from './text-size.ts';

/** An open arrow head with its tip at `tip`, pointing in `direction` degrees (ISO 129-1 allows open ones; they need no fill). */
export function arrowHead(tip: Point, direction: number, size: number): Shape {
  const a = (direction * Math.PI) / 180;
  const back = (off: number): Point => ({
    x: tip.x - 1.1 * size * cos(a) - off * size * sin(a),
    y: tip.y - 1.1 * size * sin(a) + off * size * cos(a),
  });
  return {
    kind: 'path',
    pen: 'dimension',
    fill: 'none',
    closed: false,
    loops: [[back(0.28), tip, back(-0.28)].map((p) => ({ x: p.x, y: p.y, bulge: 0 }))],
  };
}

/** Whether an upright dimension's text is longer than the dimension, so that it has to lie flat beside it. */
const liesFlat = (height: number, text: string, size: number): boolean =>
  textWidth(text, size, true) > height - 0.6 * size;

/** Room that an upright dimension takes beside the part, mm, from the part's outside to its line. */
export const dimensionWidth = (height: number, text: string, size: number): number =>
  liesFlat(height, text, size) ? textWidth(text, size, true) + 1.6 * size : 3.2 * size;

/** An upright dimension between two heights at `x`, with extension lines from `from`; its text stands on the part's side, turned when there is height for it. */
export function uprightDimension(
  heights: { readonly low: number; readonly high: number },
  x: number,
  from: number,
  text: string,
  size: number,
): Shape[] {
  const over = x > from ? 0.8 * size : -0.8 * size;
  const tight = heights.high - heights.low < 2.6 * size;
  const reach = 2.4 * size;
  const lines: Shape[] = [heights.low, heights.high].map((y) => ({
    kind: 'line',
    pen: 'dimension',
    from: { x: from, y },
    to: { x: x + over, y },
  }));
  const low = { x, y: heights.low };
  const high = { x, y: heights.high };
  if (tight) {
    lines.push(
      { kind: 'line', pen: 'dimension', from: { x, y: low.y - reach }, to: { x, y: high.y + reach } },
      arrowHead(low, 90, size),
      arrowHead(high, -90, size),
    );
  } else {
    lines.push(
      { kind: 'line', pen: 'dimension', from: low, to: high },
      arrowHead(low, -90, size),
      arrowHead(high, 90, size),
    );
  }
  const middle = (low.y + high.y) / 2;
  const flat = {
    // Where not even a line of text fits between the extension lines, it stands above them.
    at: {
      x: x > from ? x - 0.7 * size : x + 0.7 * size,
      y: high.y - low.y < 1.9 * size ? high.y + 0.6 * size : middle - size / 2,
    },
    align: x > from ? 'end' : 'start',
    angle: 0,
  } as const;
  const turned = {
    at: { x: x > from ? x - 0.6 * size : x + 1.5 * size, y: middle },
    align: 'middle',
    angle: 90,
  } as const;
  const place = liesFlat(high.y - low.y, text, size) ? flat : turned;
  lines.push({ kind: 'text', text, size, bold: true, ...place });
  return lines;
}

/** An angle from `start` to `end` degrees (counter-clockwise) at radius `r` about the origin, with arrows at both ends. */
export function angleArc(start: number, end: number, r: number, size: number): Shape[] {
  const tip = (degrees: number): Point => ({
    x: r * cos((degrees * Math.PI) / 180),
    y: r * sin((degrees * Math.PI) / 180),
  });
  // An arrow on a curve leans inwards by half of the arc that it covers.
  const lean = ((1.1 * size) / r / 2) * (180 / Math.PI);
  return [
    { kind: 'arc', pen: 'dimension', centre: { x: 0, y: 0 }, r, start, end },
    arrowHead(tip(start), start - 90 + lean, size),
    arrowHead(tip(end), end + 90 - lean, size),
  ];
}

/** A cross of centre lines through `centre`, reaching `reach` mm each way. */
export function centreCross(centre: Point, reach: number): Shape[] {
  return [
    {
      kind: 'line',
      pen: 'centre',
      from: { x: centre.x - reach, y: centre.y },
      to: { x: centre.x + reach, y: centre.y },
    },
    {
      kind: 'line',
      pen: 'centre',
      from: { x: centre.x, y: centre.y - reach },
      to: { x: centre.x, y: centre.y + reach },
    },
  ];
}

/** The short radial and tangential strokes that mark a hole's centre on its bolt circle. */
export function holeCentre(hole: Point, reach: number): Shape[] {
  const d = Math.hypot(hole.x, hole.y);
  if (d < 1e-9) return [];
  const ux = (hole.x / d) * reach;
  const uy = (hole.y / d) * reach;
  return [
    {
      kind: 'line',
      pen: 'thin',
      from: { x: hole.x - ux, y: hole.y - uy },
      to: { x: hole.x + ux, y: hole.y + uy },
    },
    {
      kind: 'line',
      pen: 'thin',
      from: { x: hole.x + uy, y: hole.y - ux },
      to: { x: hole.x - uy, y: hole.y + ux },
    },
  ];
}
