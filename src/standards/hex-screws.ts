import type { StandardTable, TableRow } from './table.ts';

/** One metric hexagon head screw. Symbols of ISO 4014, mm. */
export interface HexScrewRow extends TableRow {
  readonly size: string;
  readonly d: number;
  /** Across flats. */
  readonly s: number;
  /** Nominal head height. */
  readonly k: number;
  /** Least diameter of the bearing face. */
  readonly dw: number;
}

/** ISO 4014 (part thread) and ISO 4017 (full thread) hexagon head screws, grade A. */
export const hexScrews: StandardTable<HexScrewRow> = {
  id: 'iso4014',
  edition: 'ISO 4014 / ISO 4017',
  title: 'Hexagon head screws, grade A',
  source:
    's and k from two published tables; dw from the dimension table of the standard and a handbook of bolted joints',
  covers: 'M3 to M24',
  verified: 'secondary',
  unit: 'mm',
  memoryFields: ['dw of M3 and M18'],
  notes: ['Old DIN 931 and 933 heads still on shelves: s = 17 for M10, 19 for M12, 22 for M14, 32 for M22. Measure.'],
  rows: [
    { size: 'M3', d: 3, s: 5.5, k: 2, dw: 4.57, memory: true },
    { size: 'M4', d: 4, s: 7, k: 2.8, dw: 5.88 },
    { size: 'M5', d: 5, s: 8, k: 3.5, dw: 6.88 },
    { size: 'M6', d: 6, s: 10, k: 4, dw: 8.88 },
    { size: 'M8', d: 8, s: 13, k: 5.3, dw: 11.63 },
    { size: 'M10', d: 10, s: 16, k: 6.4, dw: 14.63 },
    { size: 'M12', d: 12, s: 18, k: 7.5, dw: 16.63 },
    { size: 'M14', d: 14, s: 21, k: 8.8, dw: 19.64 },
    { size: 'M16', d: 16, s: 24, k: 10, dw: 22.49 },
    { size: 'M18', d: 18, s: 27, k: 11.5, dw: 25.34, memory: true },
    { size: 'M20', d: 20, s: 30, k: 12.5, dw: 28.19 },
    { size: 'M22', d: 22, s: 34, k: 14, dw: 31.71 },
    { size: 'M24', d: 24, s: 36, k: 15, dw: 33.61 },
  ],
};

/** One inch hexagon cap screw. Symbols of ASME B18.2.1, inches. */
export interface InchHexScrewRow extends TableRow {
  readonly size: string;
  readonly D: number;
  /** Largest width across flats. */
  readonly F: number;
  /** Largest width across corners. */
  readonly G: number;
  /** Largest head height. */
  readonly H: number;
}

/** ASME B18.2.1 hexagon cap screws. */
export const inchHexScrews: StandardTable<InchHexScrewRow> = {
  id: 'asme-b18.2.1',
  edition: 'ASME B18.2.1',
  title: 'Hexagon cap screws, inch',
  source: 'three published reprints of the dimension table agree',
  covers: '1/4 to 3/4 in',
  verified: 'secondary',
  unit: 'in',
  rows: [
    { size: '1/4', D: 0.25, F: 0.438, G: 0.505, H: 0.163 },
    { size: '5/16', D: 0.3125, F: 0.5, G: 0.577, H: 0.211 },
    { size: '3/8', D: 0.375, F: 0.562, G: 0.65, H: 0.243 },
    { size: '7/16', D: 0.4375, F: 0.625, G: 0.722, H: 0.291 },
    { size: '1/2', D: 0.5, F: 0.75, G: 0.866, H: 0.323 },
    { size: '5/8', D: 0.625, F: 0.938, G: 1.083, H: 0.403 },
    { size: '3/4', D: 0.75, F: 1.125, G: 1.299, H: 0.483 },
  ],
};
