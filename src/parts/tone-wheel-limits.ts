/** Limits and words that the faults of open teeth and of windows share. */

/** Shortest land, mm, that a tooth must keep: a thousandth, so that the writers never round it away. */
export const LEAST_LAND = 0.001;
/** What may be missing at a limit that is met exactly, mm. */
export const SLACK = 1e-6;

/** Why an extra tooth or bar has no room midway in a valley or window. Widths in mm. */
export function noRoomForExtra(tooth: string, width: number, valley: string, room: number): string {
  return (
    `extra: one more ${tooth} of ${lengthWords(width)} has no room midway in a ${valley} of ${lengthWords(room)}. ` +
    `Allowed: a ${tooth} narrower than the ${valley} all the way down, so a ratio below 0.5. Or mark the place by wide or missing.`
  );
}

/** A length for a sentence: at most four decimals. */
export function lengthWords(value: number): string {
  return Number.isFinite(value) ? `${Number(value.toFixed(4))} mm` : String(value);
}
