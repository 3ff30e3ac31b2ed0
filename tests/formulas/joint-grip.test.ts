/** Grip of a bolted face against published examples, an integral over the ring, and what must hold whatever the pattern. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { frictionRadius, gripNeeds, gripOfRing, gripOfScrews } from '../../src/formulas/joint-grip.ts';
import { frictionCoupling, slipRows } from '../truth/strength.truth.ts';
import '../seed.ts';

const onCircle = (count: number, radius: number, first = 0) =>
  Array.from({ length: count }, (_, i) => {
    const angle = first + (2 * Math.PI * i) / count;
    return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
  });

describe('grip of screws', () => {
  it.each(slipRows)('$size slips at $kN kN (EN 1993-1-8 tables)', ({ As, fub, mu, faces, gamma, kN }) => {
    // One screw a metre from the axis: N.m and N are the same number.
    const holds = (faces * gripOfScrews(0.7 * fub * As, [{ x: 1000, y: 0 }], mu)) / gamma / 1000;
    expect(Math.abs(holds / kN - 1)).toBeLessThan(0.005);
  });

  it('sums every screw at its own radius', () => {
    // By hand: 10 kN x 0.15 x (0.05 + 0.03) m.
    expect(
      gripOfScrews(
        10_000,
        [
          { x: 30, y: 40 },
          { x: 0, y: -30 },
        ],
        0.15,
      ),
    ).toBeCloseTo(120, 9);
  });

  const count = fc.integer({ min: 2, max: 16 });
  const force = fc.double({ min: 100, max: 1e5, noNaN: true });
  const mu = fc.double({ min: 0.05, max: 0.8, noNaN: true });
  const radius = fc.double({ min: 10, max: 300, noNaN: true });
  const turn = fc.double({ min: 0, max: 6.3, noNaN: true });

  it('gains by more screws, more force, more friction and a larger circle; turning or mirroring changes nothing', () => {
    fc.assert(
      fc.property(count, force, mu, radius, turn, (n, F, f, R, angle) => {
        const base = gripOfScrews(F, onCircle(n, R), f);
        expect(gripOfScrews(F, onCircle(n + 1, R), f)).toBeGreaterThan(base);
        expect(gripOfScrews(1.1 * F, onCircle(n, R), f)).toBeGreaterThan(base);
        expect(gripOfScrews(F, onCircle(n, 1.1 * R), f)).toBeGreaterThan(base);
        expect(gripOfScrews(F, onCircle(n, R), 1.1 * f)).toBeGreaterThan(base);
        const turned = onCircle(n, R, angle);
        expect(gripOfScrews(F, turned, f) / base).toBeCloseTo(1, 9);
        expect(
          gripOfScrews(
            F,
            turned.map(({ x, y }) => ({ x: -x, y })),
            f,
          ) / base,
        ).toBeCloseTo(1, 9);
      }),
    );
  });

  it('asks for just the force, and just the friction, that reach the safety', () => {
    fc.assert(
      fc.property(count, force, mu, radius, fc.double({ min: 1, max: 1e5, noNaN: true }), (n, F, f, R, torque) => {
        const where = onCircle(n, R);
        const needs = gripNeeds(torque, 1.25, F, where, f);
        expect(gripOfScrews(needs.force, where, f) / (1.25 * torque)).toBeCloseTo(1, 9);
        expect(gripOfScrews(F, where, needs.mu) / (1.25 * torque)).toBeCloseTo(1, 9);
      }),
    );
  });
});

describe('grip of an evenly pressed ring', () => {
  it('takes the textbook coupling to its printed preload', () => {
    const { torque, bolts, outside, inside, mu, radius, preload } = frictionCoupling;
    expect(frictionRadius(outside, inside)).toBeCloseTo(radius, 1);
    expect(Math.abs(gripOfRing(bolts * preload, outside, inside, mu) / torque - 1)).toBeLessThan(2e-4);
  });

  it('equals the friction summed over little pieces of the ring', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 300, noNaN: true }),
        fc.double({ min: 0, max: 0.95, noNaN: true }),
        (R, share) => {
          const r = share * R;
          const steps = 4000;
          const width = (R - r) / steps;
          let sum = 0;
          let area = 0;
          for (let i = 0; i < steps; i++) {
            const at = r + (i + 0.5) * width;
            sum += at * 2 * Math.PI * at * width;
            area += 2 * Math.PI * at * width;
          }
          expect(frictionRadius(R, r) / (sum / area)).toBeCloseTo(1, 6);
        },
      ),
      { numRuns: 30 },
    );
  });

  it('is two thirds of the rim for a whole disc, and the circle itself for a thin ring', () => {
    expect(frictionRadius(90, 0)).toBeCloseTo(60, 12);
    const thin = gripOfRing(60_000, 50.01, 49.99, 0.15);
    expect(thin / gripOfScrews(10_000, onCircle(6, 50), 0.15)).toBeCloseTo(1, 6);
  });
});
