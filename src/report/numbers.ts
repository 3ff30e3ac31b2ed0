/** Numbers as the report shows them. */
import { formatLength, type LengthUnits } from '../units/format.ts';

/** A number with at most three decimals and about four figures; small ones keep two figures. Never `-0`, never an exponent. */
export function numberText(value: number): string {
  if (!Number.isFinite(value)) return 'no number';
  const size = Math.abs(value);
  const decimals = size >= 1000 ? 0 : size >= 100 ? 1 : size >= 10 ? 2 : size >= 0.01 || size === 0 ? 3 : 6;
  const text = value.toFixed(decimals);
  const short = text.includes('.') ? text.replace(/0+$/, '').replace(/\.$/, '') : text;
  return Number(short) === 0 ? '0' : short;
}

/** A number with its unit; lengths in inches beside it when the job is in inches. */
export function quantityText(value: number | null, unit: string, units: LengthUnits): string {
  if (value === null) return '-';
  const plain = unit === '' ? numberText(value) : `${numberText(value)} ${unit}`;
  return unit === 'mm' && units === 'in' ? `${plain} (${formatLength(value, 'in')})` : plain;
}

/** A length as a key number: two decimals, inches beside it when the job is in inches. */
export function sizeText(mm: number, units: LengthUnits, decimals = 2): string {
  const plain = formatLength(mm, 'mm', decimals);
  return units === 'in' ? `${plain} (${formatLength(mm, 'in')})` : plain;
}
