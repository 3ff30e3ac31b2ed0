/** Dimensions on a section: diameters in upright columns beside the part, lengths above or below it. mm of paper. */
import type { Shape } from '../../model/drawing.ts';
import { arrowHead } from '../dimension.ts';
import { textWidth } from '../text-size.ts';
import { cap, line, text } from './shapes.ts';
import { balloon, balloonRadius } from './symbols.ts';

const arrow = 2.2;
/** Extension lines end this far past the dimension line: less than where its text begins. */
const over = 0.6;
const gap = 1;

/** A diameter to be set beside the part. */
export interface DiameterToSet {
  readonly id: string;
  /** On paper. */
  readonly across: number;
  /** Where its extension lines start, x. */
  readonly from: number;
  /** One line, or the larger limit over the smaller one. */
  readonly lines: readonly string[];
  readonly number: number | null;
}

export const columnWidth = 12;
/** No letters are smaller than this, mm. */
const least = 1.3;

/** Room along the line that the text of a diameter takes, with its balloon. */
export const roomOf = ({ lines, number }: DiameterToSet, size: number = cap.size): number =>
  Math.max(...lines.map((words) => textWidth(words, size))) + (number === null ? 0 : 1 + 2 * balloonRadius);

/**
 * A diameter on an upright line at x, centred on the axis. The text stands on the outer side, where no extension line of its own passes.
 * @param way -1: left of the part, 1: right of it
 * @param past half of the next larger diameter, whose extension lines pass the text by
 */
export function diameterColumn(set: DiameterToSet, x: number, way: -1 | 1, past: number): Shape[] {
  const half = set.across / 2;
  const room = Math.max(6, Math.max(2 * Math.min(half, past) - 2, half + past - 1.6));
  // Only the letters shrink: the balloon keeps its size.
  const letters = Math.max(...set.lines.map((one) => textWidth(one, 1)));
  const size = Math.min(cap.size, Math.max(least, (room - roomOf(set, 0)) / letters));
  const whole = roomOf(set, size);
  const words = set.lines.map((words) => textWidth(words, size));
  // Longer than the diameter, it reaches up only: from below hang datums and tolerance frames.
  const low = Math.max(-whole / 2, -half + 0.6);
  const middle = low + Math.max(...words) / 2;
  const pitch = 1.42 * size;
  // Turned texts are read from the right: their tops look left.
  const first = way === -1 ? x - 0.8 - 0.3 * size - (set.lines.length - 1) * pitch : x + 0.8 + 1.05 * size;
  const ends = [half, -half].map((y) => line({ x: set.from + way * gap, y }, { x: x + way * over, y }));
  const inside = set.across > 2.6 * arrow;
  const outward = inside ? [] : [line({ x, y: half }, { x, y: half + 5 }), line({ x, y: -half }, { x, y: -half - 5 })];
  return [
    ...ends,
    ...outward,
    line({ x, y: -half }, { x, y: half }),
    arrowHead({ x, y: half }, inside ? 90 : -90, arrow),
    arrowHead({ x, y: -half }, inside ? -90 : 90, arrow),
    ...set.lines.map((line, i) =>
      text(line, { x: first + i * pitch, y: middle }, size, { align: 'middle', angle: 90 }),
    ),
    ...(set.number === null
      ? []
      : balloon(set.number, { x: x + way * (0.9 + balloonRadius), y: low + whole - balloonRadius })),
  ];
}

/** A level length between x0 < x1 at height y; its extension lines start at the given heights. The text stands over the line, else beside it. */
export function levelLength(
  [x0, x1]: readonly [number, number],
  y: number,
  starts: readonly [number, number],
  words: string,
  number: number | null,
  out: -1 | 1,
): Shape[] {
  const width = textWidth(words, cap.size);
  const span = x1 - x0;
  const up = y > starts[0] ? 1 : -1;
  const ends = [x0, x1].map((x, i) => line({ x, y: (starts[i] as number) + up * gap }, { x, y: y + up * over }));
  const inside = span > 3 * arrow;
  const within = span > width + 1.2;
  const edge = out === 1 ? x1 : x0;
  const marks = [arrowHead({ x: x0, y }, inside ? 180 : 0, arrow), arrowHead({ x: x1, y }, inside ? 0 : 180, arrow)];
  const start = within ? (x0 + x1 - width) / 2 : out === 1 ? x1 + 5 : x0 - 5 - width;
  const far = out === 1 ? start + width : start;
  const tail = within ? (inside ? edge : edge + out * 5) : far + out * 0.6;
  const lines = [
    line(
      { x: Math.min(x0, out === -1 ? tail : x0 - (inside ? 0 : 5)), y },
      { x: Math.max(x1, out === 1 ? tail : x1 + (inside ? 0 : 5)), y },
    ),
  ];
  const at =
    number === null ? [] : balloon(number, { x: (within && inside ? edge : tail) + out * (balloonRadius + 0.8), y });
  return [...ends, ...lines, ...marks, text(words, { x: start, y: y + 0.8 + 0.3 * cap.size }, cap.size), ...at];
}
