/**
 * What a bolted face carries by friction alone. N, mm, N.m.
 *
 * Valid for: plane faces pulled together by screws in clearance holes, torque about the pattern's own middle. Left out: help from a
 * tight register or dowels (a reserve), bending of thin flanges, and wet or painted faces, which need their own friction.
 */
import { hypot } from '../units/hypot.ts';

/** Where a screw stands, mm from the axis. */
interface Point {
  readonly x: number;
  readonly y: number;
}

/**
 * Torque at which a face begins to slip, N.m: T = mu sum(F R), every screw pressing where it stands.
 * @param force clamp force per screw, N, >= 0
 * @param mu friction between the faces
 * Source: statics; EN 1993-1-8 (3.9) has the same term per screw, ks n mu Fp / gammaM3 with one face and a normal hole.
 */
export function gripOfScrews(force: number, positions: readonly Point[], mu: number): number {
  return (mu * force * radiusSum(positions)) / 1000;
}

/** Sum of the screws' distances from the axis, mm. */
export function radiusSum(positions: readonly Point[]): number {
  return positions.reduce((sum, { x, y }) => sum + hypot(x, y), 0);
}

/**
 * Radius at which a ring under even pressure rubs, mm: (2/3)(R^3 - r^3)/(R^2 - r^2).
 * @param outside R and inside r of the contact ring, mm, 0 <= r < R
 * Source: Shigley eq. 16-28 (with diameters); uniform pressure.
 */
export function frictionRadius(outside: number, inside: number): number {
  return ((2 / 3) * (outside ** 3 - inside ** 3)) / (outside ** 2 - inside ** 2);
}

/** Torque at which an evenly pressed ring slips, N.m: mu F times the friction radius. `force` is that of all screws, N. */
export function gripOfRing(force: number, outside: number, inside: number, mu: number): number {
  return (mu * force * frictionRadius(outside, inside)) / 1000;
}

/** What it takes to reach a safety S against a torque (N.m): clamp force per screw, N, at this friction, and friction at this force. */
export function gripNeeds(
  torque: number,
  safety: number,
  force: number,
  positions: readonly Point[],
  mu: number,
): { readonly force: number; readonly mu: number } {
  const perNewton = radiusSum(positions) / 1000;
  return { force: (safety * torque) / (mu * perNewton), mu: (safety * torque) / (force * perNewton) };
}
