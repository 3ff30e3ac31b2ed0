/** What a hole beside a screw takes out of the ring that its head presses on. mm, mm2. */
import { acos } from '../units/trig.ts';

/** A hole beside a screw. */
export interface HoleBeside {
  /** From the screw's axis to its centre. */
  readonly distance: number;
  readonly radius: number;
}

/** Area of a disc of radius `r` beyond a chord that runs `off` from its middle, mm2; `off` < 0: the larger piece. */
function segment(r: number, off: number): number {
  const c = Math.min(1, Math.max(-1, off / r));
  return r * r * (acos(c) - c * Math.sqrt(1 - c * c));
}

/**
 * Area that two discs have in common, mm2; 0 where they do not meet, the smaller disc where it lies within the other.
 * Closed form: the two segments on either side of the chord through the points where the circles meet.
 * @param a radius of one, mm, >= 0
 * @param b radius of the other, mm, >= 0
 * @param distance between their middles, mm, >= 0
 */
export function commonArea(a: number, b: number, distance: number): number {
  if (distance >= a + b) return 0;
  const small = Math.min(a, b);
  if (distance <= Math.abs(a - b)) return Math.PI * small * small;
  const off = (distance * distance + a * a - b * b) / (2 * distance);
  return segment(a, off) + segment(b, distance - off);
}

/**
 * Area that holes take out of the ring between two circles about one middle, mm2.
 * @param outer outside diameter of the ring, mm
 * @param inner inside diameter, mm, <= outer
 * @param holes that do not run into each other within the ring
 */
export function cutFromRing(outer: number, inner: number, holes: readonly HoleBeside[]): number {
  return holes.reduce(
    (sum, { distance, radius }) =>
      sum + commonArea(outer / 2, radius, distance) - commonArea(inner / 2, radius, distance),
    0,
  );
}

/** Room between a disc of that diameter and the edge of the nearest hole, mm; negative: it lies over it by so much. Infinite without holes. */
export function roomBeside(diameter: number, holes: readonly HoleBeside[]): number {
  return Math.min(Number.POSITIVE_INFINITY, ...holes.map(({ distance, radius }) => distance - radius - diameter / 2));
}
