/** Trial weights with phase and two clamps: published examples, a simulated rotor, and scans that share no formula. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Arrow,
  angleOf,
  apart,
  arrow,
  minus,
  mirrored,
  noArrow,
  plus,
  sizeOf,
  times,
} from '../../src/formulas/arrows.ts';
import { setClamps } from '../../src/formulas/band-clamps.ts';
import {
  angleDoubt,
  correctionWithPhase,
  isTelling,
  type TrialFit,
  trialMass,
} from '../../src/formulas/trial-weights.ts';
import { normal, randomFrom } from '../measure/random.ts';
import '../seed.ts';

interface Published {
  readonly source: string;
  readonly first: readonly [number, number];
  readonly trial: readonly [number, number];
  readonly withTrial: readonly [number, number];
  readonly mass: number;
  /** Angle between the first reading and the trial weight's effect, or of the correction. */
  readonly angle: number;
  /** What was drawn by hand is coarser than what was reckoned. */
  readonly within: { readonly share: number; readonly degrees: number };
}

const published: readonly Published[] = [
  {
    source: 'a field-balancing report on a 16-blade fan: 83.5 g at 308.87 degrees, reckoned',
    first: [4.81, 16.8],
    trial: [103.25, 0],
    withTrial: [4.7628, 299.9],
    mass: 83.5,
    angle: 308.87,
    within: { share: 0.001, degrees: 0.1 },
  },
  {
    source:
      'an instrument maker on the vector drawing: 77.8 g, the trial weight moved by 35 degrees; drawn on polar paper, T read as 9',
    first: [7, 160],
    trial: [100, 0],
    withTrial: [5, 70],
    mass: 77.77,
    angle: 360 - 35,
    within: { share: 0.05, degrees: 1 },
  },
];

const fitOf = (runs: Parameters<typeof correctionWithPhase>[0]): TrialFit => {
  const fit = correctionWithPhase(runs);
  if (fit === null) throw new Error('no fit');
  return fit;
};

describe('the vector method as published', () => {
  it.each(published)('$source', ({ first, trial, withTrial, mass, angle, within }) => {
    const { correction, misfits } = fitOf([
      { weight: noArrow, reading: arrow(...first), doubt: 0.1 },
      { weight: arrow(...trial), reading: arrow(...withTrial), doubt: 0.1 },
    ]);
    expect(Math.abs(sizeOf(correction) / mass - 1)).toBeLessThan(within.share);
    expect(apart(angleOf(correction), angle)).toBeLessThan(within.degrees);
    expect(Math.max(...misfits)).toBeLessThan(1e-9);
  });

  it('finds the split over two blades of the same report: 23.3 g at 292.5 and 61.49 g at 315 degrees', () => {
    const together = plus(arrow(23.3, 292.5), arrow(61.49, 315));
    // A second way to the same published weight; the report rounds to the tenth of a gram.
    expect(sizeOf(together)).toBeCloseTo(83.5, 0);
    expect(apart(angleOf(together), 308.87)).toBeLessThan(0.1);
  });
});

const angle = fc.double({ min: 0, max: 360, noNaN: true });
const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** A rigid rotor on any supports: the reading is a turned and stretched picture of all weights on it. */
const rotor = fc
  .record({ mass: size(1, 40), at: angle, gain: size(0.01, 2), lag: angle })
  .map(({ mass, at, gain, lag }) => ({ unbalance: arrow(mass, at), response: arrow(gain, lag) }));

describe('a simulated rotor', () => {
  const read = ({ unbalance, response }: { unbalance: Arrow; response: Arrow }, weight: Arrow) =>
    times(response, plus(unbalance, weight));

  it('is cancelled by the correction, whatever its supports do', () => {
    fc.assert(
      fc.property(rotor, size(2, 40), angle, (one, mass, at) => {
        const weight = arrow(mass, at);
        const { correction, influence } = fitOf([
          { weight: noArrow, reading: read(one, noArrow), doubt: 0.1 },
          { weight, reading: read(one, weight), doubt: 0.1 },
        ]);
        expect(sizeOf(plus(correction, one.unbalance))).toBeLessThan(1e-9 * sizeOf(one.unbalance));
        expect(sizeOf(minus(influence, one.response))).toBeLessThan(1e-9 * sizeOf(one.response));
        expect(sizeOf(read(one, correction))).toBeLessThan(1e-8 * sizeOf(read(one, noArrow)));
      }),
    );
  });

  it('is mirrored about the trial weight when the phase counts the other way', () => {
    fc.assert(
      fc.property(rotor, size(2, 40), angle, (one, mass, at) => {
        const weight = arrow(mass, at);
        const runs = [noArrow, weight].map((on) => ({ weight: on, reading: read(one, on), doubt: 0.1 }));
        const wrong = fitOf(runs.map((run) => ({ ...run, reading: mirrored(run.reading) }))).correction;
        expect(sizeOf(wrong)).toBeCloseTo(sizeOf(one.unbalance), 6);
        expect(apart(angleOf(wrong), 2 * at - (angleOf(one.unbalance) + 180))).toBeLessThan(1e-5);
      }),
    );
  });

  it('stays within the told doubt in 95 of 100 noisy sets (seeded), with two runs and with four', () => {
    const random = randomFrom(4711);
    for (const places of [[90], [0, 120, 240]]) {
      let inside = 0;
      const sets = 2000;
      for (let n = 0; n < sets; n++) {
        const one = { unbalance: arrow(4 + 10 * random(), 360 * random()), response: arrow(0.4, 360 * random()) };
        const runs = [noArrow, ...places.map((place) => arrow(8, place))].map((weight) => {
          const reading = read(one, weight);
          // The doubt is two standard deviations of each component.
          const doubt = 0.03 * sizeOf(read(one, noArrow));
          const noise = { x: normal(random, doubt / 2), y: normal(random, doubt / 2) };
          return { weight, reading: plus(reading, noise), doubt };
        });
        const { correction, doubt } = fitOf(runs);
        // Along the correction: the doubt of its mass.
        if (Math.abs(sizeOf(correction) - sizeOf(one.unbalance)) <= doubt) inside++;
      }
      // 2 standard deviations hold 95.4 %; the count itself scatters by 0.5 %.
      expect(inside / sets).toBeGreaterThan(0.935);
      expect(inside / sets).toBeLessThan(0.975);
    }
  });

  it('tells nothing from one and the same weight', () => {
    expect(correctionWithPhase([{ weight: noArrow, reading: arrow(1, 0), doubt: 1 }])).toBeNull();
    const same = { weight: arrow(5, 20), reading: arrow(1, 0), doubt: 1 };
    expect(correctionWithPhase([same, same])).toBeNull();
    expect(correctionWithPhase([{ ...same, weight: noArrow }, same])).toBeNull();
  });
});

describe('trial weights', () => {
  it('tells enough by a third more or less, or by 30 degrees (the 30/30 rule, common practice)', () => {
    expect(isTelling(arrow(10, 0), arrow(10, 29))).toBe(false);
    expect(isTelling(arrow(10, 350), arrow(10, 21))).toBe(true);
    // Backwards as well as forwards.
    expect(isTelling(arrow(10, 20), arrow(10, 349))).toBe(true);
    expect(isTelling(arrow(10, 20), arrow(10, 351))).toBe(false);
    expect(isTelling(arrow(10, 0), arrow(7.1, 0))).toBe(false);
    expect(isTelling(arrow(10, 0), arrow(6.9, 0))).toBe(true);
    expect(isTelling(arrow(10, 0), arrow(13.1, 5))).toBe(true);
  });

  it('starts with a tenth of the load: 10 kg at 50 mm and 600/pi rpm (20 rad/s squared is 400) is 490 g by hand', () => {
    // 0.1 x 10 kg x 9.80665 / (0.05 m x 400) = 0.4903 kg.
    expect(trialMass(10_000, 50, 600 / Math.PI)).toBeCloseTo(490.33, 1);
  });

  it('has an angle doubt of asin(doubt / size), and any angle when the doubt is as large', () => {
    expect(angleDoubt(2, 1)).toBeCloseTo(30, 9);
    expect(angleDoubt(1, 1)).toBe(180);
  });
});

describe('two band clamps', () => {
  it.each([
    // The closed cases of the trade's table of clamp spreads: 2 weights side by side, 1 at 120 degrees apart, 0 opposite.
    [28, 0],
    [14, 60],
    [14 * Math.SQRT2, 45],
    [0, 90],
  ])('of 14 g make %f g at %f degrees either side', (wanted, half) => {
    const setting = setClamps(wanted, [14, 14]);
    expect(setting.kind === 'set' && setting.turns.map((turn) => Number(turn.toFixed(6)))).toEqual([half, half]);
  });

  // Tenths do not add up exactly in binary: the cosine comes out a hair beyond one, and the angle must not get lost over it.
  it.each([
    [0.1 + 0.2, 0.1, 0.2, 0, 0],
    [0.4 - 0.3, 0.4, 0.3, 0, 180],
    [0.3 - 0.1, 0.3, 0.1, 0, 180],
  ])(
    'stand side by side or opposite where %f g is all, or the least, that %f and %f g make',
    (wanted, one, two, a, b) => {
      const setting = setClamps(wanted, [one, two]);
      expect(setting.kind === 'set' && setting.turns.map((turn) => Number(turn.toFixed(4)))).toEqual([a, b]);
    },
  );

  it('agree with a scan over both angles', () => {
    fc.assert(
      fc.property(
        size(2, 20),
        size(2, 20),
        fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        angle,
        (one, two, share, at) => {
          const wanted = Math.abs(one - two) + share * (one + two - Math.abs(one - two));
          const setting = setClamps(wanted, [one, two]);
          if (setting.kind !== 'set') throw new Error(setting.kind);
          const goal = arrow(wanted, at);
          const [first, second] = setting.turns;
          expect(sizeOf(minus(plus(arrow(one, at + first), arrow(two, at - second)), goal))).toBeLessThan(
            1e-6 * (one + two),
          );
          // No formula: the nearest pair of whole degrees lies beside the answer, or beside its mirror.
          let best = { off: Number.POSITIVE_INFINITY, a: 0, b: 0 };
          for (let a = 0; a < 180; a++) {
            for (let b = 0; b < 180; b++) {
              const off = sizeOf(minus(plus(arrow(one, a), arrow(two, -b)), arrow(wanted, 0)));
              if (off < best.off) best = { off, a, b };
            }
          }
          const sum = (a: number, b: number) => sizeOf(minus(plus(arrow(one, a), arrow(two, -b)), arrow(wanted, 0)));
          expect(sum(first, second)).toBeLessThanOrEqual(best.off);
          // One degree of either head moves its tip by its mass times pi / 180: the scan comes as near as half of both.
          expect(best.off).toBeLessThan(((one + two) * Math.PI) / 180);
        },
      ),
      { numRuns: 20 },
    );
  });

  it('say how heavy they must be, or that unlike ones cannot make so little', () => {
    expect(setClamps(30, [14, 14])).toEqual({ kind: 'too light', least: 15 });
    expect(setClamps(1, [14, 12])).toEqual({ kind: 'too unlike', least: 2 });
    expect(setClamps(1, [12, 14])).toEqual({ kind: 'too unlike', least: 2 });
  });

  it('tell how much a degree matters: twice the mass times sin(60) times pi/180 for half turns of 60 degrees', () => {
    const setting = setClamps(14, [14, 14]);
    // Slope of 2 u cos: textbook; the secant over one degree bends it by under one percent.
    expect(setting.kind === 'set' && setting.gramsPerDegree).toBeCloseTo(
      28 * Math.sin(Math.PI / 3) * (Math.PI / 180),
      2,
    );
  });
});
