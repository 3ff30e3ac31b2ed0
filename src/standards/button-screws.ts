import type { StandardTable, TableRow } from './table.ts';

/** One metric button head screw. Symbols of ISO 7380-1, mm. */
export interface ButtonScrewRow extends TableRow {
  readonly size: string;
  readonly d: number;
  /** Largest head diameter. */
  readonly dk: number;
  /** Largest head height. */
  readonly k: number;
  /** Key across flats. */
  readonly s: number;
}

/** ISO 7380-1 hexagon socket button head screws. */
export const buttonScrews: StandardTable<ButtonScrewRow> = {
  id: 'iso7380-1',
  edition: 'ISO 7380-1',
  title: 'Hexagon socket button head screws',
  source: 'three published tables agree',
  covers: 'M3 to M16',
  verified: 'secondary',
  unit: 'mm',
  notes: ['The small key and the thin head carry less preload than ISO 4762; not a screw for a torque joint.'],
  rows: [
    { size: 'M3', d: 3, dk: 5.7, k: 1.65, s: 2 },
    { size: 'M4', d: 4, dk: 7.6, k: 2.2, s: 2.5 },
    { size: 'M5', d: 5, dk: 9.5, k: 2.75, s: 3 },
    { size: 'M6', d: 6, dk: 10.5, k: 3.3, s: 4 },
    { size: 'M8', d: 8, dk: 14, k: 4.4, s: 5 },
    { size: 'M10', d: 10, dk: 17.5, k: 5.5, s: 6 },
    { size: 'M12', d: 12, dk: 21, k: 6.6, s: 8 },
    { size: 'M16', d: 16, dk: 28, k: 8.8, s: 10 },
  ],
};

/** One inch button head screw. Symbols of ASME B18.3, inches. */
export interface InchButtonScrewRow extends TableRow {
  readonly size: string;
  readonly D: number;
  /** Largest head diameter. */
  readonly A: number;
  /** Largest head height. */
  readonly H: number;
}

/** ASME B18.3 button head socket screws. */
export const inchButtonScrews: StandardTable<InchButtonScrewRow> = {
  id: 'asme-b18.3-button',
  edition: 'ASME B18.3',
  title: 'Button head socket screws, inch',
  source: 'two published reprints of the dimension table agree',
  covers: '#10 to 5/8 in',
  verified: 'secondary',
  unit: 'in',
  rows: [
    { size: '#10', D: 0.19, A: 0.361, H: 0.101 },
    { size: '1/4', D: 0.25, A: 0.437, H: 0.132 },
    { size: '5/16', D: 0.3125, A: 0.547, H: 0.166 },
    { size: '3/8', D: 0.375, A: 0.656, H: 0.199 },
    { size: '1/2', D: 0.5, A: 0.875, H: 0.265 },
    { size: '5/8', D: 0.625, A: 1, H: 0.331 },
  ],
};
