/** Clearance between a spigot and a recess. mm. */

/** Limits of size, mm. */
export interface Limits {
  readonly lower: number;
  readonly upper: number;
}

/** Least and greatest diametral clearance; negative is interference. Definition: ISO 286-1. */
export function clearanceRange(recess: Limits, spigot: Limits): { readonly least: number; readonly greatest: number } {
  return { least: recess.lower - spigot.upper, greatest: recess.upper - spigot.lower };
}

/** How far the axis of one register can lie off the other, mm: half the clearance, nothing where they interfere. */
export function eccentricityOf(clearance: number): number {
  return Math.max(0, clearance) / 2;
}
