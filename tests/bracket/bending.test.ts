/** Lengths of bent sheet against published tables and worked examples, and K-factors against theirs. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import '../seed.ts';
import {
  bendAllowance,
  bendDeduction,
  flatLength,
  kFromTrialBend,
  outsideSetback,
} from '../../src/formulas/bending.ts';
import {
  airDie,
  airDies,
  bendRule,
  kFactor,
  kFactorDin6935,
  leastBendRadius,
} from '../../src/standards/bend-practice.ts';
import { findMaterial } from '../../src/standards/materials.ts';
import { must } from '../../src/standards/table.ts';

describe('bend deduction', () => {
  // A shop's published table for cold-rolled steel, 90 degrees, inches: t, R, K, BD. Its own rounding: 0.0005 in.
  it.each([
    [0.06, 0.06, 0.4218, 0.106],
    [0.12, 0.03, 0.3866, 0.18],
    [0.018, 0.03, 0.5261, 0.034],
    [0.104, 0.03, 0.4277, 0.151],
  ])('agrees with a published table: t %f in, R %f in', (t, radius, k, published) => {
    expect(Math.abs(bendDeduction({ angle: 90, radius, k }, t) - published)).toBeLessThanOrEqual(0.0005);
  });

  it('shows that one row of that table is misprinted', () => {
    // Printed 0.112 with K 0.4318, from which 0.1107 comes out (recomputed by hand).
    expect(Math.abs(bendDeduction({ angle: 90, radius: 0.03, k: 0.4318 }, 0.074) - 0.112)).toBeGreaterThan(0.001);
  });

  it('agrees with a published worked example of DIN 6935', () => {
    // Two legs of 50 mm, r = s = 2 mm: K about 0.33, BA 4.16, setback 4.00, BD 3.84, blank 96.16 mm.
    const bend = { angle: 90, radius: 2, k: kFactorDin6935(2, 2) };
    expect(bend.k).toBeCloseTo(0.325, 3);
    expect(bendAllowance(bend, 2)).toBeCloseTo(4.16, 2);
    expect(outsideSetback(bend, 2)).toBeCloseTo(4, 12);
    expect(bendDeduction(bend, 2)).toBeCloseTo(3.84, 2);
    expect(flatLength([50, 50], [bend], 2)).toBeCloseTo(96.16, 2);
  });

  it('is the arc of the neutral fibre, by hand', () => {
    // 3 mm, R 4, K 0.43: pi / 2 (4 + 1.29) = 8.3095; legs 30 + 40 give 70 - 2 x 7 + 8.3095 = 64.31.
    const bend = { angle: 90, radius: 4, k: 0.43 };
    expect(bendAllowance(bend, 3)).toBeCloseTo((Math.PI / 2) * 5.29, 10);
    expect(flatLength([30, 40], [bend], 3)).toBeCloseTo(64.31, 2);
    // 2 mm, R 2.6, 45 degrees: tan 22.5 x 4.6 = 1.9054; BA pi / 4 x 3.46 = 2.7175; legs 20 + 35 give 53.907.
    expect(flatLength([20, 35], [{ angle: 45, radius: 2.6, k: 0.43 }], 2)).toBeCloseTo(53.907, 3);
  });

  it('asks for one leg more than bends', () => {
    expect(() => flatLength([10], [{ angle: 90, radius: 1, k: 0.4 }], 1)).toThrow(/2 legs/);
  });
});

it('a trial bend gives back the K-factor it was bent with', () => {
  const some = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  fc.assert(
    fc.property(some(0.5, 8), some(10, 150), some(0, 20), some(0.25, 0.5), some(30, 90), (t, angle, radius, k, leg) => {
      const flat = flatLength([leg, 60], [{ angle, radius, k }], t);
      expect(kFromTrialBend({ flat, legs: [leg, 60], angle, radius }, t)).toBeCloseTo(k, 9);
    }),
  );
});

describe('bend practice', () => {
  it('quotes the published K-factors by radius over thickness', () => {
    expect(must(kFactor('steel', 3, 3))).toBe(0.38);
    expect(must(kFactor('steel', 4, 3))).toBe(0.43);
    expect(must(kFactor('aluminium', 9, 3))).toBe(0.4);
    expect(must(kFactor('stainless', 9.1, 3))).toBe(0.5);
    expect(kFactor('steel', 1, 0).ok).toBe(false);
  });

  it('lets the factor of DIN 6935 rise to the middle of the sheet', () => {
    // r / s = 5: 0.65 + 0.5 lg 5 = 0.9995; beyond: 1. K is half of it.
    expect(kFactorDin6935(10, 2)).toBeCloseTo(0.4997, 3);
    expect(kFactorDin6935(11, 2)).toBe(0.5);
  });

  it('takes dies of 6 t in thin sheet and 8 t in thick, with the radius of the chart', () => {
    expect(must(airDie(2))).toMatchObject({ V: 12, b: 8.5, r: 2 });
    expect(must(airDie(3))).toMatchObject({ V: 25, b: 17.5, r: 4 });
    expect(must(airDie(2, 5))).toMatchObject({ V: 40, r: 6.5 });
    expect(airDie(12).ok).toBe(false);
    // 16 % of the opening and 0.70 of it, within the rounding of the chart (the trade's own rule of thumb).
    for (const { V, b, r } of airDies.rows) {
      expect(Math.abs(r / V - 0.16)).toBeLessThan(0.02);
      expect(Math.abs(b / V - 0.7)).toBeLessThan(0.06);
    }
  });

  it('knows what is not bent cold, and asks hard aluminium for wide bends', () => {
    expect(must(leastBendRadius(must(findMaterial('S235JR')), 3))).toMatchObject({ least: 1.5, usual: 3 });
    // An aircraft chart: 7075-T6 of 0.125 in: 1.00 in, eight thicknesses.
    expect(must(leastBendRadius(must(findMaterial('7075-T6')), 3.175)).usual).toBeCloseTo(25.4, 6);
    expect(leastBendRadius(must(findMaterial('EN-GJS-500-7')), 3).ok).toBe(false);
  });

  it('keeps holes 2 t + r from a bend', () => expect(bendRule('hole to bend', 3, 4).value).toBe(10));
});
