/** A wheel that turns about an axis beside its own centre, as a sensor that stands still meets it. mm, radians. */
import { hypot } from '../units/hypot.ts';
import { asin, atan2, cos, sin } from '../units/trig.ts';

/** How far the wheel's centre is from the axis, and the turn at which it points at the sensor, so that the gap is least. */
export interface Eccentricity {
  /** mm, 0 or more and less than the sensor's distance. */
  readonly size: number;
  readonly nearestAt: number;
}

/** Where the sensor stands as the wheel sees it. */
export interface SeenFromWheel {
  /** Distance from the wheel's own centre. */
  readonly rho: number;
  /** How far the wheel has moved past the sensor, radians: the turn, a little ahead or behind. */
  readonly passed: number;
}

/** `rho` of `seenFromWheel` alone: half of its work. */
export function distanceFromWheel(turn: number, reach: number, { size, nearestAt }: Eccentricity): number {
  return hypot(size * sin(turn - nearestAt), reach - size * cos(turn - nearestAt));
}

/**
 * The sensor in the wheel's frame after a turn. With x = turn - nearestAt: rho^2 = L^2 + e^2 - 2 L e cos x, passed = turn +
 * atan(e sin x / (L - e cos x)). Source: plane geometry, exact.
 * @param reach L, distance of the sensor from the axis of turning
 */
export function seenFromWheel(turn: number, reach: number, { size, nearestAt }: Eccentricity): SeenFromWheel {
  const across = size * sin(turn - nearestAt);
  const along = reach - size * cos(turn - nearestAt);
  return { rho: hypot(across, along), passed: turn + atan2(across, along) };
}

/** The turn at which a place of the wheel passes the sensor: `seenFromWheel` the other way round, to the last digit. */
export function turnWhenPassed(passed: number, reach: number, off: Eccentricity): number {
  // By the sine rule in the triangle of axis, centre and sensor: e sin(passed - nearestAt) = L sin(passed - turn).
  return passed - asin((off.size / reach) * sin(passed - off.nearestAt));
}

/**
 * Greatest change of the time from tooth to tooth that running out brings, as a share of the even time: e / L times
 * sin(pi / N) / (pi / N), once up and once down a turn. First order in e / L; exact to (e / L)^2.
 * Source: difference of the shift (e / L) sin(angle) between two teeth; the share e / L is the trade's figure for eccentricity.
 */
export function runoutRipple(size: number, reach: number, teeth: number): number {
  const half = Math.PI / teeth;
  return ((size / reach) * sin(half)) / half;
}
