import type { Lookup, StandardTable, TableRow } from './table.ts';
import { fold, found, missing, must } from './table.ts';

/** One balance quality grade: G is the permissible e x omega, mm/s. `memory` marks a use that rests on memory. */
export interface BalanceGradeRow extends TableRow {
  readonly grade: string;
  readonly G: number;
  readonly use: string;
}

/** ISO 21940-11 balance quality grades. Drive shafts stand in it twice: under G 40 with car wheels, and under G 16. */
export const balanceGrades: StandardTable<BalanceGradeRow> = {
  id: 'iso21940-11',
  edition: 'ISO 21940-11:2016 (formerly ISO 1940-1), table 1',
  title: 'Balance quality grades',
  source: "a balancing-machine maker's reprint of the table; the uses of G 1600 and G 2.5, muddled there, from memory",
  covers: 'G 0.4 to G 4000, rigid rotors',
  verified: 'secondary',
  unit: 'mm/s',
  notes: [
    'A drive shaft is G 40 (car) or G 16 (cardan shaft): say which one is used.',
    'G 6.3 for a shaft assembly is finer than the play of its joints can repeat.',
  ],
  // biome-ignore format: a table is read row by row
  rows: [
    { grade: 'G 4000', G: 4000, use: 'crankshaft drives of large slow marine diesels, inherently unbalanced' },
    { grade: 'G 1600', G: 1600, use: 'crankshaft drives of large slow marine diesels, inherently balanced', memory: true },
    { grade: 'G 630', G: 630, use: 'crankshaft drives, inherently unbalanced, elastically mounted' },
    { grade: 'G 250', G: 250, use: 'crankshaft drives, inherently unbalanced, rigidly mounted' },
    { grade: 'G 100', G: 100, use: 'complete reciprocating engines of cars, trucks and locomotives' },
    { grade: 'G 40', G: 40, use: 'wheels, rims and drive shafts of cars; crankshaft drives, inherently balanced, elastically mounted' },
    { grade: 'G 16', G: 16, use: 'drive shafts (cardan, propeller); agricultural machinery; crankshaft drives, inherently balanced, rigidly mounted' },
    { grade: 'G 6.3', G: 6.3, use: 'machinery in general, gears, fans, pumps, machine tools, smaller electric motors' },
    { grade: 'G 2.5', G: 2.5, use: 'turbines, compressors, machine-tool drives, larger and faster electric motors', memory: true },
    { grade: 'G 1', G: 1, use: 'grinding-machine drives' },
    { grade: 'G 0.4', G: 0.4, use: 'gyroscopes, spindles of high-precision systems' },
  ],
};

/** The two grades under which ISO 21940-11 lists drive shafts: cardan shafts, and car drive shafts. */
export const driveShaftGrades = ['G 16', 'G 40'] as const;

/** A balance grade. */
export interface BalanceGrade {
  readonly name: string;
  /** Permissible specific unbalance times angular speed, mm/s. */
  readonly G: number;
  readonly use: string;
  readonly source: string;
  readonly memory: boolean;
}

/** The grade that 'G16', 'G 16', 'g6.3' or '16' names. A miss lists the grades. Source: ISO 21940-11. */
export function balanceGrade(name: string): Lookup<BalanceGrade> {
  const wanted = Number(fold(name).replace(/^g/, ''));
  const row = balanceGrades.rows.find((candidate) => candidate.G === wanted);
  if (row === undefined) {
    const grades = balanceGrades.rows.map((candidate) => candidate.grade).join(', ');
    return missing(`There is no balance grade "${name}" in ISO 21940-11. Listed: ${grades}.`);
  }
  return found({ name: row.grade, G: row.G, use: row.use, source: balanceGrades.edition, memory: row.memory ?? false });
}

/**
 * The finest grade that a rotor keeps whose mass is off centre by e and which turns with omega; null where no grade is as coarse.
 * @param speed e omega, mm/s, >= 0
 * Source: ISO 21940-11, G is the permissible e omega.
 */
export function finestGradeFor(speed: number): BalanceGrade | null {
  const kept = balanceGrades.rows.filter(({ G }) => G >= speed).sort((a, b) => a.G - b.G)[0];
  return kept ? must(balanceGrade(kept.grade)) : null;
}
