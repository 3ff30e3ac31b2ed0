/** A narrow sheet that is filled from the top down, made to be read on a telephone as well as on paper. mm, y up, x from 0. */
import type { Pen, Point, Shape } from '../model/drawing.ts';
import { fittedLines } from './fitted-lines.ts';
import type { TextShape } from './text-size.ts';

/** Width of the sheet, and cap height of its letters: some fifty letters in a line. */
export const columnWidth = 100;
export const letter = 2.4;
/** Cap height of what is said beside: still some nine pixels of type on a telephone. */
export const smallLetter = 0.88 * letter;

/** Height of a line of text, in cap heights. */
const pitch = 1.75;

/** A text with its base line at a point. */
export const label = (at: Point, text: string, more: Partial<TextShape> = {}): Shape => ({
  kind: 'text',
  at,
  text,
  size: letter,
  align: 'start',
  angle: 0,
  ...more,
});

/** A bar from x to x, its upper edge at `top`. */
export function bar(
  from: number,
  to: number,
  top: number,
  high: number,
  look: Pick<Extract<Shape, { kind: 'path' }>, 'pen' | 'fill'> & { readonly feature?: string },
): Shape {
  const corners = [
    [from, top],
    [to, top],
    [to, top - high],
    [from, top - high],
  ] as const;
  return { kind: 'path', closed: true, loops: [corners.map(([x, y]) => ({ x, y, bulge: 0 }))], ...look };
}

export const stroke = (pen: Pen, from: Point, to: Point): Shape => ({ kind: 'line', pen, from, to });

/** Lines of text under each other; `y` is the height under the last one. */
export function paragraph(
  text: string,
  top: number,
  { size = letter, bold = false, x = 0, room = columnWidth, feature }: ParagraphLook = {},
): { readonly shapes: Shape[]; readonly y: number } {
  const lines = fittedLines(text, size, room, bold);
  const named = feature === undefined ? {} : { feature };
  return {
    shapes: lines.map((line, i) => label({ x, y: top - size - i * pitch * size }, line, { size, bold, ...named })),
    y: top - (lines.length - 1) * pitch * size - 1.45 * size,
  };
}

interface ParagraphLook {
  readonly size?: number;
  readonly bold?: boolean;
  readonly x?: number;
  readonly room?: number;
  readonly feature?: string;
}
