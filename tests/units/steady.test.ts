/** Ties do not hang on the last bit of a sine. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { steadyFixed } from '../../src/units/steady.ts';

describe('steady decimals', () => {
  it('gives a tie and its neighbours on both sides the same text', () => {
    fc.assert(
      fc.property(fc.integer({ min: -10_000, max: 10_000 }), (n) => {
        const tie = (2 * n + 1) / 20;
        const ulp = Math.abs(tie) * 2 ** -52;
        const texts = [tie - ulp, tie, tie + ulp].map((value) => steadyFixed(value, 1));
        expect(new Set(texts).size).toBe(1);
      }),
    );
  });

  it('is ordinary rounding everywhere else', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e5, max: 1e5, noNaN: true }), (value) => {
        const distance = Math.abs(((Math.abs(value) * 1000) % 1) - 0.5);
        if (distance > 1e-4) expect(Number(steadyFixed(value, 3))).toBe(Number(value.toFixed(3)));
      }),
    );
    expect(steadyFixed(0, 2)).toBe('0.00');
  });
});
