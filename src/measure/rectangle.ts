/** Four holes in a rectangle: the circle through them from two spacings, and a stated diagonal held against it. mm. */
import type { Lookup } from '../standards/table.ts';
import { found, missing } from '../standards/table.ts';
import type { Measured } from './measured.ts';
import { mm, withDoubt } from './words.ts';

/** Diagonal of a rectangle, which is the circle through its corners: sqrt(a^2 + b^2) (Pythagoras), with the doubts of both sides. */
export function rectangleCircle(a: Measured, b: Measured): Measured {
  const diagonal = Math.hypot(a.value, b.value);
  const doubt = (a.value * a.doubt + b.value * b.doubt) / diagonal;
  const basis = a.basis === 'repeated' && b.basis === 'repeated' ? 'repeated' : a.basis;
  return { value: Number(diagonal.toFixed(9)), doubt: Number(doubt.toFixed(9)), basis };
}

/** The rectangle's circle when a measured or quoted diagonal agrees with it; else a sentence with both numbers. */
export function checkDiagonal(a: Measured, b: Measured, diagonal: Measured): Lookup<Measured> {
  const circle = rectangleCircle(a, b);
  const off = diagonal.value - circle.value;
  if (Math.abs(off) <= circle.doubt + diagonal.doubt) return found(circle);
  return missing(
    `Spacings of ${mm(a.value)} and ${mm(b.value)} give a circle of ${withDoubt(circle.value, circle.doubt)}, but the diagonal was given as ${mm(diagonal.value)}: ${mm(Math.abs(off), 2)} apart. One of the three is wrong, or the holes are no rectangle.`,
  );
}
