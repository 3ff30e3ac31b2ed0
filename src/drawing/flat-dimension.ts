/** A level dimension line under a view. mm, in drawing coordinates. */
import type { Shape } from '../model/drawing.ts';
import { arrowHead } from './dimension.ts';
import { textWidth } from './text-size.ts';

export interface LevelSpan {
  readonly left: number;
  readonly right: number;
  /** Height of the dimension line, and of the edges that it measures. */
  readonly y: number;
  readonly from: number;
}

/** A level dimension with its text above the line; beside it, to the right, where the text is longer than the line. */
export function flatDimension({ left, right, y, from }: LevelSpan, text: string, size: number): Shape[] {
  const over = y < from ? -0.8 * size : 0.8 * size;
  const isTight = right - left < 3 * size;
  const fits = textWidth(text, size, true) < right - left - size;
  const tips = [
    { at: left, way: 180 },
    { at: right, way: 0 },
  ];
  return [
    ...tips.map(
      ({ at }): Shape => ({ kind: 'line', pen: 'dimension', from: { x: at, y: from }, to: { x: at, y: y + over } }),
    ),
    {
      kind: 'line',
      pen: 'dimension',
      from: { x: isTight ? left - 2.4 * size : left, y },
      to: { x: isTight ? right + 2.4 * size : right, y },
    },
    ...tips.map(({ at, way }) => arrowHead({ x: at, y }, isTight ? way + 180 : way, size)),
    {
      kind: 'text',
      at: { x: fits ? (left + right) / 2 : right + (isTight ? 3 : 1) * size, y: fits ? y + 0.5 * size : y - size / 2 },
      text,
      size,
      align: fits ? 'middle' : 'start',
      angle: 0,
      bold: true,
    },
  ];
}
