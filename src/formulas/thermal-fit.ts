/**
 * A register between two materials, cold and hot. mm, degrees C, 1/K.
 *
 * Valid for: both parts at one temperature, -60 to +200 degrees C, where handbook expansion coefficients (mean values near
 * 20 degrees C) hold within a few per cent. Left out: one part warmer than the other, squeezing where there is interference,
 * and the bolts, which hold the faces and drag on the register.
 */
import { clearanceRange, type Limits } from './fit.ts';

/** The temperature at which drawings hold. Source: ISO 1. */
export const referenceTemperature = 20;

/** Least and greatest diametral clearance, mm; negative is interference. */
export interface Clearance {
  readonly least: number;
  readonly greatest: number;
}

/**
 * Change of the diametral clearance, mm: dc = d (alpha_recess - alpha_spigot) dT. Positive: it opens.
 * @param d nominal diameter of the register, mm, > 0
 * @param warming T - 20, K
 * Source: thermal expansion. Left out: the expansion of the clearance itself, below a micrometre.
 */
export function clearanceChange(d: number, alphaRecess: number, alphaSpigot: number, warming: number): number {
  return d * (alphaRecess - alphaSpigot) * warming;
}

/** Diameter at a temperature, mm: D (1 + alpha (T - 20)). */
export function diameterAt(diameter: number, alpha: number, temperature: number): number {
  return diameter * (1 + alpha * (temperature - referenceTemperature));
}

/** A register with what its two halves are made of. Limits at 20 degrees C, mm; expansion 1/K. */
export interface WarmRegister {
  readonly recess: Limits;
  readonly spigot: Limits;
  readonly alphaRecess: number;
  readonly alphaSpigot: number;
}

/** Least and greatest clearance at one temperature, mm: every limit is expanded by itself, so nothing is linearised. */
export function clearanceAt(
  { recess, spigot, alphaRecess, alphaSpigot }: WarmRegister,
  temperature: number,
): Clearance {
  const grown = ({ lower, upper }: Limits, alpha: number): Limits => ({
    lower: diameterAt(lower, alpha, temperature),
    upper: diameterAt(upper, alpha, temperature),
  });
  return clearanceRange(grown(recess, alphaRecess), grown(spigot, alphaSpigot));
}

/** Clearances of a register over its working temperatures. */
export interface ColdAndHot {
  readonly cold: Clearance;
  readonly at20: Clearance;
  readonly hot: Clearance;
  /** Over all temperatures between: clearance changes evenly, so the worst is at an end. */
  readonly worst: Clearance;
}

/** Clearances cold, at 20 degrees C and hot. `coldest` and `hottest` in degrees C, in either order. */
export function coldAndHot(register: WarmRegister, coldest: number, hottest: number): ColdAndHot {
  const cold = clearanceAt(register, Math.min(coldest, hottest));
  const hot = clearanceAt(register, Math.max(coldest, hottest));
  const at20 = clearanceAt(register, referenceTemperature);
  return {
    cold,
    at20,
    hot,
    worst: { least: Math.min(cold.least, hot.least), greatest: Math.max(cold.greatest, hot.greatest) },
  };
}

/**
 * The temperature at which a clearance measured at 20 degrees C is gone, degrees C; null when both halves expand alike.
 * Above it (aluminium spigot in steel) or below it (aluminium recess on steel) the parts bind.
 */
export function temperatureOfContact(
  clearance: number,
  d: number,
  alphaRecess: number,
  alphaSpigot: number,
): number | null {
  const perKelvin = clearanceChange(d, alphaRecess, alphaSpigot, 1);
  return perKelvin === 0 ? null : referenceTemperature - clearance / perKelvin;
}
