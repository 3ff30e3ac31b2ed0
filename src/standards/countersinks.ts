import { clearanceHole } from './clearance-holes.ts';
import { inchCountersunkScrews } from './countersunk-screws.ts';
import { readDesignation } from './designation.ts';
import { inchesToMm } from './inch.ts';
import type { Lookup, StandardTable, TableRow } from './table.ts';
import { andThen, found, lookUp } from './table.ts';

/** Countersink of one ISO 10642 screw, mm. */
export interface CountersinkRow extends TableRow {
  readonly size: string;
  readonly d: number;
  /** Through hole. */
  readonly d1: number;
  /** Least diameter at the face. */
  readonly d2: number;
  /** Depth of the cone. */
  readonly t1: number;
}

/** DIN 74:2003 form F, 90 degrees, for ISO 10642 heads. */
export const countersinks: StandardTable<CountersinkRow> = {
  id: 'din74-f',
  edition: 'DIN 74:2003 form F',
  title: 'Countersinks for ISO 10642 screws, 90 degrees',
  source:
    'one published print, mislabelled there; its geometry is consistent: t1 = (d2 - d1)/2 and d2 = dk + 0.1 to 0.4',
  covers: 'M3 to M20',
  verified: 'secondary',
  unit: 'mm',
  notes: ['ISO 15065 countersinks are smaller: an ISO 10642 head stands proud in them.'],
  rows: [
    { size: 'M3', d: 3, d1: 3.4, d2: 6.9, t1: 1.8 },
    { size: 'M4', d: 4, d1: 4.5, d2: 9.2, t1: 2.3 },
    { size: 'M5', d: 5, d1: 5.5, d2: 11.5, t1: 3 },
    { size: 'M6', d: 6, d1: 6.6, d2: 13.7, t1: 3.6 },
    { size: 'M8', d: 8, d1: 9, d2: 18.3, t1: 4.6 },
    { size: 'M10', d: 10, d1: 11, d2: 22.7, t1: 5.9 },
    { size: 'M12', d: 12, d1: 13.5, d2: 27.2, t1: 6.9 },
    { size: 'M16', d: 16, d1: 17.5, d2: 34, t1: 8.2 },
    { size: 'M20', d: 20, d1: 22, d2: 40.7, t1: 9.4 },
  ],
};

/** A countersink: sharp cone from `diameter` at the face, mm and degrees. */
export interface Countersink {
  readonly diameter: number;
  readonly angle: number;
  readonly throughHole: number;
  readonly source: string;
  readonly memory: boolean;
}

/** What an inch countersink is wider than the sharp head, in: the head then lies just below the face. Common practice. */
const inchCountersinkAllowance = 0.01;

/**
 * Countersink for a flat head socket screw of this size or thread, mm.
 * Source: DIN 74 form F at 90 degrees (metric); the sharp head diameter of ASME B18.3 at 82 degrees plus 0.010 in,
 * common practice (inch).
 */
export function countersinkFor(sizeOrThread: string): Lookup<Countersink> {
  return andThen(readDesignation(sizeOrThread), ({ system, size }) => {
    if (system === 'metric') {
      return andThen(lookUp(countersinks, 'size', size), (row) =>
        found({
          diameter: row.d2,
          angle: 90,
          throughHole: row.d1,
          source: countersinks.edition,
          memory: row.memory ?? false,
        }),
      );
    }
    return andThen(lookUp(inchCountersunkScrews, 'size', size), (row) =>
      andThen(clearanceHole(size), (hole) =>
        found({
          diameter: inchesToMm(row.A + inchCountersinkAllowance),
          angle: 82,
          throughHole: hole.diameter,
          source: `${inchCountersunkScrews.edition} head plus 0.010 in, common practice`,
          memory: true,
        }),
      ),
    );
  });
}
