/** What a check says. Findings are data: they are never thrown. */

export type Verdict = 'pass' | 'caution' | 'fail' | 'not assessed';

/** How bad a verdict is, to compare two of one check: what is not known is worse than a pass. */
export const gravity: Readonly<Record<Verdict, number>> = { pass: 0, 'not assessed': 1, caution: 2, fail: 3 };

/** One statement of one check about one feature. The JSON form of `check --json` is exactly this. */
export interface Finding {
  /** Stable lower-case words joined by hyphens. */
  readonly code: string;
  /** Feature id that the finding speaks of, or the part's id. */
  readonly feature: string;
  /** What was looked at, in trade words: "web between holes". */
  readonly title: string;
  readonly verdict: Verdict;
  /** The number found, and the number it is held against; null where the check has none. */
  readonly value: number | null;
  readonly limit: number | null;
  /** Which way the limit runs. Left out where there is none. Not part of the JSON form. */
  readonly sense?: 'at least' | 'at most';
  readonly unit: string;
  /** How much is left: positive is on the safe side. Same unit. Null where there is no number. */
  readonly margin: number | null;
  /** One sentence: what this number is and why it matters. */
  readonly why: string;
  /** What to do next. For a pass: empty or a short note. */
  readonly remedy: string;
  /** What would widen the margin of a pass; left out where nothing is known. Not part of the JSON form. */
  readonly improve?: string;
  /** Keys of the job that nobody gave and that count as nothing here: a short answer names them. Not part of the JSON form. */
  readonly notGiven?: readonly string[];
  /** Standard, handbook or "common practice". Says so where it rests on memory. */
  readonly source: string;
}

/** A number that the tool filled in or that is weaker than a measurement. */
export interface Assumption {
  /** Key path in the job: "driven.holes.circle". */
  readonly path: string;
  readonly value: string;
  /** Why it has this value: "default", "preset DIN100-companion, from memory", "auto: thread engagement governs". */
  readonly from: string;
  /** True where the number rests on memory and not on a source that was read. */
  readonly memory: boolean;
}
