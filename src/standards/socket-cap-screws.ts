import type { StandardTable, TableRow } from './table.ts';

/** One metric socket head cap screw. Symbols of ISO 4762, mm. */
export interface SocketScrewRow extends TableRow {
  readonly size: string;
  readonly d: number;
  /** Largest plain head diameter. */
  readonly dk: number;
  /** Largest knurled head diameter: the one that needs room. Not printed for the second-choice sizes. */
  readonly dkKnurled?: number;
  /** Largest head height. */
  readonly k: number;
  /** Key across flats. */
  readonly s: number;
  /** Least key depth. */
  readonly t: number;
  /** Least diameter of the bearing face. */
  readonly dw: number;
}

/** ISO 4762 (formerly DIN 912) hexagon socket head cap screws. */
export const socketCapScrews: StandardTable<SocketScrewRow> = {
  id: 'iso4762',
  edition: 'ISO 4762 (DIN 912)',
  title: 'Hexagon socket head cap screws',
  source: 'four published tables agree on dk, k, s, t; dw from two, one of them a handbook of bolted joints',
  covers: 'M3 to M24',
  verified: 'secondary',
  unit: 'mm',
  notes: ['M18 and M22 are DIN 912 sizes of second choice.', 'A counterbore must clear the knurled head.'],
  rows: [
    { size: 'M3', d: 3, dk: 5.5, dkKnurled: 5.68, k: 3, s: 2.5, t: 1.3, dw: 5.07 },
    { size: 'M4', d: 4, dk: 7, dkKnurled: 7.22, k: 4, s: 3, t: 2, dw: 6.53 },
    { size: 'M5', d: 5, dk: 8.5, dkKnurled: 8.72, k: 5, s: 4, t: 2.5, dw: 8.03 },
    { size: 'M6', d: 6, dk: 10, dkKnurled: 10.22, k: 6, s: 5, t: 3, dw: 9.38 },
    { size: 'M8', d: 8, dk: 13, dkKnurled: 13.27, k: 8, s: 6, t: 4, dw: 12.33 },
    { size: 'M10', d: 10, dk: 16, dkKnurled: 16.27, k: 10, s: 8, t: 5, dw: 15.33 },
    { size: 'M12', d: 12, dk: 18, dkKnurled: 18.27, k: 12, s: 10, t: 6, dw: 17.23 },
    { size: 'M14', d: 14, dk: 21, dkKnurled: 21.33, k: 14, s: 12, t: 7, dw: 20.17 },
    { size: 'M16', d: 16, dk: 24, dkKnurled: 24.33, k: 16, s: 14, t: 8, dw: 23.17 },
    { size: 'M18', d: 18, dk: 27, k: 18, s: 14, t: 9, dw: 25.87 },
    { size: 'M20', d: 20, dk: 30, dkKnurled: 30.33, k: 20, s: 17, t: 10, dw: 28.87 },
    { size: 'M22', d: 22, dk: 33, k: 22, s: 17, t: 11, dw: 31.81 },
    { size: 'M24', d: 24, dk: 36, dkKnurled: 36.39, k: 24, s: 19, t: 12, dw: 34.81 },
  ],
};

/** One inch socket head cap screw. Symbols of ASME B18.3, inches. */
export interface InchSocketScrewRow extends TableRow {
  readonly size: string;
  readonly D: number;
  /** Largest head diameter. */
  readonly A: number;
  /** Largest head height. */
  readonly H: number;
  /** Key across flats. */
  readonly J: number;
  /** Least key engagement. */
  readonly T: number;
}

/** ASME B18.3 socket head cap screws, 1960 series. */
export const inchSocketCapScrews: StandardTable<InchSocketScrewRow> = {
  id: 'asme-b18.3-socket',
  edition: 'ASME B18.3 (1960 series)',
  title: 'Socket head cap screws, inch',
  source: 'four published tables agree on A, H and J',
  covers: '#10 to 3/4 in',
  verified: 'secondary',
  unit: 'in',
  notes: ['A = 1.5 D and H = D.'],
  rows: [
    { size: '#10', D: 0.19, A: 0.312, H: 0.19, J: 0.15625, T: 0.09 },
    { size: '1/4', D: 0.25, A: 0.375, H: 0.25, J: 0.1875, T: 0.12 },
    { size: '5/16', D: 0.3125, A: 0.469, H: 0.312, J: 0.25, T: 0.151 },
    { size: '3/8', D: 0.375, A: 0.562, H: 0.375, J: 0.3125, T: 0.182 },
    { size: '7/16', D: 0.4375, A: 0.656, H: 0.438, J: 0.375, T: 0.213 },
    { size: '1/2', D: 0.5, A: 0.75, H: 0.5, J: 0.375, T: 0.245 },
    { size: '5/8', D: 0.625, A: 0.938, H: 0.625, J: 0.5, T: 0.307 },
    { size: '3/4', D: 0.75, A: 1.125, H: 0.75, J: 0.625, T: 0.37 },
  ],
};
