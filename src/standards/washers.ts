import { readDesignation } from './designation.ts';
import { inchesToMm } from './inch.ts';
import type { Lookup, StandardTable, TableRow } from './table.ts';
import { andThen, found, lookUp } from './table.ts';

/** One metric plain washer. Symbols of ISO 7089, mm. */
export interface WasherRow extends TableRow {
  readonly size: string;
  readonly d: number;
  /** Least hole. */
  readonly d1: number;
  /** Largest outside diameter. */
  readonly d2: number;
  /** Nominal thickness. */
  readonly h: number;
}

/** ISO 7089 plain washers, 200 HV and 300 HV. */
export const washers: StandardTable<WasherRow> = {
  id: 'iso7089',
  edition: 'ISO 7089',
  title: 'Plain washers, normal series',
  source: 'two published tables agree on d1 and d2',
  covers: 'M3 to M24',
  verified: 'secondary',
  unit: 'mm',
  notes: ['300 HV for class 10.9; for 12.9 take a hardened washer, or none.'],
  rows: [
    { size: 'M3', d: 3, d1: 3.2, d2: 7, h: 0.5 },
    { size: 'M4', d: 4, d1: 4.3, d2: 9, h: 0.8 },
    { size: 'M5', d: 5, d1: 5.3, d2: 10, h: 1 },
    { size: 'M6', d: 6, d1: 6.4, d2: 12, h: 1.6 },
    { size: 'M8', d: 8, d1: 8.4, d2: 16, h: 1.6 },
    { size: 'M10', d: 10, d1: 10.5, d2: 20, h: 2 },
    { size: 'M12', d: 12, d1: 13, d2: 24, h: 2.5 },
    { size: 'M14', d: 14, d1: 15, d2: 28, h: 2.5 },
    { size: 'M16', d: 16, d1: 17, d2: 30, h: 3 },
    { size: 'M18', d: 18, d1: 19, d2: 34, h: 3 },
    { size: 'M20', d: 20, d1: 21, d2: 37, h: 3 },
    { size: 'M22', d: 22, d1: 23, d2: 39, h: 3 },
    { size: 'M24', d: 24, d1: 25, d2: 44, h: 4 },
  ],
};

/** One inch plain washer. Inches. */
export interface InchWasherRow extends TableRow {
  readonly size: string;
  readonly D: number;
  readonly d1: number;
  readonly d2: number;
  readonly h: number;
}

/** ASME B18.21.1 type B plain washers, narrow series: the ones that fit where a head fits. */
export const inchWashers: StandardTable<InchWasherRow> = {
  id: 'asme-b18.21.1-narrow',
  edition: 'ASME B18.21.1 type B narrow',
  title: 'Plain washers, inch, narrow series',
  source: 'one open table, converted back from millimetres to the printed thousandths',
  covers: '#10 to 3/4 in',
  verified: 'secondary',
  unit: 'in',
  rows: [
    { size: '#10', D: 0.19, d1: 0.203, d2: 0.406, h: 0.04 },
    { size: '1/4', D: 0.25, d1: 0.281, d2: 0.5, h: 0.063 },
    { size: '5/16', D: 0.3125, d1: 0.344, d2: 0.625, h: 0.063 },
    { size: '3/8', D: 0.375, d1: 0.406, d2: 0.734, h: 0.063 },
    { size: '7/16', D: 0.4375, d1: 0.469, d2: 0.875, h: 0.063 },
    { size: '1/2', D: 0.5, d1: 0.531, d2: 1, h: 0.063 },
    { size: '5/8', D: 0.625, d1: 0.656, d2: 1.25, h: 0.1 },
    { size: '3/4', D: 0.75, d1: 0.812, d2: 1.375, h: 0.1 },
  ],
};

/** A plain washer, mm. */
export interface Washer {
  readonly hole: number;
  readonly outside: number;
  readonly thickness: number;
  readonly source: string;
  readonly memory: boolean;
}

/** Plain washer of this size or thread, mm. Source: ISO 7089; ASME B18.21.1 narrow for inch sizes. */
export function washerFor(sizeOrThread: string): Lookup<Washer> {
  return andThen(readDesignation(sizeOrThread), ({ system, size }) => {
    if (system === 'metric') {
      return andThen(lookUp(washers, 'size', size), (row) =>
        found({
          hole: row.d1,
          outside: row.d2,
          thickness: row.h,
          source: washers.edition,
          memory: row.memory ?? false,
        }),
      );
    }
    return andThen(lookUp(inchWashers, 'size', size), (row) =>
      found({
        hole: inchesToMm(row.d1),
        outside: inchesToMm(row.d2),
        thickness: inchesToMm(row.h),
        source: inchWashers.edition,
        memory: row.memory ?? false,
      }),
    );
  });
}
