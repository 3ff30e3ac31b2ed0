/** Letters as pen strokes. The only file that names the stroke font. */
import text from '@jscad/modeling/src/text/index.js';

export type StrokePoint = readonly [number, number];

/**
 * Text as strokes about the middle of its ink: x to the right, y up, mm. Round ends of the pen are within the
 * sizes.
 */
export interface StrokeText {
  readonly strokes: readonly (readonly StrokePoint[])[];
  /** Width of the pen, mm. */
  readonly pen: number;
  /** Width of the ink, mm; 0 where there is none. */
  readonly width: number;
}

/**
 * Finest pen that a usual printer nozzle still shows, mm (common practice: a nozzle of 0.4 and half as much
 * again).
 */
const FINEST_PEN = 0.6;

/** Pen width of capitals of this height, mm: a sixth of it, but no finer than a printer can show. */
export function penWidth(height: number): number {
  return Math.max(FINEST_PEN, height / 6);
}

/**
 * Strokes of one line of text whose capitals stand `height` mm tall, pen included. Printable ASCII; anything
 * else becomes a question mark. Empty or blank text has no strokes. Throws a RangeError unless the height is
 * positive.
 */
export function strokeText(line: string, height: number): StrokeText {
  if (!(height > 0) || !Number.isFinite(height)) throw new RangeError(`letters need a positive height, not ${height}`);
  const pen = penWidth(height);
  const plain = [...line]
    .map((c) => (/[\x20-\x7e]/.test(c) ? c : '?'))
    .join('')
    .trim();
  if (plain === '') return { strokes: [], pen, width: 0 };
  const glyphs = text.vectorText({ input: plain, height: 1 });
  const capital = Math.max(
    ...text
      .vectorText({ input: 'H', height: 1 })
      .flat()
      .map((p) => p[1]),
  );
  // The pen takes half its width above and below; small letters keep half their height as a skeleton.
  const scale = Math.max(height - pen, height / 2) / capital;
  const xs = glyphs.flat().map((p) => p[0] * scale);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const strokes = glyphs.map((stroke) =>
    stroke.map(([x, y]): StrokePoint => [x * scale - (left + right) / 2, (y - capital / 2) * scale]),
  );
  return { strokes, pen, width: right - left + pen };
}

/** Width of the ink of a line of text whose capitals are `height` mm tall, mm. 0 for empty or blank text. */
export function textWidth(text: string, height: number): number {
  return strokeText(text, height).width;
}
