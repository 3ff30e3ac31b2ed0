/** Which sizes a fit ring or plug tests: a ladder round the measured register, and one gauge of many steps or many gauges of one. */

/** A flange's register as it was measured. mm. */
export interface GaugedRegister {
  /** male: a spigot, tested with rings. female: a recess, tested with plugs. */
  readonly gender: 'male' | 'female';
  /** Where the true diameter is taken to lie. */
  readonly limits: { readonly lower: number; readonly upper: number };
  /** Least height of the spigot or depth of the recess. */
  readonly depth: number;
  /** Fillet at a spigot's foot, or chamfer at a recess's mouth. */
  readonly corner: number;
}

export interface LadderSettings {
  /** How many sizes, 3 or more. */
  readonly steps: number;
  /** From one size to the next on the diameter, mm; auto: by the doubt. */
  readonly step: number | 'auto';
  /** The printer's allowance on register diameters, mm: added to rings, taken off plugs. */
  readonly allowance: number;
}

export interface Ladder {
  /** Sizes as they are marked, mm to 0.01, largest first. The allowance is not in them. */
  readonly sizes: readonly number[];
  readonly step: number;
}

/** Steps worth printing, mm. Finer than 0.05 mm is lost in a filament printer's own scatter (common practice). */
const worthPrinting: readonly number[] = [0.05, 0.1, 0.2, 0.3, 0.5, 1, 2];
/** Share of the stated allowance by which a printer that was never checked may be off. A rule of this project. */
const allowanceDoubt = 0.25;
/** Height of one step of a stepped gauge: five layers of 0.3 mm, enough to see how far the ring came. */
export const stepHeight = 1.5;
/** Lead chamfer that a turned spigot or bored recess usually has, mm (common practice). It tells nothing of the size. */
const usualLead = 0.5;

/**
 * Sizes round the middle of the register's limits. An automatic step is the smallest one worth printing with which the ladder reaches
 * as far as the register's doubt and a quarter of the printer's allowance: 0.1 mm for a caliper (0.03) and an allowance of 0.3,
 * 0.05 mm for a micrometer. Sizes are rounded to 0.01 mm. Sizes below 2 mm are left out.
 */
export function fitLadder(
  { limits }: Pick<GaugedRegister, 'limits'>,
  { steps, step, allowance }: LadderSettings,
): Ladder {
  const doubt = (limits.upper - limits.lower) / 2;
  const reach = doubt + allowanceDoubt * Math.abs(allowance);
  const side = (steps - 1) / 2;
  const chosen = step === 'auto' ? (worthPrinting.find((size) => side * size >= reach - 1e-9) ?? 2) : step;
  const middle = Math.round(50 * (limits.lower + limits.upper)) / 100;
  const sizes = Array.from({ length: steps }, (_, i) => Math.round(100 * (middle + (side - i) * chosen)) / 100);
  return { sizes: [...new Set(sizes)].filter((size) => size >= 2), step: chosen };
}

/**
 * One stepped gauge needs a register deep enough that its last step still reaches: the depth less the lead chamfer and the corner must
 * hold all steps. Shallow registers, and that is most of them (2 to 5 mm), get one gauge a size.
 */
export function takesSteppedGauge({ depth, corner }: Pick<GaugedRegister, 'depth' | 'corner'>, sizes: number): boolean {
  return depth - corner - usualLead >= sizes * stepHeight - 1e-9;
}
