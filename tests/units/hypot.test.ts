/**
 * Lengths of arrows, held against Euclid's whole-numbered triangles, and against the corners that ECMA-262 names for its own function.
 */
import { describe, expect, it } from 'vitest';
import { hypot, hypot3 } from '../../src/units/hypot.ts';

/** Pythagorean pairs and boxes from two and three whole numbers (Euclid's form): their lengths are whole, and nothing is rounded. */
const pairOf = (m: number, n: number) => [m * m - n * n, 2 * m * n, m * m + n * n] as const;

describe('hypot', () => {
  it('gives whole numbers where Pythagoras does', () => {
    for (const [a, b, c] of [
      [3, 4, 5],
      [5, 12, 13],
      [-8, 15, 17],
      [0, -7, 7],
    ] as const)
      expect(hypot(a, b)).toBe(c);
    expect(hypot3(2, -3, 6)).toBe(7);
    expect(hypot3(1, 4, 8)).toBe(9);
  });

  it("is exact to a unit in the last place along Euclid's pairs", () => {
    for (let m = 2; m < 300; m += 7)
      for (let n = 1; n < m; n += 5) {
        const [a, b, c] = pairOf(m, n);
        expect(Math.abs(hypot(a, b) - c)).toBeLessThanOrEqual(c * 2 ** -51);
        // The same length with a leg laid across it once more.
        expect(Math.abs(hypot3(a, b, 0) - c)).toBeLessThanOrEqual(c * 2 ** -51);
      }
  });

  it('overflows and vanishes only where the length does', () => {
    const [great, small] = [2 ** 1000, 2 ** -1000];
    expect(hypot(3 * great, 4 * great)).toBe(5 * great);
    expect(hypot(3 * small, 4 * small)).toBe(5 * small);
    expect(hypot3(2 * small, 3 * small, 6 * small)).toBe(7 * small);
  });

  it('answers what is not a number, and what has no end, as the language does', () => {
    for (const odd of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0, -0])
      for (const other of [1, 0, Number.NaN, Number.NEGATIVE_INFINITY]) {
        const wanted = [odd, other].some((part) => Math.abs(part) === Number.POSITIVE_INFINITY)
          ? Number.POSITIVE_INFINITY
          : Number.isNaN(odd + other)
            ? Number.NaN
            : Math.abs(odd + other);
        expect(hypot(odd, other)).toBe(wanted);
        expect(hypot(other, odd)).toBe(wanted);
        expect(hypot3(odd, 0, other)).toBe(wanted);
      }
  });
});
