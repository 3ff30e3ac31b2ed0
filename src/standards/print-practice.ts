import type { Lookup, StandardTable, TableRow } from './table.ts';
import { found, missing } from './table.ts';

/** How much smaller a printed hole comes out: diameters over `over` up to `upTo`, shrinkage of the DIAMETER, mm. */
export interface HoleShrinkRow extends TableRow {
  readonly over: number;
  readonly upTo: number;
  readonly least: number;
  readonly most: number;
}

/**
 * Holes printed by a filament printer come out small. The figures are DIAMETRAL: add them once to the diameter.
 * Trap: some guides print clearance per side, and taking one for the other doubles or halves the play.
 */
export const printedHoles: StandardTable<HoleShrinkRow> = {
  id: 'printed-holes',
  edition: 'A published filament-printing tolerance reference',
  title: 'What to add to the diameter of a printed hole',
  source:
    'one published reference; another gives 0.1 to 0.3 for all holes. Gaps between its ranges close to the smaller size',
  covers: 'holes from 2 mm, 0.4 mm nozzle',
  verified: 'secondary',
  unit: 'mm on the diameter',
  rows: [
    { over: 0, upTo: 3, least: 0.4, most: 0.5 },
    { over: 3, upTo: 6, least: 0.3, most: 0.4 },
    { over: 6, upTo: 12, least: 0.2, most: 0.3 },
    { over: 12, upTo: 25, least: 0.2, most: 0.3 },
    { over: 25, upTo: 1000, least: 0.1, most: 0.2 },
  ],
};

/** Middle of the published range to add to a printed hole's diameter, mm. Diameter above 0. */
export function printedHoleAllowance(diameter: number): Lookup<number> {
  const row = printedHoles.rows.find((candidate) => diameter > candidate.over && diameter <= candidate.upTo);
  if (row === undefined)
    return missing(`Printed-hole allowances cover diameters above 0 up to 1000 mm; got ${diameter}.`);
  return found((row.least + row.most) / 2);
}

/** Clearance PER SIDE of two printed parts by fit, mm. Double it for a diameter. */
export interface PrintedFitRow extends TableRow {
  readonly fit: string;
  readonly plaLeast: number;
  readonly plaMost: number;
  readonly otherLeast: number;
  readonly otherMost: number;
}

/** Fits between printed parts; the one table here that counts per side, as its source does. */
export const printedFits: StandardTable<PrintedFitRow> = {
  id: 'printed-fits',
  edition: 'A published filament-printing tolerance reference',
  title: 'Clearance per side of printed fits',
  source: 'one published reference; `other` is PETG and ABS',
  covers: 'press, snug, slide, loose',
  verified: 'secondary',
  unit: 'mm per side',
  rows: [
    { fit: 'press', plaLeast: 0, plaMost: 0.1, otherLeast: 0.05, otherMost: 0.15 },
    { fit: 'snug', plaLeast: 0.1, plaMost: 0.15, otherLeast: 0.1, otherMost: 0.2 },
    { fit: 'slide', plaLeast: 0.15, plaMost: 0.25, otherLeast: 0.2, otherMost: 0.3 },
    { fit: 'loose', plaLeast: 0.3, plaMost: 0.4, otherLeast: 0.3, otherMost: 0.5 },
  ],
};

/** Shrinkage of printed plastics, per cent, least and most. */
export interface ShrinkageRow extends TableRow {
  readonly material: string;
  readonly least: number;
  readonly most: number;
}

/** Shrinkage of printed plastics. */
export const printShrinkage: StandardTable<ShrinkageRow> = {
  id: 'print-shrinkage',
  edition: 'A published filament-printing tolerance guide',
  title: 'Shrinkage of printed plastics',
  source: 'one published guide',
  covers: 'PLA, PETG, ABS, nylon',
  verified: 'secondary',
  unit: '%',
  rows: [
    { material: 'PLA', least: 0.1, most: 0.3 },
    { material: 'PETG', least: 0.2, most: 0.4 },
    { material: 'ABS', least: 0.4, most: 0.8 },
    { material: 'PA', least: 0.4, most: 0.6 },
  ],
};
