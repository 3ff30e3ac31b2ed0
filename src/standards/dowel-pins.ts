import { toleranceLimits } from './iso286.ts';
import type { Lookup, StandardTable, TableRow } from './table.ts';
import { andThen, found, lookUp, missing } from './table.ts';

/** One parallel pin. Symbols of ISO 8734, mm; its strength as tested, kN. */
export interface DowelPinRow extends TableRow {
  readonly size: string;
  readonly d: number;
  /** Length of the chamfer or rounding at each end: it locates nothing. */
  readonly c: number;
  readonly shortest: number;
  readonly longest: number;
  /** Load that one section of a hardened alloy pin carries in shear until it breaks, kN. */
  readonly shear: number;
}

/** ISO 8734 parallel pins of hardened steel, ground to m6. */
export const dowelPins: StandardTable<DowelPinRow> = {
  id: 'iso8734',
  edition: 'ISO 8734',
  title: 'Parallel pins, hardened and ground to m6 (dowel pins)',
  source:
    'an open fastener table of ISO 8734 (d, c, lengths); the shear loads from a pin data sheet after ASME B18.8.5M, because ISO 8734 states a hardness and no load',
  covers: '3 to 20 mm',
  verified: 'secondary',
  unit: 'mm; kN',
  notes: ['The shear loads are those of hardened alloy steel pins; a pin of plain or stainless steel carries less.'],
  // biome-ignore format: a table is read row by row
  rows: [
    { size: '3', d: 3, c: 0.5, shortest: 8, longest: 30, shear: 7.4 },
    { size: '4', d: 4, c: 0.63, shortest: 10, longest: 40, shear: 13.2 },
    { size: '5', d: 5, c: 0.8, shortest: 12, longest: 50, shear: 20.6 },
    { size: '6', d: 6, c: 1.2, shortest: 14, longest: 60, shear: 29.7 },
    { size: '8', d: 8, c: 1.6, shortest: 18, longest: 80, shear: 52.5 },
    { size: '10', d: 10, c: 2, shortest: 22, longest: 100, shear: 82.5 },
    { size: '12', d: 12, c: 2.5, shortest: 26, longest: 100, shear: 119 },
    { size: '16', d: 16, c: 3, shortest: 40, longest: 100, shear: 211 },
    { size: '20', d: 20, c: 3.5, shortest: 50, longest: 100, shear: 330 },
  ],
};

/** Lengths of ISO 8734, mm. Source: an open fastener table. */
export const dowelPinLengths: readonly number[] = [
  3, 4, 5, 6, 8, 10, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30, 32, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80, 85, 90, 95,
  100,
];

/** A pin as it is bought. mm; kN. */
export interface DowelPin {
  readonly d: number;
  readonly chamfer: number;
  /** Ascending. */
  readonly lengths: readonly number[];
  /** Limits of its diameter, m6. */
  readonly limits: { readonly lower: number; readonly upper: number };
  readonly shear: number;
  readonly standard: string;
  readonly memory: boolean;
}

/** The hardened pin of this nominal diameter (mm). A miss lists the diameters. */
export function dowelPin(d: number): Lookup<DowelPin> {
  return andThen(lookUp(dowelPins, 'd', d), (row) =>
    andThen(toleranceLimits(d, 'm6'), ({ lower, upper }) =>
      found({
        d,
        chamfer: row.c,
        lengths: dowelPinLengths.filter((length) => length >= row.shortest && length <= row.longest),
        limits: { lower: Number((d + lower).toFixed(6)), upper: Number((d + upper).toFixed(6)) },
        shear: row.shear,
        standard: dowelPins.edition,
        memory: row.memory ?? false,
      }),
    ),
  );
}

/** The thickest pin that is no thicker than `most`, mm; a miss names the thinnest there is. */
export function thickestDowelPin(most: number): Lookup<DowelPin> {
  const row = dowelPins.rows.filter(({ d }) => d <= most + 1e-9).at(-1);
  if (row) return dowelPin(row.d);
  return missing(`The thinnest pin of ${dowelPins.edition} here is ${dowelPins.rows[0]?.d} mm.`);
}
