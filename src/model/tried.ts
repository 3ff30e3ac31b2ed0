/** What came of trying a remedy: a cure that is told is worth more when somebody has looked what else it does. */
import type { Finding, Verdict } from './finding.ts';

/** A check and what it looked at, sizes apart: the same name before and after a change. */
export const checkedName = ({ code, title }: Pick<Finding, 'code' | 'title'>): string =>
  `${code} ${title.replace(/\d[\d./-]*/g, '')}`;

/** A check that says another thing once a change is made. */
export interface Moved {
  /** See `checkedName`. */
  readonly name: string;
  readonly code: string;
  readonly title: string;
  readonly before: Verdict;
  readonly after: Verdict;
}

/** What one asked check says after a change; null where it has nothing left to judge. */
export interface Asked {
  readonly name: string;
  readonly code: string;
  readonly before: Finding;
  readonly after: Finding | null;
}

/** One change of the job that remedies ask for, made and judged with everything else as it was. */
export interface TriedChange {
  /** "adapter.driven.washer: true" */
  readonly words: string;
  /** The findings whose remedies name it. */
  readonly asked: readonly Asked[];
  /** Other checks that get better, and those that get worse. */
  readonly better: readonly Moved[];
  readonly worse: readonly Moved[];
  /** Why it cannot be read or drawn: then nothing was judged. */
  readonly stopped: string | null;
}
