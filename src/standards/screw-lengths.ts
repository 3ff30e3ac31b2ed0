import { readDesignation } from './designation.ts';
import { mmPerInch } from './inch.ts';
import type { HeadKind } from './screw-heads.ts';
import type { Lookup, StandardTable, TableRow } from './table.ts';
import { andThen, found, lookUp, missing } from './table.ts';

/** Shortest and longest usual length of one screw size, mm (inch tables: inches). */
export interface LengthRangeRow extends TableRow {
  readonly size: string;
  readonly shortest: number;
  readonly longest: number;
}

/**
 * Nominal lengths of ISO 888 from 5 to 200 mm, without the rare 14, 18 and 22: what a shop finds on the shelf.
 * Source: an open table of ISO 4762 lengths; 90 mm, missing there, from memory.
 */
export const metricLengths: readonly number[] = [
  5, 6, 8, 10, 12, 16, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 80, 90, 100, 110, 120, 130, 140, 150, 160, 180, 200,
];

/** Usual inch lengths, inches: eighths to 1, quarters to 6 (common practice). */
export const inchLengths: readonly number[] = [
  0.25, 0.375, 0.5, 0.625, 0.75, 0.875, 1, 1.25, 1.5, 1.75, 2, 2.25, 2.5, 2.75, 3, 3.25, 3.5, 3.75, 4, 4.5, 5, 5.5, 6,
];

const openTable = 'an open fastener table; rows marked memory differ there and follow the standard as remembered';

/** ISO 4762 usual lengths. */
export const socketLengths: StandardTable<LengthRangeRow> = {
  id: 'iso4762-lengths',
  edition: 'ISO 4762',
  title: 'Usual lengths of socket head cap screws',
  source: openTable,
  covers: 'M3 to M24',
  verified: 'secondary',
  unit: 'mm',
  // biome-ignore format: a table is read row by row
  rows: [
    { size: 'M3', shortest: 5, longest: 30 },
    { size: 'M4', shortest: 6, longest: 40 },
    { size: 'M5', shortest: 8, longest: 50 },
    { size: 'M6', shortest: 10, longest: 60, memory: true },
    { size: 'M8', shortest: 12, longest: 80, memory: true },
    { size: 'M10', shortest: 16, longest: 100 },
    { size: 'M12', shortest: 20, longest: 120 },
    { size: 'M14', shortest: 25, longest: 140 },
    { size: 'M16', shortest: 25, longest: 160 },
    { size: 'M18', shortest: 30, longest: 180, memory: true },
    { size: 'M20', shortest: 30, longest: 200, memory: true },
    { size: 'M22', shortest: 35, longest: 200, memory: true },
    { size: 'M24', shortest: 40, longest: 200 },
  ],
};

/** ISO 10642 usual lengths, head included. */
export const flatLengths: StandardTable<LengthRangeRow> = {
  id: 'iso10642-lengths',
  edition: 'ISO 10642',
  title: 'Usual lengths of countersunk socket screws, head included',
  source: openTable,
  covers: 'M3 to M20',
  verified: 'secondary',
  unit: 'mm',
  // biome-ignore format: a table is read row by row
  rows: [
    { size: 'M3', shortest: 8, longest: 30 },
    { size: 'M4', shortest: 8, longest: 40 },
    { size: 'M5', shortest: 8, longest: 50 },
    { size: 'M6', shortest: 8, longest: 60 },
    { size: 'M8', shortest: 10, longest: 80 },
    { size: 'M10', shortest: 12, longest: 100 },
    { size: 'M12', shortest: 20, longest: 100 },
    { size: 'M14', shortest: 25, longest: 100 },
    { size: 'M16', shortest: 30, longest: 100 },
    { size: 'M20', shortest: 35, longest: 100 },
  ],
};

/** ISO 7380-1 usual lengths. */
export const buttonLengths: StandardTable<LengthRangeRow> = {
  id: 'iso7380-1-lengths',
  edition: 'ISO 7380-1',
  title: 'Usual lengths of button head socket screws',
  source: 'memory',
  covers: 'M3 to M16',
  verified: 'memory',
  unit: 'mm',
  // biome-ignore format: a table is read row by row
  rows: [
    { size: 'M3', shortest: 6, longest: 12, memory: true },
    { size: 'M4', shortest: 8, longest: 16, memory: true },
    { size: 'M5', shortest: 10, longest: 30, memory: true },
    { size: 'M6', shortest: 10, longest: 30, memory: true },
    { size: 'M8', shortest: 10, longest: 40, memory: true },
    { size: 'M10', shortest: 16, longest: 40, memory: true },
    { size: 'M12', shortest: 16, longest: 50, memory: true },
    { size: 'M16', shortest: 20, longest: 50, memory: true },
  ],
};

/** ISO 4017 usual lengths: full thread, as an adapter needs. ISO 4014 goes on where these end. */
export const hexLengths: StandardTable<LengthRangeRow> = {
  id: 'iso4017-lengths',
  edition: 'ISO 4017',
  title: 'Usual lengths of hexagon head screws, full thread',
  source: openTable,
  covers: 'M3 to M24',
  verified: 'secondary',
  unit: 'mm',
  // biome-ignore format: a table is read row by row
  rows: [
    { size: 'M3', shortest: 6, longest: 30, memory: true },
    { size: 'M4', shortest: 8, longest: 40, memory: true },
    { size: 'M5', shortest: 10, longest: 50, memory: true },
    { size: 'M6', shortest: 12, longest: 60 },
    { size: 'M8', shortest: 16, longest: 80 },
    { size: 'M10', shortest: 20, longest: 100 },
    { size: 'M12', shortest: 25, longest: 120 },
    { size: 'M14', shortest: 30, longest: 140, memory: true },
    { size: 'M16', shortest: 30, longest: 150 },
    { size: 'M18', shortest: 35, longest: 200 },
    { size: 'M20', shortest: 40, longest: 150, memory: true },
    { size: 'M22', shortest: 45, longest: 200 },
    { size: 'M24', shortest: 50, longest: 150, memory: true },
  ],
};

/** Shortest inch lengths of any head, inches; the long end is cut to what a driveline needs. */
export const inchLengthRanges: StandardTable<LengthRangeRow> = {
  id: 'inch-lengths',
  edition: 'ASME B18.3 / B18.2.1 trade lengths',
  title: 'Usual lengths of inch screws',
  source: 'shortest lengths from an open fastener table, raised to the next usual length; longest: common practice',
  covers: '#10 to 3/4 in',
  verified: 'secondary',
  unit: 'in',
  // biome-ignore format: a table is read row by row
  rows: [
    { size: '#10', shortest: 0.25, longest: 3 },
    { size: '1/4', shortest: 0.375, longest: 4 },
    { size: '5/16', shortest: 0.5, longest: 4 },
    { size: '3/8', shortest: 0.5, longest: 5 },
    { size: '7/16', shortest: 0.75, longest: 5 },
    { size: '1/2', shortest: 0.75, longest: 6 },
    { size: '5/8', shortest: 0.75, longest: 6 },
    { size: '3/4', shortest: 1, longest: 6 },
  ],
};

/** The usual lengths of one screw. */
export interface StandardLengths {
  /** Ascending, mm. A flat head's length includes the head; every other is measured under the head. */
  readonly lengths: readonly number[];
  readonly source: string;
  readonly memory: boolean;
}

/** Lengths of one kind and size ('M10', '3/8' or a thread), mm, shortest first. A miss lists the sizes. */
export function standardLengths(kind: HeadKind, sizeOrThread: string): Lookup<StandardLengths> {
  return andThen(readDesignation(sizeOrThread), ({ system, size }) => {
    const table = system === 'metric' ? metricTables[kind] : inchLengthRanges;
    const steps = system === 'metric' ? metricLengths : inchLengths;
    const scale = system === 'metric' ? 1 : mmPerInch;
    return andThen(lookUp(table, 'size', size), ({ shortest, longest, memory = false }) =>
      found({
        lengths: steps.filter((length) => length >= shortest && length <= longest).map((length) => length * scale),
        source: table.edition,
        memory,
      }),
    );
  });
}

/** The longest usual length that is not longer than `most`, mm; says what there is when all are longer. */
export function longestUpTo(kind: HeadKind, sizeOrThread: string, most: number): Lookup<number> {
  return andThen(standardLengths(kind, sizeOrThread), ({ lengths }) => {
    const fitting = lengths.filter((length) => length <= most + 1e-9);
    const longest = fitting.at(-1);
    if (longest !== undefined) return found(longest);
    return missing(
      `No usual ${sizeOrThread} ${kind} screw is ${most.toFixed(1)} mm or shorter; the shortest is ${lengths[0]} mm.`,
    );
  });
}

const metricTables: Readonly<Record<HeadKind, StandardTable<LengthRangeRow>>> = {
  socket: socketLengths,
  flat: flatLengths,
  button: buttonLengths,
  hex: hexLengths,
};
