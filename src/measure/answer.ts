/** What every measuring question comes back with: words, numbers, what to look up, and a section for the job. */
import { formatLength } from '../units/format.ts';
import type { TypedBy } from './typed.ts';
import { withDoubt } from './words.ts';

export interface Answer {
  /** The result in one line. */
  readonly title: string;
  /** How it came about, line by line. */
  readonly lines: readonly string[];
  /** What to mind, and what to measure next. */
  readonly notes: readonly string[];
  /** The numbers, mm and degrees. */
  readonly result: Readonly<Record<string, unknown>>;
  /** What known patterns can be looked up by. */
  readonly search: {
    readonly circle?: number;
    readonly holes?: number;
    readonly outside?: number;
    readonly register?: number;
  };
  /** The job's section; null when nothing of a flange was measured. */
  readonly block: string | null;
}

/** Things typed with every question. */
export interface Asked extends TypedBy {
  readonly side: 'driving' | 'driven';
  /** Outside diameter of the flange, as typed; checks the rest against it. */
  readonly outside?: string | undefined;
}

/** A size with its doubt; in inches too when inches were typed. */
export function told(
  size: { readonly value: number; readonly doubt: number },
  { units }: Pick<TypedBy, 'units'>,
): string {
  const inch = units === 'in' ? ` (${formatLength(size.value, 'in')})` : '';
  return `${withDoubt(size.value, size.doubt)}${inch}`;
}
