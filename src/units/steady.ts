/**
 * A number with fixed decimals, the same on every machine. Sines and roots differ in their last bit from one engine to the next; where a
 * figure stands exactly half way between two texts, that bit would decide. A nudge of a billionth away from zero decides instead.
 */
export function steadyFixed(value: number, decimals: number): string {
  const nudge = Math.max(1e-9, Math.abs(value) * 1e-12);
  return (value + Math.sign(value) * nudge).toFixed(decimals);
}

/**
 * What a dial showed, or its doubt, as words and pictures tell it, mm: thousandths, and a figure more where half of a reading ends in five
 * ten-thousandths. Parts of one amount are told whole, not as what rounding leaves of each other.
 */
export function dialText(mm: number): string {
  const short = steadyFixed(mm, 3);
  return Math.abs(Number(short) - mm) < 1e-6 ? short : steadyFixed(mm, 4);
}
