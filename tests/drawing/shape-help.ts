/** Looking at a drawing's shapes. */
import { expect } from 'vitest';
import { overlap, type TextShape, textBox } from '../../src/drawing/text-size.ts';
import type { Drawing, Shape } from '../../src/model/drawing.ts';

const isText = (shape: Shape): shape is TextShape => shape.kind === 'text';

/** What is written, in order. */
export const texts = (shapes: readonly Shape[]): string[] => shapes.filter(isText).map(({ text }) => text);

/** No two texts over each other. */
export function expectApart({ shapes }: Drawing): void {
  const all = shapes.filter(isText);
  all.forEach((a, i) => {
    for (const b of all.slice(i + 1))
      expect(overlap(textBox(a), textBox(b)), `"${a.text}" lies over "${b.text}"`).toBe(false);
  });
}

/** Box round the corners of a path. */
export function pathBox({ loops }: Extract<Shape, { kind: 'path' }>) {
  const xs = loops.flat().map(({ x }) => x);
  const ys = loops.flat().map(({ y }) => y);
  return { xMin: Math.min(...xs), xMax: Math.max(...xs), yMin: Math.min(...ys), yMax: Math.max(...ys) };
}
