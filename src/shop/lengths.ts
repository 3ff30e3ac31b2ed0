/** Lengths as the bench reads them: in the units of its read-out, and in millimetres beside inches. */
import type { LengthUnits } from '../units/format.ts';

/** A way to write lengths given in mm: "12.5 mm", or "0.4921 in (12.5 mm)". Zeros at the end are left out unless decimals are asked for. */
export function lengthsIn(units: LengthUnits): (mm: number, decimals?: number) => string {
  return (mm, decimals) => {
    const short = (value: number, most: number): string =>
      decimals === undefined ? String(Number(value.toFixed(most)) + 0) : value.toFixed(decimals);
    const metric = `${short(mm, 3)} mm`;
    return units === 'mm' ? metric : `${Number((mm / 25.4).toFixed(4)) + 0} in (${metric})`;
  };
}
