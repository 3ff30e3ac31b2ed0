/** How much room a text takes, guessed from the widest of the fonts that the writers name. */
import type { Point, Shape } from '../model/drawing.ts';
import { cos, sin } from '../units/trig.ts';

export type TextShape = Extract<Shape, { kind: 'text' }>;

export interface Box {
  readonly xMin: number;
  readonly yMin: number;
  readonly xMax: number;
  readonly yMax: number;
}

/** Rounded up from a wide sans-serif, so that a guess is never too small. */
function widthOf(character: string): number {
  if (/[iljI.,:;'|!]/.test(character)) return 0.46;
  if (/[ frt()[\]/-]/.test(character)) return 0.56;
  if (/[mwMW@%]/.test(character)) return 1.35;
  if (/[A-Z\u00d8\u2300=+<>~\u00b1]/.test(character)) return 1.08;
  return 0.88;
}

/** Few characters are written, and many times. */
const known = new Map<string, number>();

/** Width of a character as a share of the cap height. */
function advance(character: string): number {
  const width = known.get(character) ?? widthOf(character);
  known.set(character, width);
  return width;
}

/** Width of a text in mm at a cap height in mm. */
export function textWidth(text: string, size: number, bold = false): number {
  let sum = 0;
  for (const character of text) sum += advance(character);
  return sum * size * (bold ? 1.1 : 1);
}

/** Box round a text, mm, its angle taken into account. Descenders reach a third of the cap height below the base line. */
export function textBox(text: TextShape): Box {
  const width = textWidth(text.text, text.size, text.bold);
  const left = text.align === 'start' ? 0 : text.align === 'middle' ? -width / 2 : -width;
  const a = (text.angle * Math.PI) / 180;
  const [c, s] = [cos(a), sin(a)];
  let [xMin, yMin, xMax, yMax] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const along of [left, left + width]) {
    for (const up of [-0.3 * text.size, 1.05 * text.size]) {
      const x = text.at.x + along * c - up * s;
      const y = text.at.y + along * s + up * c;
      xMin = Math.min(xMin, x);
      yMin = Math.min(yMin, y);
      xMax = Math.max(xMax, x);
      yMax = Math.max(yMax, y);
    }
  }
  return { xMin, yMin, xMax, yMax };
}

/** Whether two boxes share any room; touching edges do not count. */
export const overlap = (a: Box, b: Box): boolean =>
  a.xMin < b.xMax && b.xMin < a.xMax && a.yMin < b.yMax && b.yMin < a.yMax;

/** Whether a line from `a` to `b` passes through a box; touching its edge does not count. */
export function passesThrough(a: Point, b: Point, box: Box): boolean {
  let from = 0;
  let to = 1;
  const spans = [
    [a.x, b.x, box.xMin, box.xMax],
    [a.y, b.y, box.yMin, box.yMax],
  ] as const;
  for (const [p, q, low, high] of spans) {
    if (p === q && (p <= low || p >= high)) return false;
    if (p === q) continue;
    from = Math.max(from, Math.min((low - p) / (q - p), (high - p) / (q - p)));
    to = Math.min(to, Math.max((low - p) / (q - p), (high - p) / (q - p)));
  }
  return to - from > 1e-9;
}

/** A box with `by` mm more room on each side. */
export const grown = (b: Box, by: number): Box => ({
  xMin: b.xMin - by,
  yMin: b.yMin - by,
  xMax: b.xMax + by,
  yMax: b.yMax + by,
});
