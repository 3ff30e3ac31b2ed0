/**
 * Balancing a fitted shaft in one plane from trial-weight runs, with phase.
 *
 * At one speed the vibration is taken to grow in step with the unbalance: V = V0 + alpha W, where W is the weight added to the
 * shaft (size and angle), V the reading (size and phase), V0 the reading without it, and alpha the influence coefficient. The
 * weight that brings V to nothing is C = -V0 / alpha; with one trial weight T it is -T V0 / (V1 - V0). Source: the vector method of
 * maintenance handbooks and of ISO 21940-13 (balancing in place), closed form.
 *
 * Angles of weights run counter-clockwise from a mark. The formula holds when the phase counts the same way: a weight moved on by
 * ten degrees must raise the phase by ten. A phase that counts the other way is mirrored first.
 */
import { asin } from '../units/trig.ts';
import { type Arrow, angleOf, minus, over, scaled, sizeOf, sumOf, times } from './arrows.ts';

/** One run: what was on the shaft and what was read. */
export interface TrialRun {
  /** Weight added to the shaft, g at its angle; no size for the run as found. */
  readonly weight: Arrow;
  /** Vibration, any unit, at its phase. */
  readonly reading: Arrow;
  /** Half-width of that reading (two standard deviations, in any direction), same unit, > 0. */
  readonly doubt: number;
}

export interface TrialFit {
  /** Reading with nothing added, as all runs together tell it. */
  readonly first: Arrow;
  /** Change of the reading for one gram at angle 0. */
  readonly influence: Arrow;
  /** The whole weight to be on the shaft, g; trial weights taken off. */
  readonly correction: Arrow;
  /** Half-width of the correction in any direction, g: root sum of squares of what each reading's doubt can move it. */
  readonly doubt: number;
  /** For each run: how far the fit lies from the reading, in units of that reading's doubt. All 0 with two runs. */
  readonly misfits: readonly number[];
}

/**
 * Correction from two runs or more, least squares weighted by the doubts.
 * @returns null when the runs carry one and the same weight, or when the weights change nothing
 */
export function correctionWithPhase(runs: readonly TrialRun[]): TrialFit | null {
  const shares = runs.map(({ doubt }) => 1 / (doubt * doubt));
  const whole = shares.reduce((a, b) => a + b, 0);
  const mean = (arrows: readonly Arrow[]) =>
    scaled(sumOf(arrows.map((one, n) => scaled(one, shares[n] ?? 0))), 1 / whole);
  const middleWeight = mean(runs.map(({ weight }) => weight));
  const middleReading = mean(runs.map(({ reading }) => reading));
  const offs = runs.map(({ weight }) => minus(weight, middleWeight));
  const spread = offs.reduce((total, off, n) => total + (shares[n] ?? 0) * sizeOf(off) ** 2, 0);
  const heaviest = Math.max(...runs.map(({ weight }) => sizeOf(weight)));
  if (!(spread > 1e-12 * whole * heaviest ** 2)) return null;
  // How much each reading moves the influence and the first reading: the answer is linear in the readings.
  const ofInfluence = offs.map((off, n) => scaled({ x: off.x, y: -off.y }, (shares[n] ?? 0) / spread));
  const ofFirst = ofInfluence.map((gain, n) => minus({ x: (shares[n] ?? 0) / whole, y: 0 }, times(gain, middleWeight)));
  const influence = sumOf(ofInfluence.map((gain, n) => times(gain, runs[n]?.reading ?? gain)));
  if (!(sizeOf(influence) > 0)) return null;
  const first = minus(middleReading, times(influence, middleWeight));
  const correction = scaled(over(first, influence), -1);
  const moved = runs.map(({ doubt }, n) => {
    const gain = sumOf([ofFirst[n] ?? first, times(ofInfluence[n] ?? first, correction)]);
    return (sizeOf(gain) / sizeOf(influence)) * doubt;
  });
  const misfits = runs.map(
    ({ weight, reading, doubt }) => sizeOf(minus(reading, sumOf([first, times(influence, weight)]))) / doubt,
  );
  return { first, influence, correction, doubt: Math.hypot(...moved), misfits };
}

/** Half-width of an arrow's angle, degrees, when its tip may be off by `doubt` in any direction; 180 when it may be anything. */
export function angleDoubt(size: number, doubt: number): number {
  return doubt >= size ? 180 : (asin(doubt / size) * 180) / Math.PI;
}

/** A trial weight tells enough when it changes the reading by this share, or turns the phase by so much. Common practice. */
export const tellingChange = { share: 0.3, degrees: 30 } as const;

/**
 * Whether a trial weight changed the reading enough to be trusted.
 * Source: the 30 % or 30 degrees rule of maintenance practice (common practice).
 */
export function isTelling(first: Arrow, withTrial: Arrow): boolean {
  const share = Math.abs(sizeOf(withTrial) / sizeOf(first) - 1);
  const turn = Math.abs(((angleOf(withTrial) - angleOf(first) + 540) % 360) - 180);
  return share >= tellingChange.share || turn >= tellingChange.degrees;
}

/**
 * Mass of a first trial weight whose centrifugal force is a tenth of the weight that the balanced end carries, g.
 * m = 0.1 M g / (r omega^2); common practice of maintenance handbooks.
 * @param load mass carried by that end, g, > 0
 * @param radius where the weight sits, mm, > 0
 * @param rpm speed of the runs, > 0
 */
export function trialMass(load: number, radius: number, rpm: number): number {
  const omega = (rpm * 2 * Math.PI) / 60;
  return (0.1 * load * 9.80665) / ((radius / 1000) * omega * omega);
}
