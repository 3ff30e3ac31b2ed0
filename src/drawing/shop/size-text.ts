/** Sizes as a workshop drawing writes them: bare numbers in the drawing's one unit. */
import { limitTexts as inward } from '../../units/limits.ts';
import type { LabelUnits } from '../length-text.ts';

const mmPerInch = 25.4;

/** A length: up to three decimals in mm, four in inches. */
export function sizeText(mm: number, units: LabelUnits): string {
  if (units === 'in') return (mm / mmPerInch).toFixed(4);
  return String(Number(mm.toFixed(3)) + 0);
}

/** A tolerance, in inches rounded down, so that what passes the drawing passes the design. */
export const toleranceText = (mm: number, units: LabelUnits): string =>
  units === 'in' ? (Math.floor((mm / mmPerInch) * 1e4 + 1e-6) / 1e4).toFixed(4) : sizeText(mm, units);

export const diameter = (mm: number, units: LabelUnits): string => `\u00d8${sizeText(mm, units)}`;

/** Both limits, the larger one first, rounded inwards as on every paper. */
export function limitTexts(lower: number, upper: number, units: LabelUnits): readonly [string, string] {
  const texts = inward(lower, upper, units);
  return [texts.upper, texts.lower];
}

/** A place in the hole table: fixed decimals, so that columns line up. */
export const placeText = (mm: number, units: LabelUnits): string => {
  const shown = units === 'in' ? (mm / mmPerInch).toFixed(4) : mm.toFixed(3);
  return Number(shown) === 0 ? shown.replace('-', '') : shown;
};

export const degreesText = (degrees: number): string => degrees.toFixed(3);

/** An angle without idle decimals. */
export const angleText = (degrees: number): string => `${Number(degrees.toFixed(3)) + 0}\u00b0`;

export const massText = (grams: number, units: LabelUnits): string =>
  units === 'in'
    ? `${(grams / 453.59237).toFixed(2)} lb`
    : grams < 1000
      ? `${grams.toFixed(0)} g`
      : `${(grams / 1000).toFixed(2)} kg`;
