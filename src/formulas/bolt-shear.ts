/**
 * What screws carry across their axis once a face has slipped and their holes bear on them. N, mm, MPa.
 *
 * Valid for: classes 4.6 to 10.9 as EN 1993-1-8 covers them, single shear, screws in clearance holes. 12.9 is outside that code; it is
 * reckoned as 10.9 here. Left out: bending of a screw across a gap, and tension at the same time (the code checks shear alone for
 * preloaded joints).
 */
import { hypot } from '../units/hypot.ts';

/** Partial factor on bolts and bearing. EN 1993-1-8 table 2.1, recommended value. */
export const gammaM2 = 1.25;

/**
 * Resistance of one screw in one shear plane, N: Fv,Rd = alpha_v fub A / gammaM2.
 * @param cls property class, '4.6' to '12.9'
 * @param section the thread's stress area where the thread lies in the plane, else the shank's, mm2
 * Source: EN 1993-1-8 table 3.4: alpha_v 0.6, but 0.5 for a 10.9 thread in the plane; fub is the nominal strength of the class.
 */
export function shearResistance(cls: string, section: number, plane: 'thread' | 'shank'): number {
  return (shearShare(cls, plane) * nominalStrength(cls) * section) / gammaM2;
}

/** alpha_v of EN 1993-1-8 table 3.4. */
export function shearShare(cls: string, plane: 'thread' | 'shank'): number {
  return plane === 'shank' || nominalStrength(cls) <= 800 ? 0.6 : 0.5;
}

/** Nominal tensile strength that a class is named for, MPa: "10.9" is 1000. ISO 898-1; EN 1993-1-8 table 3.1. */
export function nominalStrength(cls: string): number {
  return 100 * Math.floor(Number(cls));
}

/** Where a hole lies in its plate, mm. */
export interface BearingHole {
  /** Screw diameter. */
  readonly d: number;
  /** Hole diameter d0. */
  readonly hole: number;
  /** Plate thickness that bears. */
  readonly thickness: number;
  /** Centre to the nearest free edge, across the load; null when there is none near. */
  readonly edge: number | null;
  /** Centre to the next hole along the load. */
  readonly pitch: number;
}

/** Of k1 alpha_b no more than this counts in a lap joint with one row of screws. EN 1993-1-8 3.6.1(10). */
const oneRow = 1.5;

/**
 * Resistance of a hole's wall, N: Fb,Rd = k1 alpha_b fu d t / gammaM2, with k1 = min(2.8 e2/d0 - 1.7; 2.5) and
 * alpha_b = min(p1/(3 d0) - 1/4; fub/fu; 1), and k1 alpha_b at most 1.5. Screws on a circle have no end, only neighbours.
 * @param plateStrength fu, MPa
 * Source: EN 1993-1-8 table 3.4 and 3.6.1(10). Zero where a hole lies too near its edge or neighbour for the code.
 */
export function bearingResistance(
  { d, hole, thickness, edge, pitch }: BearingHole,
  cls: string,
  plateStrength: number,
): number {
  const k1 = edge === null ? 2.5 : Math.min((2.8 * edge) / hole - 1.7, 2.5);
  const alphaB = Math.min(pitch / (3 * hole) - 0.25, nominalStrength(cls) / plateStrength, 1);
  const share = Math.min(Math.max(0, k1) * Math.max(0, alphaB), oneRow);
  return (share * plateStrength * d * thickness) / gammaM2;
}

/**
 * Force on the screw that carries most, N: T r / sum(r^2), rigid plates, of which only a share of the screws bears at all.
 * @param torque N.m
 * @param share 1: fitted bolts in reamed holes. Less: clearance holes, of which the nearest bear first.
 * Source: NASA RP-1228 (loads on fastener groups); textbook flanged bolt couplings.
 */
export function screwForce(
  torque: number,
  positions: readonly { readonly x: number; readonly y: number }[],
  share: number,
): number {
  const radii = positions.map(({ x, y }) => hypot(x, y));
  const squares = radii.reduce((sum, r) => sum + r * r, 0);
  return (1000 * torque * Math.max(...radii)) / (squares * share);
}
