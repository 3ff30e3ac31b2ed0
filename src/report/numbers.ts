/** Numbers as the report shows them. */
import type { Finding } from '../model/finding.ts';
import { senseOf } from '../model/limit-use.ts';
import { formatLength, type LengthUnits } from '../units/format.ts';
import { limitTexts } from '../units/limits.ts';
import { steadyFixed } from '../units/steady.ts';

/** A number with at most three decimals and about four figures; small ones keep two figures. Never `-0`, never an exponent. */
export function numberText(value: number, leastDecimals = 0): string {
  if (!Number.isFinite(value)) return 'no number';
  const size = Math.abs(value);
  const usual = size >= 1000 ? 0 : size >= 100 ? 1 : size >= 10 ? 2 : size >= 0.01 || size === 0 ? 3 : 6;
  const decimals = Math.max(usual, leastDecimals);
  const text = steadyFixed(value, decimals);
  const short = text.includes('.') ? text.replace(/0+$/, '').replace(/\.$/, '') : text;
  return Number(short) === 0 ? '0' : short;
}

/** Micrometres count in a length of any size: a register of 59.995 is not one of 59.990. */
const lengthDecimals = 3;

/** A number with its unit; lengths in inches beside it when the job is in inches. */
export function quantityText(value: number | null, unit: string, units: LengthUnits): string {
  if (value === null) return '-';
  const number = numberText(value, unit === 'mm' ? lengthDecimals : 0);
  const plain = unit === '' ? number : `${number} ${unit}`;
  return unit === 'mm' && units === 'in' ? `${plain} (${formatLength(value, 'in')})` : plain;
}

/** A finding's limit and which way it runs: "at most 0.2 mm"; "limit 3 mm" where nobody said. */
export function limitText(finding: Finding, units: LengthUnits): string {
  return `${senseOf(finding) ?? 'limit'} ${quantityText(finding.limit, finding.unit, units)}`;
}

/** A length as a key number: two decimals, inches beside it when the job is in inches. */
export function sizeText(mm: number, units: LengthUnits, decimals = 2): string {
  const plain = formatLength(mm, 'mm', decimals);
  return units === 'in' ? `${plain} (${formatLength(mm, 'in')})` : plain;
}

/** Limits of a size, rounded inwards: "59.971 to 59.990 mm"; inches beside them when the job is in inches. */
export function limitsText(lower: number, upper: number, units: LengthUnits): string {
  const said = (unit: LengthUnits) => {
    const texts = limitTexts(lower, upper, unit);
    return `${texts.lower} to ${texts.upper} ${unit}`;
  };
  return units === 'mm' ? said('mm') : `${said('mm')} (${said('in')})`;
}
