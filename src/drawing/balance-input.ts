/** What the picture of the unbalance is drawn from. g.mm, degrees. */
import type { Fill } from '../model/drawing.ts';
import type { Verdict } from '../model/finding.ts';

/** One pull. */
export interface PullToDraw {
  readonly what: string;
  /** Its part of the worst case, g.mm: less than nothing where it pulls back. */
  readonly worst: number;
  /** The same rounded as the findings tell it, so that all parts add up; left out: as it is. */
  readonly told?: number;
  /** Its own size, and what may be wrong with it; the angle is null where it may lie towards any side. */
  readonly size: number;
  readonly angle: number | null;
  readonly doubt: number;
  readonly feature: string | null;
}

/** A correction that the design asks for, on the heavy side. */
export interface CorrectionToDraw {
  /** Degrees. */
  readonly at: number;
  /** A sentence. */
  readonly words: string;
  readonly feature: string;
}

export interface BalanceViewInput {
  readonly id: string;
  /** Those that add most first. */
  readonly pulls: readonly PullToDraw[];
  readonly known: { readonly size: number; readonly angle: number };
  readonly loose: { readonly worst: number; readonly likely: number };
  readonly worst: number;
  readonly likely: number;
  /** Permissible unbalance, g.mm, and what allows it in words; null where nobody knows it. */
  readonly limit: number | null;
  readonly allowed: string;
  readonly verdict: Verdict;
  /** The pull to start with, by its number in the list, and what makes it smaller; null where nothing is left to do. */
  readonly start: { readonly number: number; readonly cure: string } | null;
  /** Directions that can be found on the parts: tooth 1, the gap of missing teeth. The index mark is at 0. */
  readonly marks: readonly { readonly name: string; readonly at: number }[];
  readonly corrections: readonly CorrectionToDraw[];
  readonly notGiven: readonly string[];
  readonly feature: string;
}

/** How a verdict tints what it is about. */
export const verdictFill: Readonly<Record<Verdict, Fill>> = {
  pass: 'good',
  caution: 'doubtful',
  fail: 'bad',
  'not assessed': 'screw',
};

/** The pulls, each with its number. */
export const numbered = (pulls: readonly PullToDraw[]): (PullToDraw & { readonly number: number })[] =>
  pulls.map((pull, i) => ({ ...pull, number: i + 1 }));
