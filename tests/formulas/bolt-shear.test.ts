/** Shear and bearing of screws against published tables, and how a pattern shares its load. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bearingResistance, gammaM2, screwForce, shearResistance } from '../../src/formulas/bolt-shear.ts';
import { bearing, boltCouplings, shearRows } from '../truth/strength.truth.ts';
import '../seed.ts';

const onCircle = (count: number, diameter: number) =>
  Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * i) / count;
    return { x: (diameter / 2) * Math.cos(angle), y: (diameter / 2) * Math.sin(angle) };
  });

describe('shear of a screw', () => {
  it.each(shearRows)('$size $cls: $kN kN (EN 1993-1-8 tables)', ({ cls, As, kN }) => {
    // The prints keep two or three figures.
    expect(Math.abs(shearResistance(cls, As, 'thread') / 1000 / kN - 1)).toBeLessThan(0.005);
  });

  it('counts 0.6 on a shank of any class', () => {
    // 0.6 x 1000 x 100 / 1.25
    expect(shearResistance('10.9', 100, 'shank')).toBeCloseTo(48_000, 6);
    expect(shearResistance('8.8', 100, 'shank')).toBeCloseTo(38_400, 6);
    // 12.9 is outside the code: alpha_v of 10.9.
    expect(shearResistance('12.9', 100, 'thread')).toBeCloseTo(48_000, 6);
  });
});

describe('bearing of a hole', () => {
  const { d, hole, edge, pitch, k1, alphaB, oneRow, fu } = bearing;
  const at = (more: Partial<Parameters<typeof bearingResistance>[0]>, cls = '8.8', strength: number = fu) =>
    (bearingResistance({ d, hole, thickness: 10, edge, pitch, ...more }, cls, strength) * gammaM2) / (fu * d * 10);

  it('takes the published coefficients, and no more than 1.5 in one row', () => {
    expect(k1 * alphaB).toBeGreaterThan(oneRow);
    expect(at({})).toBeCloseTo(oneRow, 9);
    // Half the hole's pitch room: 36.5/66 - 0.25 = 0.303 with k1 as published.
    expect(at({ pitch: 36.5 })).toBeCloseTo(k1 * (36.5 / 66 - 0.25), 3);
    // An edge of 20 mm: k1 = 2.8 x 20/22 - 1.7 = 0.8455 with alpha_b as published.
    expect(at({ edge: 20 })).toBeCloseTo(0.8455 * alphaB, 3);
  });

  it('is carried by the screw where that is softer, and is nothing at an edge too near', () => {
    // fub/fu = 800/2000 = 0.4, k1 2.5 far from edges: 1.0 of the plate's strength.
    expect(at({ edge: null, pitch: 1000 }, '8.8', 2000)).toBeCloseTo(1 * (2000 / fu), 9);
    // An edge that is there but far off counts no more than none: 2.5.
    expect(at({ edge: 1000, pitch: 1000 }, '8.8', 2000)).toBeCloseTo(1 * (2000 / fu), 9);
    expect(at({ edge: 0 })).toBe(0);
    expect(at({ pitch: 10 })).toBe(0);
  });

  it('never falls with more metal', () => {
    const size = fc.double({ min: 1, max: 100, noNaN: true });
    fc.assert(
      fc.property(size, size, size, (thickness, e, p) => {
        const base = bearingResistance({ d, hole, thickness, edge: e, pitch: p }, '10.9', fu);
        for (const more of [{ thickness: thickness + 1 }, { edge: e + 1 }, { pitch: p + 1 }, { edge: null }])
          expect(
            bearingResistance({ d, hole, thickness, edge: e, pitch: p, ...more }, '10.9', fu),
          ).toBeGreaterThanOrEqual(base);
      }),
    );
  });
});

describe('load of the worst screw', () => {
  it.each(boltCouplings)('textbook coupling of $circles', ({ circles, bolt, stress, torque }) => {
    const positions = circles.flatMap(({ count, diameter }) => onCircle(count, diameter));
    expect(screwForce(torque, positions, 1) / ((Math.PI / 4) * bolt ** 2)).toBeCloseTo(stress, 6);
  });

  it('balances the torque: every screw pulls in proportion to its radius', () => {
    const point = fc.record({
      x: fc.double({ min: -200, max: 200, noNaN: true }),
      y: fc.double({ min: 1, max: 200, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(point, { minLength: 1, maxLength: 12 }), (points) => {
        const worst = Math.max(...points.map(({ x, y }) => Math.hypot(x, y)));
        const force = screwForce(500, points, 1);
        const torque = points.reduce((sum, { x, y }) => sum + (force * (x * x + y * y)) / worst, 0);
        expect(torque / 500_000).toBeCloseTo(1, 9);
      }),
    );
  });

  it('doubles when half of the screws bear', () => {
    expect(screwForce(500, onCircle(6, 100), 0.5)).toBeCloseTo(2 * screwForce(500, onCircle(6, 100), 1), 9);
  });
});
