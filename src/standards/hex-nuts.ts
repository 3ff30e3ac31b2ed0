import { cos } from '../units/trig.ts';
import { readDesignation } from './designation.ts';
import { inchesToMm } from './inch.ts';
import type { Lookup, StandardTable, TableRow } from './table.ts';
import { andThen, found, lookUp } from './table.ts';

/** One metric hexagon nut. Symbols of ISO 4032, mm. */
export interface HexNutRow extends TableRow {
  readonly size: string;
  readonly d: number;
  /** Across flats. */
  readonly s: number;
  /** Largest height. */
  readonly m: number;
}

/** ISO 4032 hexagon nuts, style 1. */
export const hexNuts: StandardTable<HexNutRow> = {
  id: 'iso4032',
  edition: 'ISO 4032',
  title: 'Hexagon nuts, style 1',
  source: 'an open fastener table, agreed with figures from memory in every size (s of M14 is 21, as in ISO 4014)',
  covers: 'M3 to M24',
  verified: 'secondary',
  unit: 'mm',
  notes: ['Old DIN 934 nuts: s = 17, 19, 22, 32 for M10, M12, M14, M22, and lower. All-metal locking nuts are higher.'],
  rows: [
    { size: 'M3', d: 3, s: 5.5, m: 2.4 },
    { size: 'M4', d: 4, s: 7, m: 3.2 },
    { size: 'M5', d: 5, s: 8, m: 4.7 },
    { size: 'M6', d: 6, s: 10, m: 5.2 },
    { size: 'M8', d: 8, s: 13, m: 6.8 },
    { size: 'M10', d: 10, s: 16, m: 8.4 },
    { size: 'M12', d: 12, s: 18, m: 10.8 },
    { size: 'M14', d: 14, s: 21, m: 12.8 },
    { size: 'M16', d: 16, s: 24, m: 14.8 },
    { size: 'M18', d: 18, s: 27, m: 15.8 },
    { size: 'M20', d: 20, s: 30, m: 18 },
    { size: 'M22', d: 22, s: 34, m: 19.4 },
    { size: 'M24', d: 24, s: 36, m: 21.5 },
  ],
};

/** One inch hexagon nut, inches. */
export interface InchHexNutRow extends TableRow {
  readonly size: string;
  readonly D: number;
  /** Largest width across flats. */
  readonly F: number;
  /** Largest height. */
  readonly H: number;
}

/** ASME B18.2.2 hexagon nuts (#10: machine screw nut). */
export const inchHexNuts: StandardTable<InchHexNutRow> = {
  id: 'asme-b18.2.2',
  edition: 'ASME B18.2.2',
  title: 'Hexagon nuts, inch',
  source: 'largest values from memory; an open table of mean values lies within 0.012 in below them in every row',
  covers: '#10 to 3/4 in',
  verified: 'memory',
  unit: 'in',
  rows: [
    { size: '#10', D: 0.19, F: 0.375, H: 0.13 },
    { size: '1/4', D: 0.25, F: 0.438, H: 0.226 },
    { size: '5/16', D: 0.3125, F: 0.5, H: 0.273 },
    { size: '3/8', D: 0.375, F: 0.562, H: 0.337 },
    { size: '7/16', D: 0.4375, F: 0.688, H: 0.385 },
    { size: '1/2', D: 0.5, F: 0.75, H: 0.448 },
    { size: '5/8', D: 0.625, F: 0.938, H: 0.559 },
    { size: '3/4', D: 0.75, F: 1.125, H: 0.665 },
  ],
};

/** A hexagon nut, mm. */
export interface HexNut {
  readonly acrossFlats: number;
  /** Across corners of a full hexagon: s / cos 30 degrees, the most it can be. */
  readonly acrossCorners: number;
  readonly height: number;
  readonly source: string;
  readonly memory: boolean;
}

/** Hexagon nut of this size or thread, mm. Source: ISO 4032; ASME B18.2.2 for inch sizes. */
export function nutFor(sizeOrThread: string): Lookup<HexNut> {
  return andThen(readDesignation(sizeOrThread), ({ system, size }) => {
    if (system === 'metric') {
      return andThen(lookUp(hexNuts, 'size', size), (row) =>
        found(nut(row.s, row.m, hexNuts.edition, row.memory ?? false)),
      );
    }
    return andThen(lookUp(inchHexNuts, 'size', size), (row) =>
      found(nut(inchesToMm(row.F), inchesToMm(row.H), inchHexNuts.edition, true)),
    );
  });
}

function nut(acrossFlats: number, height: number, source: string, memory: boolean): HexNut {
  return { acrossFlats, acrossCorners: acrossFlats / cos(Math.PI / 6), height, source, memory };
}
