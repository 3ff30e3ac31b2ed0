/** Numbers as reports show them. Internal units in, text out. */

import { steadyFixed } from './steady.ts';

/** 1 lbf.ft: 0.45359237 x 9.80665 x 0.3048 N.m, exact by definition (here to 14 figures). */
const newtonMetresPerPoundFoot = 1.3558179483314;

/** What lengths are shown in. */
export type LengthUnits = 'mm' | 'in';

/** A length in mm as text: '57.000 mm', or '2.2441 in' when inches are asked for. Three and four decimals unless said. */
export function formatLength(mm: number, units: LengthUnits = 'mm', decimals = units === 'mm' ? 3 : 4): string {
  return `${fixed(units === 'mm' ? mm : mm / 25.4, decimals)} ${units}`;
}

/** A torque in N.m as text, '480.0 N.m'; beside inches it is shown in lbf.ft. */
export function formatTorque(newtonMetres: number, units: LengthUnits = 'mm'): string {
  return units === 'mm'
    ? `${fixed(newtonMetres, 1)} N.m`
    : `${fixed(newtonMetres / newtonMetresPerPoundFoot, 1)} lbf.ft`;
}

/**
 * A screw's, washer's or nut's size as it is asked for in a shop: '25' (mm) beside a metric thread, '0.875 in' beside the others.
 * @param thread designation: "M10", "3/8-24 UNF"
 * @param mm size, mm; three decimals at most (inches: four), without trailing zeros
 */
export function formatShopSize(thread: string, mm: number): string {
  return /^M\s*\d/i.test(thread) ? String(Number(mm.toFixed(3))) : `${Number((mm / 25.4).toFixed(4))} in`;
}

/** A speed in rpm as text: '4200 rpm'. */
export function formatSpeed(rpm: number): string {
  return `${fixed(rpm, Math.abs(rpm) < 10 ? 1 : 0)} rpm`;
}

/** An angle in degrees as text: '12.500 deg'. */
export function formatAngle(degrees: number): string {
  return `${fixed(degrees, 3)} deg`;
}

/** A mass in grams as text: '840.0 g', or '8.400 kg' from one kilogram; in ounces or pounds beside inches. */
export function formatMass(grams: number, units: LengthUnits = 'mm'): string {
  if (units === 'mm') return Math.abs(grams) < 1000 ? `${fixed(grams, 1)} g` : `${fixed(grams / 1000, 3)} kg`;
  const pounds = grams / 453.59237;
  return Math.abs(pounds) < 1 ? `${fixed(pounds * 16, 2)} oz` : `${fixed(pounds, 3)} lb`;
}

/** Fixed decimals without a minus zero. */
function fixed(value: number, decimals: number): string {
  const text = steadyFixed(value, decimals);
  return /^-0(\.0+)?$/.test(text) ? text.slice(1) : text;
}
