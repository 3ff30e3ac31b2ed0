/**
 * Length of bent sheet. The bend angle is counted from flat: 90 degrees for an L. Lengths in mm, angles in degrees.
 * Source: neutral fibre method, as in DIN 6935 and the trade; K is the neutral fibre's place from the inside, as a share of t.
 */
import { tan } from '../units/trig.ts';

/** One bend: its angle from flat (above 0, below 180), inside radius (0 or more), and K-factor (0 to 1). */
export interface Bend {
  readonly angle: number;
  readonly radius: number;
  readonly k: number;
}

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/** Length of the neutral fibre round the bend: BA = A (r + K t), A in radians. */
export function bendAllowance({ angle, radius, k }: Bend, thickness: number): number {
  return radians(angle) * (radius + k * thickness);
}

/** From where the straight ends to where the two outside faces would meet: tan(A / 2) (r + t). Grows without end towards 180. */
export function outsideSetback({ angle, radius }: Pick<Bend, 'angle' | 'radius'>, thickness: number): number {
  return tan(radians(angle) / 2) * (radius + thickness);
}

/** What the blank is shorter than the sum of its outside legs: BD = 2 OSSB - BA. */
export function bendDeduction(bend: Bend, thickness: number): number {
  return 2 * outsideSetback(bend, thickness) - bendAllowance(bend, thickness);
}

/** Length of the blank from its legs, measured to where the outside faces meet, one more than there are bends. */
export function flatLength(legs: readonly number[], bends: readonly Bend[], thickness: number): number {
  if (legs.length !== bends.length + 1) throw new Error(`${bends.length} bends need ${bends.length + 1} legs.`);
  const sum = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0);
  return sum(legs) - sum(bends.map((bend) => bendDeduction(bend, thickness)));
}

/** A trial bend: a strip of known length bent once, and its two legs measured to the outside. */
export interface TrialBend {
  readonly flat: number;
  readonly legs: readonly [number, number];
  readonly angle: number;
  readonly radius: number;
}

/** K-factor that a trial bend shows: the inverse of `flatLength`. May lie outside 0 to 0.5 when a reading is wrong. */
export function kFromTrialBend({ flat, legs, angle, radius }: TrialBend, thickness: number): number {
  const allowance = flat - legs[0] - legs[1] + 2 * outsideSetback({ angle, radius }, thickness);
  return (allowance / radians(angle) - radius) / thickness;
}
