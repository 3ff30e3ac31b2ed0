import type { Lookup, StandardTable, TableRow } from './table.ts';
import { found, missing } from './table.ts';

/** Tolerance classes of ISO 2768-1: fine, medium, coarse, very coarse. */
export type GeneralClass = 'f' | 'm' | 'c' | 'v';

/** Every class, finest first. */
export const generalClasses: readonly GeneralClass[] = ['f', 'm', 'c', 'v'];

/** Symmetric deviations over a range of sizes; over < size <= upTo, and upTo null means without end. */
export interface GeneralToleranceRow extends TableRow {
  readonly over: number;
  readonly upTo: number | null;
  readonly f: number | null;
  readonly m: number;
  readonly c: number;
  readonly v: number | null;
}

const source = 'three published tables and an open data file agree';

/** ISO 2768-1 table 1. */
export const generalLinear: StandardTable<GeneralToleranceRow> = {
  id: 'iso2768-1-linear',
  edition: 'ISO 2768-1:1989',
  title: 'General tolerances: lengths, diameters, distances',
  source,
  covers: '0.5 to 4000 mm; the first step takes 0.5 mm itself',
  verified: 'secondary',
  unit: 'mm, plus or minus',
  notes: ['Two shop pages print 0.15 and 0.2 for c up to 6 mm: that is an older standard. Here 0.2 and 0.3.'],
  // biome-ignore format: a table is read row by row
  rows: [
    { over: 0.5, upTo: 3, f: 0.05, m: 0.1, c: 0.2, v: null },
    { over: 3, upTo: 6, f: 0.05, m: 0.1, c: 0.3, v: 0.5 },
    { over: 6, upTo: 30, f: 0.1, m: 0.2, c: 0.5, v: 1 },
    { over: 30, upTo: 120, f: 0.15, m: 0.3, c: 0.8, v: 1.5 },
    { over: 120, upTo: 400, f: 0.2, m: 0.5, c: 1.2, v: 2.5 },
    { over: 400, upTo: 1000, f: 0.3, m: 0.8, c: 2, v: 4 },
    { over: 1000, upTo: 2000, f: 0.5, m: 1.2, c: 3, v: 6 },
    { over: 2000, upTo: 4000, f: null, m: 2, c: 4, v: 8 },
  ],
};

/** ISO 2768-1 table 2. */
export const generalEdges: StandardTable<GeneralToleranceRow> = {
  id: 'iso2768-1-edges',
  edition: 'ISO 2768-1:1989',
  title: 'General tolerances: external radii and chamfer heights',
  source,
  covers: '0.5 mm and more; the first step takes 0.5 mm itself',
  verified: 'secondary',
  unit: 'mm, plus or minus',
  rows: [
    { over: 0.5, upTo: 3, f: 0.2, m: 0.2, c: 0.4, v: 0.4 },
    { over: 3, upTo: 6, f: 0.5, m: 0.5, c: 1, v: 1 },
    { over: 6, upTo: null, f: 1, m: 1, c: 2, v: 2 },
  ],
};

/** ISO 2768-1 table 3, by the length of the shorter side of the angle. */
export const generalAngles: StandardTable<GeneralToleranceRow> = {
  id: 'iso2768-1-angles',
  edition: 'ISO 2768-1:1989',
  title: 'General tolerances: angles',
  source: 'two published tables agree',
  covers: 'any shorter side',
  verified: 'secondary',
  unit: 'minutes of arc, plus or minus (over and upTo in mm)',
  rows: [
    { over: 0, upTo: 10, f: 60, m: 60, c: 90, v: 180 },
    { over: 10, upTo: 50, f: 30, m: 30, c: 60, v: 120 },
    { over: 50, upTo: 120, f: 20, m: 20, c: 30, v: 60 },
    { over: 120, upTo: 400, f: 10, m: 10, c: 15, v: 30 },
    { over: 400, upTo: null, f: 5, m: 5, c: 10, v: 20 },
  ],
};

/** A symmetric general tolerance. */
export interface GeneralTolerance {
  /** The dimension may be this much larger or smaller: mm, or degrees for an angle. */
  readonly plusMinus: number;
  /** As a drawing says it: 'ISO 2768-m'. */
  readonly designation: string;
  readonly source: string;
  readonly memory: boolean;
}

/**
 * General tolerance of a length, diameter or distance, mm. Size 0.5 to 4000 mm; class f to 2000 mm, v from over 3 mm.
 * Errors: a sentence for a size or class outside the table. Source: ISO 2768-1 table 1.
 */
export function generalTolerance(size: number, cls: GeneralClass): Lookup<GeneralTolerance> {
  return deviation(generalLinear, size, cls, 'a size');
}

/** General tolerance of an external radius or a chamfer's height, mm; 0.5 mm and more. Source: ISO 2768-1 table 2. */
export function edgeTolerance(size: number, cls: GeneralClass): Lookup<GeneralTolerance> {
  return deviation(generalEdges, size, cls, 'a radius or chamfer');
}

/** General tolerance of an angle, degrees, by the length of its shorter side, mm > 0. Source: ISO 2768-1 table 3. */
export function angleTolerance(shorterSide: number, cls: GeneralClass): Lookup<GeneralTolerance> {
  const row = deviation(generalAngles, shorterSide, cls, 'a side');
  return row.ok ? found({ ...row.value, plusMinus: row.value.plusMinus / 60 }) : row;
}

function deviation(
  table: StandardTable<GeneralToleranceRow>,
  size: number,
  cls: GeneralClass,
  what: string,
): Lookup<GeneralTolerance> {
  const [first] = table.rows;
  const atStart = first !== undefined && first.over > 0 && size === first.over;
  const row = atStart ? first : table.rows.find(({ over, upTo }) => size > over && size <= (upTo ?? Infinity));
  if (row === undefined || !Number.isFinite(size)) {
    return missing(
      `${table.edition} gives no general tolerance for ${what} of ${size} mm (${table.covers}); write limits at the dimension.`,
    );
  }
  const plusMinus = row[cls];
  if (plusMinus === null) {
    return missing(`${table.edition} has no class ${cls} for ${what} of ${size} mm; take ${cls === 'v' ? 'c' : 'm'}.`);
  }
  return found({ plusMinus, designation: `ISO 2768-${cls}`, source: table.edition, memory: row.memory ?? false });
}
