import { readDesignation } from './designation.ts';
import { inchesToMm } from './inch.ts';
import type { Lookup, StandardTable, TableRow } from './table.ts';
import { andThen, found, lookUp } from './table.ts';

/** Counterbore of one ISO 4762 screw, mm. */
export interface CounterboreRow extends TableRow {
  readonly size: string;
  readonly d: number;
  /** Counterbore diameter, series 1. */
  readonly D: number;
  /** What the counterbore is deeper than the head. */
  readonly allowance: number;
  /** Depth for an ISO 4762 head: k + allowance. */
  readonly depth: number;
  /** Diameter when an ISO 7089 washer goes under the head. */
  readonly Dwasher: number;
}

/** DIN 974-1 series 1 counterbores for socket head cap screws. */
export const counterbores: StandardTable<CounterboreRow> = {
  id: 'din974-1',
  edition: 'DIN 974-1',
  title: 'Counterbores for socket head cap screws, series 1',
  source: 'two published tables agree for M4 to M24; washer diameters from one of them',
  covers: 'M3 to M24',
  verified: 'secondary',
  unit: 'mm',
  memoryFields: ['D of M3 (others print 6.0, the old DIN 74 form K)', 'tolerance class H13 of D'],
  rows: [
    { size: 'M3', d: 3, D: 6.5, allowance: 0.4, depth: 3.4, Dwasher: 9, memory: true },
    { size: 'M4', d: 4, D: 8, allowance: 0.4, depth: 4.4, Dwasher: 10 },
    { size: 'M5', d: 5, D: 10, allowance: 0.4, depth: 5.4, Dwasher: 13 },
    { size: 'M6', d: 6, D: 11, allowance: 0.4, depth: 6.4, Dwasher: 15 },
    { size: 'M8', d: 8, D: 15, allowance: 0.6, depth: 8.6, Dwasher: 18 },
    { size: 'M10', d: 10, D: 18, allowance: 0.6, depth: 10.6, Dwasher: 24 },
    { size: 'M12', d: 12, D: 20, allowance: 0.6, depth: 12.6, Dwasher: 26 },
    { size: 'M14', d: 14, D: 24, allowance: 0.6, depth: 14.6, Dwasher: 30 },
    { size: 'M16', d: 16, D: 26, allowance: 0.6, depth: 16.6, Dwasher: 33 },
    { size: 'M18', d: 18, D: 30, allowance: 0.6, depth: 18.6, Dwasher: 36 },
    { size: 'M20', d: 20, D: 33, allowance: 0.6, depth: 20.6, Dwasher: 40 },
    { size: 'M22', d: 22, D: 36, allowance: 0.8, depth: 22.8, Dwasher: 43 },
    { size: 'M24', d: 24, D: 40, allowance: 0.8, depth: 24.8, Dwasher: 48 },
  ],
};

/** Counterbore of one inch socket head cap screw, inches. */
export interface InchCounterboreRow extends TableRow {
  readonly size: string;
  readonly D: number;
  readonly close: number;
  readonly free: number;
  readonly depth: number;
}

/** A shop standard for inch counterbores; ASME B18.3 gives them in its appendix only. */
export const inchCounterbores: StandardTable<InchCounterboreRow> = {
  id: 'inch-counterbore',
  edition: 'an aircraft-tooling shop standard, revision of 2005',
  title: 'Counterbores for inch socket head cap screws',
  source: 'published shop standard, two copies read',
  covers: '#10 to 3/4 in',
  verified: 'secondary',
  unit: 'in',
  rows: [
    { size: '#10', D: 0.19, close: 0.332, free: 0.348, depth: 0.215 },
    { size: '1/4', D: 0.25, close: 0.4, free: 0.416, depth: 0.275 },
    { size: '5/16', D: 0.3125, close: 0.493, free: 0.509, depth: 0.34 },
    { size: '3/8', D: 0.375, close: 0.59, free: 0.606, depth: 0.405 },
    { size: '7/16', D: 0.4375, close: 0.681, free: 0.697, depth: 0.47 },
    { size: '1/2', D: 0.5, close: 0.775, free: 0.791, depth: 0.535 },
    { size: '5/8', D: 0.625, close: 0.963, free: 1, depth: 0.665 },
    { size: '3/4', D: 0.75, close: 1.151, free: 1.171, depth: 0.79 },
  ],
};

/** A counterbore, mm. */
export interface Counterbore {
  readonly diameter: number;
  readonly depth: number;
  /** How far the head top lies below the face. */
  readonly allowance: number;
  /** Diameter that takes a plain washer under the head, when the table has one. */
  readonly washerDiameter?: number;
  readonly source: string;
  readonly memory: boolean;
}

/**
 * Counterbore for a socket head cap screw of this size or thread, mm.
 * Source: DIN 974-1 series 1 (metric); a published shop standard, free class (inch).
 */
export function counterboreFor(sizeOrThread: string): Lookup<Counterbore> {
  return andThen(readDesignation(sizeOrThread), ({ system, size }) => {
    if (system === 'metric') {
      return andThen(lookUp(counterbores, 'size', size), (row) =>
        found({
          diameter: row.D,
          depth: row.depth,
          allowance: row.allowance,
          washerDiameter: row.Dwasher,
          source: `${counterbores.edition} series 1`,
          memory: row.memory ?? false,
        }),
      );
    }
    return andThen(lookUp(inchCounterbores, 'size', size), (row) =>
      found({
        diameter: inchesToMm(row.free),
        depth: inchesToMm(row.depth),
        allowance: inchesToMm(row.depth - row.D),
        source: inchCounterbores.edition,
        memory: row.memory ?? false,
      }),
    );
  });
}
