/** Sizes as labels show them: short, in the units of the job. */
import { formatLength } from '../units/format.ts';
import { limitTexts } from '../units/limits.ts';

export type LabelUnits = 'mm' | 'in';

const fixed = (value: number, decimals: number): string => {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace('-', '') : text;
};

/** A length in mm as a label: two decimals, three when they are needed; inches beside it when the job is in inches. */
export function lengthText(mm: number, units: LabelUnits, decimals = 2): string {
  const needs = Math.abs(mm * 10 ** decimals - Math.round(mm * 10 ** decimals)) > 1e-4 ? decimals + 1 : decimals;
  const text = fixed(mm, needs);
  return units === 'in' ? `${text} [${formatLength(mm, 'in')}]` : text;
}

/** A diameter as a label. */
export const diameterText = (mm: number, units: LabelUnits, decimals = 2): string =>
  `\u00d8${lengthText(mm, units, decimals)}`;

/** The two limits of a size, rounded inwards; inches beside them when the job is in inches. */
export function limitsText(lower: number, upper: number, units: LabelUnits): string {
  const said = (unit: LabelUnits) => {
    const texts = limitTexts(lower, upper, unit);
    return `${texts.lower} to ${texts.upper}`;
  };
  return `${said('mm')}${units === 'in' ? ` [${said('in')} in]` : ''}`;
}

/** A range that comes out of other sizes, a clearance, in mm to a micrometre; inches beside it when the job is in inches. */
export const rangeText = (lower: number, upper: number, units: LabelUnits): string =>
  `${fixed(lower, 3)} to ${fixed(upper, 3)}${
    units === 'in' ? ` [${fixed(lower / 25.4, 4)} to ${fixed(upper / 25.4, 4)} in]` : ''
  }`;

/** What the plain numbers of a picture are in. */
export const sizesText = (units: LabelUnits): string => (units === 'in' ? 'sizes in mm [inches]' : 'sizes in mm');

/** An angle in degrees as a label. */
export const angleText = (degrees: number): string => `${fixed(degrees, 2)}\u00b0`;
