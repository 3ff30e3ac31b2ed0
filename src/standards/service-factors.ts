import type { Lookup, StandardTable, TableRow } from './table.ts';
import { lookUp } from './table.ts';

/** How roughly a machine takes its torque. */
export const shockWords = ['smooth', 'light', 'moderate', 'heavy'] as const;
export type ShockWord = (typeof shockWords)[number];

/** One column of the application factor table: the driven machine, with a smooth driver. KA is the symbol of the gear standards. */
export interface ApplicationFactorRow extends TableRow {
  readonly shock: ShockWord;
  readonly KA: number;
  /** What usually runs like that. */
  readonly examples: string;
}

/** Application factors of the gear standards, used here for the bolted joint in the same shaft. */
export const applicationFactors: StandardTable<ApplicationFactorRow> = {
  id: 'application-factors',
  edition: 'ISO 6336-1 / DIN 3990-1, method B',
  title: 'Application factor KA',
  source: "a gear research association's page prints the table; a coupling maker's page prints the examples",
  covers: 'a driver without shocks (electric motor), four classes of driven machine',
  verified: 'secondary',
  unit: 'none',
  notes: [
    'Meant for the nominal torque. A peak torque that was measured already holds the shock: count 1 then.',
    'With a driver that itself shocks (one or two cylinders) the same page prints 0.25 to 0.5 more.',
  ],
  rows: [
    { shock: 'smooth', KA: 1, examples: 'fans, centrifugal pumps, generators, steady conveyors' },
    { shock: 'light', KA: 1.25, examples: 'road vehicles driven gently, mixers of uneven stuff, geared pumps' },
    { shock: 'moderate', KA: 1.5, examples: 'winches, hoists, vehicles off the road, pumps of several cylinders' },
    { shock: 'heavy', KA: 1.75, examples: 'crushers, log haulers, pumps and compressors of one cylinder' },
  ],
};

/** Application factor of a shock word. A miss lists the words. Source: ISO 6336-1. */
export function applicationFactor(shock: string): Lookup<ApplicationFactorRow> {
  return lookUp(applicationFactors, 'shock', shock);
}
