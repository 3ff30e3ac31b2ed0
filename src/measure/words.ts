/** How the measuring room says sizes. mm, degrees. */

/** A length to the hundredth (or as finely as told), without trailing zeros. */
export function mm(size: number, decimals = 3): string {
  return `${tidy(size, decimals)} mm`;
}

/** A number rounded, without trailing zeros or minus zero. */
export function tidy(value: number, decimals = 3): number {
  return Number(value.toFixed(decimals)) + 0;
}

/** An angle from 0 up to 360, degrees. */
export function turned(angle: number): number {
  const within = ((angle % 360) + 360) % 360;
  return within > 360 - 1e-9 ? 0 : within;
}

/** Size with its doubt: "84.02 +-0.05 mm". */
export function withDoubt(value: number, doubt: number): string {
  return `${tidy(value)} +-${tidy(doubt)} mm`;
}
