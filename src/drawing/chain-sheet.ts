/** What the picture of a chain is drawn from, and the scale and order of its bars. */
import type { Shape } from '../model/drawing.ts';
import type { Verdict } from '../model/finding.ts';
import { columnWidth, letter, stroke } from './column.ts';

/** One link; sizes in the unit of the sheet. */
export interface ChainRow {
  readonly what: string;
  /** Its number in the chain, from 1. */
  readonly number: number;
  /** Its part of the worst case as it is written: rounded so that all of them add up to the rounded sum. */
  readonly said: string;
  /** Its parts of the two sums: less than nothing where a known shift pulls back. */
  readonly worst: number;
  readonly likely: number;
  /** Where it was read with a dial, in words; null where its direction is not known. */
  readonly read: string | null;
  readonly feature: string | null;
}

export interface ChainViewInput {
  readonly id: string;
  readonly title: string;
  /** What the chain leads from and to. */
  readonly from: string;
  readonly to: string;
  /** The widest first. */
  readonly rows: readonly ChainRow[];
  readonly worst: number;
  readonly likely: number;
  /** Null where nobody knows it. */
  readonly limit: number | null;
  readonly verdict: Verdict;
  /** The link to start with, by its number, and what makes it smaller, a clause without its full stop; null where nothing is left to do. */
  readonly start: { readonly number: number; readonly cure: string } | null;
  /** Keys that nobody gave and that count as nothing. */
  readonly notGiven: readonly string[];
  /** The feature that the finding about the sum speaks of. */
  readonly feature: string;
  readonly unit: string;
  /** One of the sums in words, its unit in it. */
  readonly sized: (size: number) => string;
}

/** Height of a bar, mm. */
export const barHigh = 1.25 * letter;
/** How much farther than the sum a limit may lie and still be drawn in its place. */
const farthest = 3;

/** A link, and where its bar starts and ends. */
export interface Step extends ChainRow {
  readonly from: number;
  readonly to: number;
}

/** The links in their order, each bar starting where the one before it ends. */
export function stairsOf(rows: readonly ChainRow[]): Step[] {
  let sum = 0;
  return rows.map((row) => {
    const from = sum;
    sum += row.worst;
    return { ...row, from, to: sum };
  });
}

/** What one unit is drawn as, mm, and whether the limit lies on the sheet. */
export function chainScale({ rows, worst, limit }: Pick<ChainViewInput, 'rows' | 'worst' | 'limit'>): {
  readonly mm: number;
  readonly isLimitShown: boolean;
} {
  const peak = Math.max(worst, ...stairsOf(rows).map(({ to }) => to), 1e-12);
  const isLimitShown = limit !== null && limit <= farthest * peak;
  const reach = isLimitShown ? Math.max(peak, limit) : peak;
  return { mm: (columnWidth - 1) / reach, isLimitShown };
}

/** A chain and its scale. */
export interface Sheet {
  readonly input: ChainViewInput;
  readonly mm: number;
  readonly isLimitShown: boolean;
}

/** The limit's place at a row of bars. */
export const limitAt = ({ input, mm, isLimitShown }: Sheet, top: number): Shape[] =>
  isLimitShown && input.limit !== null
    ? [
        stroke(
          'mark',
          { x: mm * input.limit, y: top + 0.15 * letter },
          { x: mm * input.limit, y: top - barHigh - 0.3 * letter },
        ),
      ]
    : [];
