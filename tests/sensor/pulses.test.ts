/** Pulses, readings and whole ratios: worked examples, closed forms, and every ratio tried one by one. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  mmPerKm,
  mmPerMile,
  pulsesForTurn,
  pulsesOver,
  readingError,
  roadSpeed,
  rpmAtFrequency,
  rpmAtTipSpeed,
  tipSpeed,
  toothFrequency,
} from '../../src/formulas/pulses.ts';
import { bestRatio, nearerAndNearer } from '../../src/formulas/whole-ratio.ts';
import { must } from '../../src/standards/table.ts';
import { freeDiameter, rolledCircumference } from '../../src/standards/tyre-size.ts';

describe('pulses', () => {
  // Definition of frequency; a maker's page on the principle of such sensors: 30 teeth at 4500 rpm, and 60 teeth, where Hz is rpm.
  it.each([
    [30, 4500, 2250],
    [60, 4500, 4500],
  ])('%i teeth at %i rpm make %i Hz', (teeth, rpm, hertz) => {
    expect(toothFrequency(teeth, rpm)).toBe(hertz);
    expect(rpmAtFrequency(teeth, hertz)).toBe(rpm);
  });

  // pi x 120 x 600 / 60000 = 1.2 pi; 100 rpm and 15 in/s belong together on a wheel of 2.86 in (an overview of such sensors names both).
  it('tells the speed of the tips', () => {
    expect(tipSpeed(120, 600)).toBeCloseTo(1.2 * Math.PI, 12);
    expect(rpmAtTipSpeed(120, tipSpeed(120, 600))).toBeCloseTo(600, 9);
    expect(rpmAtTipSpeed((15 * 60 * 25.4) / (100 * Math.PI), 0.381)).toBeCloseTo(100, 9);
  });

  // 30 teeth x 3.73 / 0.00205 km = 54585.3659; a mile is 1.609344 km exactly (1959).
  it('tells pulses on the road', () => {
    expect(pulsesOver(30, 3.73, 2050, mmPerKm)).toBeCloseTo(111.9 / 0.00205, 6);
    expect(pulsesOver(30, 3.73, 2050, mmPerMile)).toBeCloseTo((111.9 / 0.00205) * 1.609344, 6);
    expect(pulsesForTurn(111.9 / 0.00205, 3.73, 2050, mmPerKm)).toBeCloseTo(30, 12);
    // 60 km/h is 1 km a minute: 1000 m / 2.05 m turns of the wheel, times 3.73.
    expect(roadSpeed((1000 / 2.05) * 3.73, 3.73, 2050)).toBeCloseTo(60, 9);
  });

  // 30 teeth where 29.4 were wanted: 2.04 % fast. A tyre 6 mm of 326 worn makes more pulses a km: reads 1.875 % fast.
  it('tells how far a reading is out', () => {
    expect(readingError(30, 29.4)).toBeCloseTo(0.6 / 29.4, 12);
    const km = (radius: number) => pulsesOver(30, 3.73, 2 * Math.PI * radius, mmPerKm);
    expect(readingError(km(320), km(326))).toBeCloseTo(6 / 320, 12);
  });

  // A car driven a mile, tooth by tooth: the count is what the sum says, to one tooth.
  it('agrees with teeth counted one by one', () => {
    const [teeth, axle, rolled] = [44, 4.1, 2052];
    let counted = 0;
    const step = rolled / (teeth * axle);
    for (let way = step; way <= mmPerMile; way += step) counted++;
    expect(Math.abs(counted - pulsesOver(teeth, axle, rolled, mmPerMile))).toBeLessThan(1);
  });
});

describe('tyre sizes', () => {
  // Published: 205/65R16 is 26.5 in, 672 mm with the wall rounded to 133; 205/55R16 is 24.878 in; 255/75-16 and 315/75-16 is 34.6 in
  // (tyre size pages). 31x10.50R15 names its own diameter.
  it.each([
    ['205/65R16', 16 * 25.4 + 2 * 205 * 0.65],
    ['205/55 R16 91V', 24.878 * 25.4],
    ['P205/65R16', 672.9],
    ['315/75-16', 878.9],
    ['LT245/75R16 120S', 16 * 25.4 + 2 * 245 * 0.75],
    ['205/65ZR16', 672.9],
    ['100/90-18', 18 * 25.4 + 180],
    ['31x10.50R15', 31 * 25.4],
  ])('%s', (size, diameter) => {
    expect(Math.abs(must(freeDiameter(size)) - diameter)).toBeLessThan(0.06);
    expect(must(rolledCircumference(size)) / must(freeDiameter(size))).toBeCloseTo(3.05, 9);
  });

  it.each(['165R13', '6.00-16', 'round', '', '205/65', '999/65R16', '205/65R99', '12x10.5R15', '1'.repeat(300)])(
    'refuses "%s" with a way out',
    (size) => {
      expect(freeDiameter(size)).toMatchObject({ ok: false, why: expect.stringMatching(/rolled|read it again/) });
    },
  );

  // A laden tyre rolls less than its free circumference and more than that of its squashed radius.
  it('rolls a little less than its free circumference', () => {
    const free = Math.PI * must(freeDiameter('205/65R16'));
    const rolled = must(rolledCircumference('205/65R16'));
    expect(rolled).toBeLessThan(free);
    expect(rolled).toBeGreaterThan(0.95 * free);
  });
});

/** The nearest p/q by trying every q: the second method. */
function bruteBest(wanted: number, largest: number): number {
  let best = Number.POSITIVE_INFINITY;
  for (let q = 1; q <= largest; q++) {
    for (const p of [Math.floor(wanted * q), Math.ceil(wanted * q)]) {
      const within = Math.min(largest, Math.max(1, p));
      best = Math.min(best, Math.abs(within / q - wanted));
    }
  }
  return best;
}

describe('whole ratios', () => {
  // Archimedes' 22/7 and Zu Chongzhi's 355/113 for pi; convergents 1, 3/2, 7/5, 17/12, 41/29, 99/70 of the root of two.
  it('finds the ratios that history knows', () => {
    expect(bestRatio(Math.PI, 100)).toMatchObject({ p: 22, q: 7 });
    expect(bestRatio(Math.PI, 400)).toMatchObject({ p: 355, q: 113 });
    expect(bestRatio(Math.SQRT2, 99)).toMatchObject({ p: 99, q: 70 });
    const found = nearerAndNearer(Math.SQRT2, 99).map(({ p, q }) => `${p}/${q}`);
    for (const convergent of ['1/1', '3/2', '7/5', '17/12', '41/29', '99/70']) expect(found).toContain(convergent);
  });

  it('keeps within its dials', () => {
    expect(bestRatio(1000, 255)).toMatchObject({ p: 255, q: 1 });
    expect(bestRatio(0.0001, 255)).toMatchObject({ p: 1, q: 255 });
    expect(nearerAndNearer(0.75, 255)).toEqual([
      { p: 1, q: 1, error: 1 / 0.75 - 1 },
      { p: 2, q: 3, error: 2 / 3 / 0.75 - 1 },
      { p: 3, q: 4, error: 0 },
    ]);
  });

  it('is as near as any ratio tried one by one', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.002, max: 300, noNaN: true }),
        fc.integer({ min: 1, max: 300 }),
        (wanted, largest) => {
          const all = nearerAndNearer(wanted, largest);
          const best = all[all.length - 1];
          expect(best).toBeDefined();
          if (!best) return;
          expect(Math.abs(best.p / best.q - wanted)).toBeCloseTo(bruteBest(wanted, largest), 12);
          for (const [i, { p, q, error }] of all.entries()) {
            expect(Number.isInteger(p) && Number.isInteger(q) && p >= 1 && q >= 1).toBe(true);
            expect(Math.max(p, q)).toBeLessThanOrEqual(largest);
            expect(error).toBe(p / q / wanted - 1);
            const before = all[i - 1];
            if (before) expect(Math.abs(p / q - wanted)).toBeLessThan(Math.abs(before.p / before.q - wanted));
          }
        },
      ),
    );
  });

  it('names each ratio that is nearer than all with a smaller denominator below it', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 20, noNaN: true }), (wanted) => {
        const listed = new Set(nearerAndNearer(wanted, 60).map(({ p, q }) => `${p}/${q}`));
        const last = nearerAndNearer(wanted, 60).at(-1);
        // Every best one up to the last, by brute force over p and q together.
        let best = Number.POSITIVE_INFINITY;
        for (let size = 1; size <= 60; size++) {
          const here = Array.from({ length: size }, (_, i) => [
            [i + 1, size],
            [size, i + 1],
          ])
            .flat()
            .map(([p = 1, q = 1]) => ({ p, q, off: Math.abs(p / q - wanted) }))
            .reduce((a, b) => (b.off < a.off ? b : a));
          if (here.off < best - 1e-15) {
            best = here.off;
            if (last && here.off > Math.abs(last.p / last.q - wanted)) expect(listed).toContain(`${here.p}/${here.q}`);
          }
        }
      }),
      { numRuns: 50 },
    );
  });
});
