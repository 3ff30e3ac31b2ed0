/** Limits of size as text. One way of rounding for every paper and picture: inwards, so that what passes the paper passes the design. */
import type { LengthUnits } from './format.ts';

/** Limits closer than this get a figure more, inches: four ten-thousandths rounded inwards would eat half of them. */
const closeInches = 4e-4;
/** Most figures that are added where rounding inwards would shut the limits. */
const mostMore = 3;

/**
 * Both limits of a size as bare numbers, rounded inwards: the lower one up, the upper one down.
 * @param lower mm, not above upper
 * @param upper mm
 * @param decimals thousandths of a mm or ten-thousandths of an inch (inch limits closer than 0.0004 in: a figure more), unless said
 * @returns where that would shut the limits, as many figures more as it takes; plain rounding where both are one number
 */
export function limitTexts(
  lower: number,
  upper: number,
  units: LengthUnits,
  decimals?: number,
): { readonly lower: string; readonly upper: string } {
  const [low, high] = units === 'in' ? [lower / 25.4, upper / 25.4] : [lower, upper];
  const first = decimals ?? (units === 'mm' ? 3 : high - low < closeInches ? 5 : 4);
  for (let figures = first; figures <= first + mostMore; figures++) {
    const step = 10 ** figures;
    // Binary noise is no reason to move a limit by a whole figure.
    const [from, to] = [Math.ceil(low * step - 1e-6) + 0, Math.floor(high * step + 1e-6) + 0];
    if (from < to || (from === to && high - low < 1e-9))
      return { lower: (from / step).toFixed(figures), upper: (to / step).toFixed(figures) };
  }
  return { lower: low.toFixed(first), upper: high.toFixed(first) };
}
