import { readDesignation } from './designation.ts';
import { inchesToMm } from './inch.ts';
import type { Lookup, StandardTable, TableRow } from './table.ts';
import { andThen, found, lookUp } from './table.ts';

/** Clearance holes of one metric screw, mm. */
export interface ClearanceHoleRow extends TableRow {
  readonly size: string;
  readonly d: number;
  readonly fine: number;
  readonly medium: number;
  readonly coarse: number;
}

/** ISO 273 clearance holes. */
export const clearanceHoles: StandardTable<ClearanceHoleRow> = {
  id: 'iso273',
  edition: 'ISO 273:1979',
  title: 'Clearance holes for bolts and screws',
  source: 'three published tables agree; the medium series also in two handbooks of bolted joints',
  covers: 'M3 to M24',
  verified: 'secondary',
  unit: 'mm',
  memoryFields: ['tolerance classes: fine H12, medium H13, coarse H14'],
  notes: ['Lists with 14 for M12, 16 for M14 and 18 for M16 as the medium series are an older standard.'],
  rows: [
    { size: 'M3', d: 3, fine: 3.2, medium: 3.4, coarse: 3.6 },
    { size: 'M4', d: 4, fine: 4.3, medium: 4.5, coarse: 4.8 },
    { size: 'M5', d: 5, fine: 5.3, medium: 5.5, coarse: 5.8 },
    { size: 'M6', d: 6, fine: 6.4, medium: 6.6, coarse: 7 },
    { size: 'M8', d: 8, fine: 8.4, medium: 9, coarse: 10 },
    { size: 'M10', d: 10, fine: 10.5, medium: 11, coarse: 12 },
    { size: 'M12', d: 12, fine: 13, medium: 13.5, coarse: 14.5 },
    { size: 'M14', d: 14, fine: 15, medium: 15.5, coarse: 16.5 },
    { size: 'M16', d: 16, fine: 17, medium: 17.5, coarse: 18.5 },
    { size: 'M18', d: 18, fine: 19, medium: 20, coarse: 21 },
    { size: 'M20', d: 20, fine: 21, medium: 22, coarse: 24 },
    { size: 'M22', d: 22, fine: 23, medium: 24, coarse: 26 },
    { size: 'M24', d: 24, fine: 25, medium: 26, coarse: 28 },
  ],
};

/** Clearance holes of one inch screw, decimal inches, with the drill names in the same order. */
export interface InchClearanceHoleRow extends TableRow {
  readonly size: string;
  readonly D: number;
  readonly close: number;
  readonly normal: number;
  readonly loose: number;
  readonly names: string;
}

/** ASME B18.2.8 clearance holes. */
export const inchClearanceHoles: StandardTable<InchClearanceHoleRow> = {
  id: 'asme-b18.2.8',
  edition: 'ASME B18.2.8',
  title: 'Clearance holes, inch',
  source: "two published tables, and Machinery's Handbook 31 for the loose holes",
  covers: '#10 to 3/4 in',
  verified: 'secondary',
  unit: 'in',
  notes: ['17/32 is the close hole for 1/2 in, though some tables print it as normal.'],
  rows: [
    { size: '#10', D: 0.19, close: 0.2055, normal: 0.221, loose: 0.238, names: 'No. 5, No. 2, B' },
    { size: '1/4', D: 0.25, close: 0.2656, normal: 0.2812, loose: 0.2969, names: '17/64, 9/32, 19/64' },
    { size: '5/16', D: 0.3125, close: 0.3281, normal: 0.3438, loose: 0.3594, names: '21/64, 11/32, 23/64' },
    { size: '3/8', D: 0.375, close: 0.3906, normal: 0.4062, loose: 0.4219, names: '25/64, 13/32, 27/64' },
    { size: '7/16', D: 0.4375, close: 0.4531, normal: 0.4688, loose: 0.4844, names: '29/64, 15/32, 31/64' },
    { size: '1/2', D: 0.5, close: 0.5312, normal: 0.5625, loose: 0.6094, names: '17/32, 9/16, 39/64' },
    { size: '5/8', D: 0.625, close: 0.6562, normal: 0.6875, loose: 0.7344, names: '21/32, 11/16, 47/64' },
    { size: '3/4', D: 0.75, close: 0.7812, normal: 0.8125, loose: 0.9062, names: '25/32, 13/16, 29/32' },
  ],
};

/** ISO 273 series; the inch classes close, normal and loose answer to the same words. */
export type ClearanceSeries = 'fine' | 'medium' | 'coarse';

/** A clearance hole, mm. */
export interface ClearanceHole {
  readonly diameter: number;
  readonly source: string;
  readonly memory: boolean;
}

/**
 * Clearance hole of a screw: size 'M10', any thread designation, or an inch size ('3/8'); diameter in mm.
 * Source: ISO 273 for metric sizes, ASME B18.2.8 for inch sizes (fine = close, medium = normal, coarse = loose).
 */
export function clearanceHole(sizeOrThread: string, series: ClearanceSeries = 'medium'): Lookup<ClearanceHole> {
  return andThen(readDesignation(sizeOrThread), ({ system, size }) => {
    if (system === 'metric') {
      return andThen(lookUp(clearanceHoles, 'size', size), (row) =>
        found({ diameter: row[series], source: `${clearanceHoles.edition} ${series}`, memory: row.memory ?? false }),
      );
    }
    const name = ({ fine: 'close', medium: 'normal', coarse: 'loose' } as const)[series];
    return andThen(lookUp(inchClearanceHoles, 'size', size), (row) =>
      found({
        diameter: inchesToMm(row[name]),
        source: `${inchClearanceHoles.edition} ${name}`,
        memory: row.memory ?? false,
      }),
    );
  });
}
