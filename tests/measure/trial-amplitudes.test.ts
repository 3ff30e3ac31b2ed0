/** Balancing without phase: a simulated rotor, a brute-force scan of all unbalances, and readings printed in an article. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Arrow, angleOf, apart, arrow, minus, noArrow, plus, sizeOf } from '../../src/formulas/arrows.ts';
import { type AmplitudeFit, type AmplitudeRun, correctionWithoutPhase } from '../../src/measure/trial-amplitudes.ts';
import { normal, randomFrom } from './random.ts';
import '../seed.ts';

const fitOf = (runs: readonly AmplitudeRun[]): AmplitudeFit => {
  const fit = correctionWithoutPhase(runs);
  if (fit === null) throw new Error('no fit');
  return fit;
};

const runsOf = (unbalance: Arrow, gain: number, weights: readonly Arrow[]): AmplitudeRun[] =>
  [noArrow, ...weights].map((weight) => ({
    weight,
    amplitude: gain * sizeOf(plus(unbalance, weight)),
    doubt: 0.05 * gain * sizeOf(unbalance),
  }));

/** How badly an unbalance explains the readings, with the sensitivity that suits it best: no derivative, no algebra. */
function mismatch(runs: readonly AmplitudeRun[], unbalance: Arrow): number {
  const sizes = runs.map(({ weight }) => sizeOf(plus(unbalance, weight)));
  const up = runs.reduce((total, { amplitude, doubt }, n) => total + (amplitude * (sizes[n] ?? 0)) / doubt ** 2, 0);
  const down = runs.reduce((total, { doubt }, n) => total + ((sizes[n] ?? 0) / doubt) ** 2, 0);
  return runs.reduce(
    (total, { amplitude, doubt }, n) => total + ((amplitude - (up / down) * (sizes[n] ?? 0)) / doubt) ** 2,
    0,
  );
}

const angle = fc.double({ min: 0, max: 360, noNaN: true });
const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('three places without phase', () => {
  it('finds the unbalance of a simulated rotor exactly, from even and uneven places and unlike weights', () => {
    fc.assert(
      fc.property(
        size(1, 30),
        angle,
        size(0.01, 3),
        size(3, 30),
        angle,
        size(60, 150),
        size(60, 150),
        size(0.7, 1.4),
        (mass, at, gain, trial, start, step, next, unlike) => {
          const unbalance = arrow(mass, at);
          const weights = [arrow(trial, start), arrow(trial * unlike, start + step), arrow(trial, start + step + next)];
          const { correction, sensitivity, misfits } = fitOf(runsOf(unbalance, gain, weights));
          expect(sizeOf(plus(correction, unbalance))).toBeLessThan(1e-6 * Math.max(mass, trial));
          expect(sensitivity / gain).toBeCloseTo(1, 6);
          expect(Math.max(...misfits.map(Math.abs))).toBeLessThan(1e-5);
        },
      ),
    );
  });

  it('explains noisy readings at least as well as the best of a fine scan of all unbalances (seeded)', () => {
    const random = randomFrom(99);
    for (let n = 0; n < 40; n++) {
      const unbalance = arrow(3 + 12 * random(), 360 * random());
      const runs = runsOf(
        unbalance,
        0.3,
        [0, 120, 240].map((at) => arrow(10, at)),
      ).map((one) => ({
        ...one,
        amplitude: Math.max(0, one.amplitude + normal(random, one.doubt)),
      }));
      const fit = fitOf(runs);
      let best = Number.POSITIVE_INFINITY;
      for (let mass = 0.25; mass <= 40; mass += 0.25) {
        for (let at = 0; at < 360; at += 2) best = Math.min(best, mismatch(runs, arrow(mass, at)));
      }
      const ours = fit.misfits.reduce((total, off) => total + off * off, 0);
      expect(ours).toBeLessThanOrEqual(best * (1 + 1e-9) + 1e-12);
    }
  });

  it('stays within the told doubt in about 95 of 100 noisy sets (seeded)', () => {
    const random = randomFrom(2718);
    const sets = 2000;
    let mass = 0;
    let turn = 0;
    for (let n = 0; n < sets; n++) {
      const unbalance = arrow(5 + 8 * random(), 360 * random());
      const runs = runsOf(
        unbalance,
        0.3,
        [10, 130, 250].map((at) => arrow(9, at)),
      ).map((one) => {
        const doubt = 0.02 * 0.3 * sizeOf(unbalance);
        return { ...one, doubt, amplitude: Math.max(0, one.amplitude + normal(random, doubt / 2)) };
      });
      const { correction, doubt } = fitOf(runs);
      if (Math.abs(sizeOf(correction) - sizeOf(unbalance)) <= doubt.mass) mass++;
      if (apart(angleOf(correction), angleOf(unbalance) + 180) <= doubt.angle) turn++;
    }
    for (const share of [mass / sets, turn / sets]) {
      expect(share).toBeGreaterThan(0.93);
      expect(share).toBeLessThan(0.98);
    }
  });

  it('solves the readings printed in a maintenance article (10; 7, 12, 18 with 50 g at 0, 120, 240)', () => {
    // Geometry for even places, a the shake of the weight alone: the mean square is V0^2 + a^2, so a is 8.505; and the first harmonic
    // of the squares is 2 V0 a, so a is 8.063. The printed readings close no better than that: the answer lies between the two.
    const squares = [7 ** 2, 12 ** 2, 18 ** 2] as const;
    const byMean = Math.sqrt((squares[0] + squares[1] + squares[2]) / 3 - 10 ** 2);
    const byHarmonic = ((2 / 3) * sizeOf(squares.map((r, n) => arrow(r, 120 * n)).reduce(plus))) / (2 * 10);
    const runs: AmplitudeRun[] = [
      { weight: noArrow, amplitude: 10, doubt: 0.5 },
      { weight: arrow(50, 0), amplitude: 7, doubt: 0.5 },
      { weight: arrow(50, 120), amplitude: 12, doubt: 0.5 },
      { weight: arrow(50, 240), amplitude: 18, doubt: 0.5 },
    ];
    const { correction } = fitOf(runs);
    expect(sizeOf(correction)).toBeGreaterThan((50 * 10) / byMean);
    expect(sizeOf(correction)).toBeLessThan((50 * 10) / byHarmonic);
    // Where the three circles come nearest, by a scan over the whole drawing: a circle about each place on the first one.
    let nearest = { off: Number.POSITIVE_INFINITY, x: 0, y: 0 };
    for (let x = -20; x <= 20; x += 0.05) {
      for (let y = -20; y <= 20; y += 0.05) {
        const off = [7, 12, 18].reduce((total, r, n) => {
          const away = sizeOf(minus({ x, y }, arrow(10, 120 * n)));
          return total + (away - r) ** 2;
        }, 0);
        if (off < nearest.off) nearest = { off, x, y };
      }
    }
    expect(apart(angleOf(correction), angleOf(nearest))).toBeLessThan(3);
    expect(Math.abs(sizeOf(correction) / ((50 * 10) / sizeOf(nearest)) - 1)).toBeLessThan(0.08);
  });

  it('has no answer when the weight made nothing worse on the whole, or stood in too few places', () => {
    const at = (degrees: number, amplitude: number) => ({ weight: arrow(10, degrees), amplitude, doubt: 0.1 });
    const first = { weight: noArrow, amplitude: 5, doubt: 0.1 };
    expect(correctionWithoutPhase([first, at(0, 4), at(120, 4.5), at(240, 4.8)])).toBeNull();
    expect(correctionWithoutPhase([first, at(0, 6), at(120, 7)])).toBeNull();
  });
});
