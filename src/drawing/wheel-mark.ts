/** The mark of a position on a wheel, in the words of its pictures: teeth left out, one wide tooth, or one tooth more. */

/** Equal places round a wheel and the mark among them; at most one of the three is more than 0. */
export interface MarkedWheel {
  readonly teeth: number;
  readonly missing: number;
  /** Neighbouring valleys that are filled; left out: none. */
  readonly wide?: number | undefined;
  /** 1: one more tooth midway in the valley before tooth 1; left out: none. */
  readonly extra?: number | undefined;
}

/** Teeth from tooth 1 on that are alike and stand at their places. */
export const plainTeeth = ({ teeth, missing, wide = 0 }: MarkedWheel): number =>
  teeth - missing - (wide > 0 ? wide + 1 : 0);

/** The mark in a cell of a table: "one wide, 3 places"; empty where all teeth are alike or some are missing. */
export function markCell({ wide = 0, extra = 0 }: MarkedWheel): string {
  if (wide > 0) return `one wide, ${wide + 1} places`;
  return extra > 0 ? 'one more, midway' : '';
}

/** What stands before tooth 1, as a clause; empty where all teeth are alike. `tooth`: tooth or bar. */
export function markClause({ missing, wide = 0, extra = 0 }: MarkedWheel, tooth: string): string {
  if (missing > 0) return `${missing} left out before ${tooth} 1`;
  if (wide > 0) return `the last ${wide + 1} before ${tooth} 1 are one wide ${tooth}`;
  return extra > 0 ? `and one ${tooth} more midway before ${tooth} 1` : '';
}
