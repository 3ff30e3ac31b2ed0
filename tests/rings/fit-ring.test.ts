/** Which sizes a register is tested with, and the gauges as part models. Expected sizes are worked out by hand beside each check. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitGauges, fitLadder } from '../../src/parts/fit-ring.ts';
import { platePlaces } from '../../src/parts/fit-ring-plate.ts';
import { takesSteppedGauge } from '../../src/parts/fit-ring-sizes.ts';
import { textWidth } from '../../src/solids/engrave.ts';

const around = (value: number, doubt: number) => ({ limits: { lower: value - doubt, upper: value + doubt } });
const auto = { steps: 5, step: 'auto' as const, allowance: 0.3 };
const marks = { id: 'driving', words: ['DEMO FLANGE'], measure: textWidth };
const spigot = (value: number, depth: number, corner = 0) => ({
  gender: 'male' as const,
  ...around(value, 0.03),
  depth,
  corner,
});

describe('the ladder of sizes', () => {
  it.each([
    // A caliper reading: 0.03 + 0.3 / 4 = 0.105 to reach with two steps, so 0.1 and not 0.05.
    ['a caliper', around(57, 0.03), auto, [57.2, 57.1, 57, 56.9, 56.8]],
    // A micrometer: 0.005 + 0.075 = 0.08, two steps of 0.05 reach it.
    ['a micrometer', around(57, 0.005), auto, [57.1, 57.05, 57, 56.95, 56.9]],
    // A ruler: 0.5 + 0.075 = 0.575, two steps of 0.3 reach it, two of 0.2 do not.
    ['a ruler', around(57, 0.5), auto, [57.6, 57.3, 57, 56.7, 56.4]],
    ['three steps as the job says', around(57, 0.03), { steps: 3, step: 0.04, allowance: 0.3 }, [57.04, 57, 56.96]],
    // An even number has no middle size: half a step to each side.
    ['four steps', around(57, 0.03), { steps: 4, step: 0.1, allowance: 0 }, [57.15, 57.05, 56.95, 56.85]],
    // h7 on 57: 0 to -0.030 mm (ISO 286-2), so the middle is 56.985, which rounds to 56.99 (half up).
    [
      'a stated zone',
      { limits: { lower: 56.97, upper: 57 } },
      { ...auto, step: 0.1 },
      [57.19, 57.09, 56.99, 56.89, 56.79],
    ],
  ])('%s', (_, register, settings, sizes) => {
    expect(fitLadder(register, settings).sizes).toEqual(sizes);
  });

  it('has equal steps, holds the measured size and, when automatic, reaches past the doubt', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 300, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.integer({ min: 3, max: 9 }),
        fc.double({ min: 0, max: 0.6, noNaN: true }),
        (value, doubt, steps, allowance) => {
          const { sizes, step } = fitLadder(around(value, doubt), { steps, step: 'auto', allowance });
          expect(sizes).toHaveLength(steps);
          sizes.slice(1).forEach((size, i) => {
            // Each size is rounded to 0.01, so two neighbours are off by 0.01 at most.
            expect(Math.abs((sizes[i] as number) - size - step)).toBeLessThan(0.0101);
          });
          expect(sizes[0]).toBeGreaterThanOrEqual(value + doubt - 0.011);
          expect(sizes.at(-1)).toBeLessThanOrEqual(value - doubt + 0.011);
        },
      ),
    );
  });
});

describe('the gauges', () => {
  it('shallow spigot: one ring a size, each bore the size and the allowance', () => {
    const gauges = fitGauges(spigot(57, 4), auto, marks);
    expect(gauges.map(({ sizes }) => sizes)).toEqual([[57.2], [57.1], [57], [56.9], [56.8]]);
    gauges.forEach(({ part, sizes }) => {
      const bore = 2 * Math.min(...(part.drillings[0]?.profile.map((p) => p.r) ?? []));
      expect(bore).toBeCloseTo((sizes[0] as number) + 0.3, 9);
      expect(part.engravings).toContainEqual(
        expect.objectContaining({ text: `${(sizes[0] as number).toFixed(2)} MM` }),
      );
      expect(part.engravings).toContainEqual(expect.objectContaining({ text: 'FIT CHECK' }));
      expect(part.engravings).toContainEqual(expect.objectContaining({ text: 'DEMO FLANGE' }));
    });
  });

  it('recess: plugs, each outside the size less the allowance, tall enough to be pulled out again', () => {
    const gauges = fitGauges({ ...spigot(57, 5), gender: 'female' }, auto, marks);
    expect(gauges).toHaveLength(5);
    gauges.forEach(({ part, sizes }) => {
      expect(2 * Math.max(...part.outer.map((p) => p.r))).toBeCloseTo((sizes[0] as number) - 0.3, 9);
      // 5 mm of recess and 1 mm to get hold of.
      expect(part.outer.at(-1)?.z).toBe(6);
    });
  });

  it('five steps of 1.5 mm, a lead of 0.5 and a corner of 1 take 9 mm of register', () => {
    expect(takesSteppedGauge({ depth: 9, corner: 1 }, 5)).toBe(true);
    expect(takesSteppedGauge({ depth: 8.99, corner: 1 }, 5)).toBe(false);
  });

  it('deep spigot: one ring, the largest size at its mouth, no step overhanging', () => {
    const [ring, ...more] = fitGauges(spigot(57, 12), auto, marks);
    expect(more).toEqual([]);
    expect(ring?.sizes).toEqual([57.2, 57.1, 57, 56.9, 56.8]);
    const bore = ring?.part.drillings[0]?.profile ?? [];
    const radiusAt = (z: number) => bore.filter((p) => p.z <= z + 1e-9).at(-1)?.r;
    expect([0.75, 2.25, 3.75, 5.25, 6.75].map((z) => 2 * (radiusAt(z) as number))).toEqual(
      [57.1, 57.2, 57.3, 57.4, 57.5].map((size) => expect.closeTo(size, 9)),
    );
    expect(ring?.part.engravings[0]).toMatchObject({ text: 'FROM MOUTH 57.20 57.10 57.00 56.90 56.80 MM' });
  });

  it('deep recess: one plug, the smallest size at its tip, each step on a wider one', () => {
    const [plug] = fitGauges({ ...spigot(57, 12), gender: 'female' }, auto, marks);
    expect(plug?.sizes).toEqual([56.8, 56.9, 57, 57.1, 57.2]);
    const radii = plug?.part.outer.map((p) => p.r) ?? [];
    expect(radii).toEqual([...radii].sort((a, b) => b - a));
  });
});

it('plates hold every gauge, inside the bed and clear of one another', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 9 }), fc.double({ min: 10, max: 190, noNaN: true }), (count, diameter) => {
      const plates = platePlaces(count, diameter, [200, 220]);
      expect(plates.flat()).toHaveLength(count);
      for (const plate of plates) {
        plate.forEach((a, i) => {
          expect(Math.abs(a.x) + diameter / 2).toBeLessThanOrEqual(100);
          expect(Math.abs(a.y) + diameter / 2).toBeLessThanOrEqual(110);
          plate.slice(i + 1).forEach((b) => {
            expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThan(diameter + 3.9);
          });
        });
      }
    }),
  );
});

it('a gauge wider than the bed gets a plate of its own', () => {
  expect(platePlaces(2, 250, [200, 200])).toEqual([[{ x: 0, y: 0 }], [{ x: 0, y: 0 }]]);
});
