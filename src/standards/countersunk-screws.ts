import type { StandardTable, TableRow } from './table.ts';

/** One metric countersunk socket screw. Symbols of ISO 10642, mm. */
export interface CountersunkScrewRow extends TableRow {
  readonly size: string;
  readonly d: number;
  /** Largest theoretical head diameter: where the sides of the cone would meet the top plane with sharp edges. */
  readonly dk: number;
  /** Least actual head diameter. */
  readonly dkActual: number;
  /** Largest head height. */
  readonly k: number;
  /** Key across flats. */
  readonly s: number;
}

/** ISO 10642 hexagon socket countersunk head screws, 90 degrees. */
export const countersunkScrews: StandardTable<CountersunkScrewRow> = {
  id: 'iso10642',
  edition: 'ISO 10642',
  title: 'Hexagon socket countersunk head screws, 90 degrees',
  source: 'dimension table of the standard, agreed with two published tables',
  covers: 'M3 to M20',
  verified: 'primary',
  unit: 'mm',
  memoryFields: ['the 80 % of proof load in the notes'],
  notes: [
    'The head is too weak for the full proof load of the thread; take 80 % unless tested.',
    'The older DIN 7991 heads are smaller and still sold: measure.',
  ],
  rows: [
    { size: 'M3', d: 3, dk: 6.72, dkActual: 5.54, k: 1.86, s: 2 },
    { size: 'M4', d: 4, dk: 8.96, dkActual: 7.53, k: 2.48, s: 2.5 },
    { size: 'M5', d: 5, dk: 11.2, dkActual: 9.43, k: 3.1, s: 3 },
    { size: 'M6', d: 6, dk: 13.44, dkActual: 11.34, k: 3.72, s: 4 },
    { size: 'M8', d: 8, dk: 17.92, dkActual: 15.24, k: 4.96, s: 5 },
    { size: 'M10', d: 10, dk: 22.4, dkActual: 19.22, k: 6.2, s: 6 },
    { size: 'M12', d: 12, dk: 26.88, dkActual: 23.12, k: 7.44, s: 8 },
    { size: 'M14', d: 14, dk: 30.8, dkActual: 26.52, k: 8.4, s: 10 },
    { size: 'M16', d: 16, dk: 33.6, dkActual: 29.01, k: 8.8, s: 10 },
    { size: 'M20', d: 20, dk: 40.32, dkActual: 36.05, k: 10.16, s: 12 },
  ],
};

/** One inch flat head socket screw. Symbols of ASME B18.3, inches. */
export interface InchCountersunkScrewRow extends TableRow {
  readonly size: string;
  readonly D: number;
  /** Largest theoretical (sharp) head diameter. */
  readonly A: number;
  /** Least actual head diameter. */
  readonly Amin: number;
  /** Head height, reference. */
  readonly H: number;
  /** Key across flats. */
  readonly J: number;
}

/** ASME B18.3 flat countersunk socket screws, 82 degrees. */
export const inchCountersunkScrews: StandardTable<InchCountersunkScrewRow> = {
  id: 'asme-b18.3-flat',
  edition: 'ASME B18.3',
  title: 'Flat countersunk socket screws, 82 degrees, inch',
  source: 'two published tables agree',
  covers: '#10 to 3/4 in',
  verified: 'secondary',
  unit: 'in',
  notes: ['82 degrees, not 90: an inch screw in a metric countersink bears on its rim only.'],
  rows: [
    { size: '#10', D: 0.19, A: 0.411, Amin: 0.359, H: 0.127, J: 0.125 },
    { size: '1/4', D: 0.25, A: 0.531, Amin: 0.48, H: 0.161, J: 0.15625 },
    { size: '5/16', D: 0.3125, A: 0.656, Amin: 0.6, H: 0.198, J: 0.1875 },
    { size: '3/8', D: 0.375, A: 0.781, Amin: 0.72, H: 0.234, J: 0.21875 },
    { size: '7/16', D: 0.4375, A: 0.844, Amin: 0.781, H: 0.234, J: 0.25 },
    { size: '1/2', D: 0.5, A: 0.938, Amin: 0.872, H: 0.251, J: 0.3125 },
    { size: '5/8', D: 0.625, A: 1.188, Amin: 1.112, H: 0.324, J: 0.375 },
    { size: '3/4', D: 0.75, A: 1.438, Amin: 1.355, H: 0.396, J: 0.5 },
  ],
};
