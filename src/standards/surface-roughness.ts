import type { Lookup, StandardTable, TableRow } from './table.ts';
import { found, missing } from './table.ts';

/** One roughness grade: arithmetic mean deviation Ra in micrometres and microinches. */
export interface RoughnessRow extends TableRow {
  readonly grade: string;
  readonly Ra: number;
  readonly microinches: number;
}

/** Roughness grades of older drawings. Each is twice the one before it. */
export const roughnessGrades: StandardTable<RoughnessRow> = {
  id: 'iso1302-grades',
  edition: 'ISO 1302:1992',
  title: 'Roughness grade numbers',
  source: 'three independent reprints of the table agree; one prints 8.3 for N9, an obvious slip',
  covers: 'N1 to N12',
  verified: 'secondary',
  unit: 'um',
  notes: ['The 2002 edition states Ra itself and drops the grade numbers; shops still say them.'],
  // biome-ignore format: a table is read row by row
  rows: [
    { grade: 'N1', Ra: 0.025, microinches: 1 },
    { grade: 'N2', Ra: 0.05, microinches: 2 },
    { grade: 'N3', Ra: 0.1, microinches: 4 },
    { grade: 'N4', Ra: 0.2, microinches: 8 },
    { grade: 'N5', Ra: 0.4, microinches: 16 },
    { grade: 'N6', Ra: 0.8, microinches: 32 },
    { grade: 'N7', Ra: 1.6, microinches: 63 },
    { grade: 'N8', Ra: 3.2, microinches: 125 },
    { grade: 'N9', Ra: 6.3, microinches: 250 },
    { grade: 'N10', Ra: 12.5, microinches: 500 },
    { grade: 'N11', Ra: 25, microinches: 1000 },
    { grade: 'N12', Ra: 50, microinches: 2000 },
  ],
};

/** What a process reaches with ordinary care, Ra in micrometres. */
export interface ProcessRoughnessRow extends TableRow {
  readonly process: string;
  readonly finest: number;
  readonly coarsest: number;
}

/** Usual roughness by process. */
export const processRoughness: StandardTable<ProcessRoughnessRow> = {
  id: 'process-roughness',
  edition: 'A published table of roughness by machining method',
  title: 'Roughness that a process reaches',
  source: 'one published table; a second one is up to a step rougher for drilling, reaming and milling',
  covers: 'ordinary production machines',
  verified: 'secondary',
  unit: 'um Ra',
  // biome-ignore format: a table is read row by row
  rows: [
    { process: 'turned or bored', finest: 0.4, coarsest: 6.3 },
    { process: 'milled', finest: 0.8, coarsest: 6.3 },
    { process: 'reamed', finest: 0.8, coarsest: 3.2 },
    { process: 'drilled', finest: 1.6, coarsest: 6.3 },
    { process: 'ground', finest: 0.1, coarsest: 1.6 },
    { process: 'sawn', finest: 1.6, coarsest: 25 },
    { process: 'flame cut', finest: 12.5, coarsest: 25 },
  ],
};

/** The coarsest grade that is still as smooth as Ra, in micrometres: 7.4 is N10, for it is rougher than N9. */
export function gradeOfRoughness(Ra: number): Lookup<RoughnessRow> {
  if (!(Ra > 0)) return missing(`A roughness is above 0 um; got ${Ra}.`);
  const row = roughnessGrades.rows.find((candidate) => Ra <= candidate.Ra * (1 + 1e-9));
  return row ? found(row) : missing(`Roughness grades end at N12, Ra 50 um; got ${Ra}.`);
}

/** Can a process leave a surface this smooth? Ra in micrometres. A miss lists the processes. */
export function processReaches(process: string, Ra: number): Lookup<boolean> {
  const row = processRoughness.rows.find((candidate) => candidate.process === process);
  if (row) return found(Ra >= row.finest);
  return missing(
    `No roughness is tabled for "${process}". Listed: ${processRoughness.rows.map((r) => r.process).join(', ')}.`,
  );
}
