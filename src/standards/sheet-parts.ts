import type { Lookup, StandardTable, TableRow } from './table.ts';
import { found, missing } from './table.ts';

/** Shortest side of a part that a service takes, mm, in sheet up to `upTo` mm. */
export interface SmallestPartRow extends TableRow {
  readonly upTo: number;
  readonly side: number;
}

/** Smallest part that stays on the grid of a cutting table. Settings: a service may tab smaller ones. */
export const smallestParts: StandardTable<SmallestPartRow> = {
  id: 'smallest-part',
  edition: 'A cutting service\u2019s published rules',
  title: 'Smallest laser-cut part',
  source: 'one public design guide: 15 x 15 mm up to 8 mm thick, 25 x 25 mm above',
  covers: 'steel and aluminium sheet up to 25 mm',
  verified: 'secondary',
  unit: 'mm',
  rows: [
    { upTo: 8, side: 15 },
    { upTo: 25, side: 25 },
  ],
};

/** Shortest side of a part in sheet of thickness t, mm. */
export function smallestPart(t: number): Lookup<number> {
  const row = smallestParts.rows.find((candidate) => t > 0 && t <= candidate.upTo);
  return row === undefined
    ? missing(`The smallest part is published for sheet above 0 up to 25 mm; got ${t} mm.`)
    : found(row.side);
}

/** The usual large sheet, mm: what a service takes unless it says otherwise. Common practice, from memory. */
export const usualSheet = { long: 3000, short: 1500 } as const;
