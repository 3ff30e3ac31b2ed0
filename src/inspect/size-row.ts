/** One line of the inspection record, before it has its number. mm and g. */
import type { Measured } from '../job/measured.ts';

/** What was found: a size and its doubt (half-width), and what it was measured with. */
export interface Found {
  readonly value: number;
  readonly doubt: number;
  readonly with: string;
}

/** One size of a finished part. */
export interface Characteristic {
  /** Place in the record, from 1. */
  readonly number: number;
  readonly id: string;
  /** Feature of the part that it belongs to. */
  readonly feature: string;
  readonly part: 'adapter' | 'wheel';
  /** In trade words: "driving register, recess". */
  readonly what: string;
  readonly nominal: number;
  readonly lower: number;
  readonly upper: number;
  readonly unit: 'mm' | 'g';
  /** Where the limits come from. */
  readonly from: string;
  /** What to measure it with. */
  readonly gauge: string;
  /** Where there is still metal to take off: when the size is too large, when it is too small, or never. */
  readonly mend: 'too large' | 'too small' | 'never';
  /** What taking it off is called: "bore", "turn", "face". */
  readonly verb: string;
  readonly found: Found | null;
}

/** A line without its number. */
export type Row = Omit<Characteristic, 'number' | 'found'> & { readonly found: Found | null };

/** How sure a size is, as the record says it. */
const basisWords: Readonly<Record<Measured['basis'], string>> = {
  given: 'one caliper reading',
  repeated: 'repeated readings',
  catalogue: 'catalogue',
  stated: 'as stated',
  proven: 'fit ring',
};

/** A size as the job has it measured; null where nobody did. */
export const foundOf = (measured: Measured | undefined): Found | null =>
  measured ? { value: measured.value, doubt: measured.doubt, with: basisWords[measured.basis] } : null;

/** Share by which scales and drawing may differ, before something is not as drawn. Common practice: 2 %. */
export const massShare = 0.02;

/** The mass of a part against its drawn shape, g. */
export function massRow(part: 'adapter' | 'wheel', mass: number, found: number | undefined): Row {
  return {
    id: `${part}-mass`,
    feature: part === 'adapter' ? 'body' : 'wheel-outline',
    part,
    what: `mass of the ${part}`,
    nominal: mass,
    lower: mass * (1 - massShare),
    upper: mass * (1 + massShare),
    unit: 'g',
    from: `the drawn shape, plus or minus ${100 * massShare} %`,
    gauge: 'kitchen scales',
    mend: 'never',
    verb: 'weigh',
    found: found === undefined ? null : { value: found, doubt: 0, with: 'scales' },
  };
}
