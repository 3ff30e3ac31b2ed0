/** Limits and words that the faults of open teeth and of windows share. */

/** Shortest land, mm, that a tooth must keep: a thousandth, so that the writers never round it away. */
export const LEAST_LAND = 0.001;
/** What may be missing at a limit that is met exactly, mm. */
export const SLACK = 1e-6;

/** A length for a sentence: at most four decimals. */
export function lengthWords(value: number): string {
  return Number.isFinite(value) ? `${Number(value.toFixed(4))} mm` : String(value);
}
