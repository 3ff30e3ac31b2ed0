/**
 * Lengths of arrows, held against squares added in whole numbers, which round nothing: Pythagoras, with no code shared. And against the
 * corners that ECMA-262 names for its own function.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hypot, hypot3 } from '../../src/units/hypot.ts';

/** Root of a whole number, rounded down. Newton's rule. */
function root(of: bigint): bigint {
  if (of < 2n) return of;
  let x = 1n << BigInt((of.toString(2).length + 1) >> 1);
  for (;;) {
    const next = (x + of / x) >> 1n;
    if (next >= x) return x;
    x = next;
  }
}

/** Digits of the root beyond the whole number, so that nothing is lost beside a double's own. */
const finer = 2n ** 80n;

/** Length by whole numbers, rounded once. */
function exactly(...parts: readonly number[]): number {
  const squares = parts.reduce((sum, part) => sum + BigInt(part) ** 2n, 0n);
  return Number(root(squares * finer * finer)) / Number(finer);
}

const whole = fc.integer({ min: -(2 ** 40), max: 2 ** 40 });
/** Two units in the last place. */
const near = (value: number) => 2 ** -51 * value;

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

  it('is the root of the squares to two units in the last place', () => {
    fc.assert(
      fc.property(whole, whole, whole, (x, y, z) => {
        expect(Math.abs(hypot(x, y) - exactly(x, y))).toBeLessThanOrEqual(near(exactly(x, y)));
        expect(Math.abs(hypot3(x, y, z) - exactly(x, y, z))).toBeLessThanOrEqual(near(exactly(x, y, z)));
      }),
    );
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
