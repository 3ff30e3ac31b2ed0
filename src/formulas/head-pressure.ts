/** Pressure under screw heads, nuts and washers. mm, mm2, N, MPa. */
import { cutFromRing, type HoleBeside } from './ring-cut.ts';

/** Growth of the bearing diameter through a washer, as a multiple of its thickness. VDI 2230-1, from memory. */
export const spreadThroughWasher = 1.6;

/** The ring that a head presses on, mm. */
export interface BearingRing {
  /** Outside of the bearing face. */
  readonly outer: number;
  /** Hole or chamfer under it, whichever is wider. */
  readonly inner: number;
  /** Other holes that may lie partly under the ring; left out where none is near. */
  readonly beside?: readonly HoleBeside[];
}

/**
 * Bearing area Ap = pi/4 (dw^2 - dh^2), mm2; 0 where the hole is as wide as the head. A sunk cone counts with the same area, seen along the
 * screw: its slanted face is larger, and presses harder by as much. What other holes take out of the ring is taken off. Left out: an edge that is not square to the screw, and that a ring cut
 * on one side presses harder beside the cut than on the whole.
 * Source: VDI 2230-1; the cone by statics without friction; the cut by the area common to two discs.
 */
export function bearingArea({ outer, inner, beside }: BearingRing): number {
  const whole = Math.max(0, (Math.PI / 4) * (outer * outer - inner * inner));
  return beside === undefined || whole === 0 ? whole : Math.max(0, whole - cutFromRing(outer, inner, beside));
}

/** Pressure p = FM/Ap, MPa; infinite without area. `force` N. Source: VDI 2230-1. */
export function seatPressure(force: number, ring: BearingRing): number {
  const area = bearingArea(ring);
  return area > 0 ? force / area : Number.POSITIVE_INFINITY;
}

/**
 * Ring under a washer, mm: it spreads the head's face by 1.6 times its thickness, but never beyond its own outside.
 * @param dw bearing diameter of the head, mm
 * @param washer outside and thickness, and its hole, mm
 * @param hole hole in the part below, mm
 */
export function ringUnderWasher(
  dw: number,
  washer: { readonly outside: number; readonly thickness: number; readonly hole: number },
  hole: number,
): BearingRing {
  return {
    outer: Math.min(washer.outside, dw + spreadThroughWasher * washer.thickness),
    inner: Math.max(hole, washer.hole),
  };
}
