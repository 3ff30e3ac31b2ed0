import type { Lookup, StandardTable, TableRow } from './table.ts';
import { found, missing } from './table.ts';

/** Classes of ISO 2768-2, finest first. */
export const flatnessClasses = ['H', 'K', 'L'] as const;
export type FlatnessClass = (typeof flatnessClasses)[number];

/** Flatness over a range of sizes, mm: over < size <= upTo; all of the surface lies between two planes so far apart. */
export interface FlatnessRow extends TableRow {
  readonly over: number;
  readonly upTo: number;
  readonly H: number;
  readonly K: number;
  readonly L: number;
}

/** ISO 2768-2 table 1. The size of a round surface is its diameter. */
export const flatnessTolerances: StandardTable<FlatnessRow> = {
  id: 'iso2768-2-flatness',
  edition: 'ISO 2768-2:1989',
  title: 'General tolerances: straightness and flatness',
  source: 'an engineering reference page and a cutting and machining group\u2019s page agree',
  covers: 'above 0 up to 3000 mm',
  verified: 'secondary',
  unit: 'mm',
  notes: [
    'Written for parts made by removing metal. Sheet comes flat by its own standards (EN 10131, EN 10029: millimetres over a whole sheet), which say nothing of a small part.',
  ],
  // biome-ignore format: a table is read row by row
  rows: [
    { over: 0, upTo: 10, H: 0.02, K: 0.05, L: 0.1 },
    { over: 10, upTo: 30, H: 0.05, K: 0.1, L: 0.2 },
    { over: 30, upTo: 100, H: 0.1, K: 0.2, L: 0.4 },
    { over: 100, upTo: 300, H: 0.2, K: 0.4, L: 0.8 },
    { over: 300, upTo: 1000, H: 0.3, K: 0.6, L: 1.2 },
    { over: 1000, upTo: 3000, H: 0.4, K: 0.8, L: 1.6 },
  ],
};

/** The class taken for a part cut from sheet, as drawings of sheet parts usually ask for (-mK). Common practice, no source. */
export const usualFlatness: FlatnessClass = 'K';

/** Flatness of a surface of this size (its diameter, or its longer side), mm above 0 up to 3000. Source: ISO 2768-2 table 1. */
export function flatness(size: number, cls: FlatnessClass = usualFlatness): Lookup<number> {
  const row = flatnessTolerances.rows.find(({ over, upTo }) => size > over && size <= upTo);
  return row === undefined
    ? missing(`${flatnessTolerances.edition} gives flatness ${flatnessTolerances.covers}; got ${size} mm.`)
    : found(row[cls]);
}
