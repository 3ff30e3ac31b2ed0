/** Torsion against published shafts, an integral over the section, and the rings that holes leave. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cylinderStress, polarMoment, shearYield, torsionStress, uncutRings } from '../../src/formulas/torsion.ts';
import { hollowShaft, tube } from '../truth/strength.truth.ts';
import '../seed.ts';

describe('torsion of rings', () => {
  it('has the published polar moments and stress', () => {
    expect(polarMoment(hollowShaft)).toBeCloseTo(hollowShaft.J, 2);
    expect(Math.abs(polarMoment(tube) / tube.J - 1)).toBeLessThan(2e-4);
    expect(Math.abs(torsionStress(tube.torque, [tube]) / tube.stress - 1)).toBeLessThan(2e-4);
  });

  it('gives the torque back when the stress is summed over the section', () => {
    const size = fc.double({ min: 0.01, max: 0.99, noNaN: true });
    fc.assert(
      fc.property(size, size, size, fc.double({ min: 5, max: 300, noNaN: true }), (a, b, c, R) => {
        const [r1 = 0, r2 = 0, r3 = 0] = [a, b, c].sort((x, y) => x - y).map((share) => share * R);
        const rings = [
          { inside: 0, outside: r1 },
          { inside: r2 + 0.001, outside: r3 + 0.002 },
        ];
        const stress = torsionStress(1000, rings);
        const rim = Math.max(r1, r3 + 0.002);
        let torque = 0;
        for (const { inside, outside } of rings) {
          const steps = 2000;
          const width = (outside - inside) / steps;
          for (let i = 0; i < steps; i++) {
            const r = inside + (i + 0.5) * width;
            torque += ((stress * r) / rim) * r * 2 * Math.PI * r * width;
          }
        }
        expect(torque / 1e6).toBeCloseTo(1, 5);
      }),
      { numRuns: 30 },
    );
  });

  it('agrees with a cylinder through a thin ring of the same metal', () => {
    // A thin tube of radius 50, wall 0.02: 2 pi r t of metal, seen along the axis or across it.
    const thin = torsionStress(100, [{ inside: 49.99, outside: 50.01 }]);
    expect(cylinderStress(100, 50, 2 * Math.PI * 50 * 0.02) / thin).toBeCloseTo(1, 3);
  });

  it('yields by von Mises at 0.577 of the yield stress', () => expect(shearYield(355)).toBeCloseTo(0.5774 * 355, 1));
});

describe('rings that no hole cuts', () => {
  it('are what is left between the holes', () => {
    const holes = [
      { offset: 0, radius: 13 },
      { offset: 42, radius: 7.5 },
      { offset: 54, radius: 5 },
      { offset: 42, radius: 4.5 },
    ];
    expect(uncutRings({ inside: 0, outside: 64 }, holes)).toEqual([
      { inside: 13, outside: 34.5 },
      { inside: 59, outside: 64 },
    ]);
    expect(uncutRings({ inside: 0, outside: 20 }, [])).toEqual([{ inside: 0, outside: 20 }]);
    expect(uncutRings({ inside: 0, outside: 20 }, [{ offset: 15, radius: 8 }])).toEqual([{ inside: 0, outside: 7 }]);
    expect(uncutRings({ inside: 0, outside: 20 }, [{ offset: 0, radius: 20 }])).toEqual([]);
  });

  const hole = fc.record({
    offset: fc.double({ min: 0, max: 70, noNaN: true }),
    radius: fc.double({ min: 0.5, max: 20, noNaN: true }),
  });

  it('hold no point of any hole, and every radius that no hole reaches', () => {
    fc.assert(
      fc.property(fc.array(hole, { maxLength: 6 }), fc.double({ min: 0, max: 64, noNaN: true }), (holes, r) => {
        const rings = uncutRings({ inside: 0, outside: 64 }, holes);
        const isIn = rings.some(({ inside, outside }) => r > inside && r < outside);
        const isCut = holes.some(({ offset, radius }) => r > offset - radius && r < offset + radius);
        const isEdge = rings.some(({ inside, outside }) => r === inside || r === outside);
        if (
          !isEdge &&
          !holes.some(({ offset, radius }) => r === offset - radius || r === offset + radius) &&
          r > 0 &&
          r < 64
        )
          expect(isIn).toBe(!isCut);
      }),
      { numRuns: 500 },
    );
  });

  it('are never stiffer than the section less its holes, nor stiffer with one hole more', () => {
    fc.assert(
      fc.property(fc.array(hole, { maxLength: 5 }), hole, (holes, one) => {
        const whole = { inside: 0, outside: 64 };
        const sum = (list: readonly { offset: number; radius: number }[]) =>
          uncutRings(whole, list).reduce((J, ring) => J + polarMoment(ring), 0);
        expect(sum([...holes, one])).toBeLessThanOrEqual(sum(holes) + 1e-6);
        // A hole's own moment about the axis: its area times offset squared, and its own middle (parallel axes).
        const { offset, radius } = one;
        if (offset + radius < 64) {
          const hollow = polarMoment({ inside: 0, outside: radius }) + Math.PI * radius ** 2 * offset ** 2;
          expect(sum([one])).toBeLessThanOrEqual(polarMoment(whole) - hollow + 1e-6);
        }
      }),
    );
  });
});
