import type { StandardTable, TableRow } from './table.ts';

/** Tolerances that go by pitch alone, micrometres. Symbols of ISO 965-1, tolerance grade 6, position g. */
export interface PitchToleranceRow extends TableRow {
  readonly P: number;
  /** Fundamental deviation of an external thread in position g: everything moves inward by es. */
  readonly es: number;
  /** Tolerance of the external major diameter. */
  readonly Td: number;
  /** Tolerance of the internal minor diameter. */
  readonly TD1: number;
}

const source =
  'ISO 965-1 as remembered, confirmed by printed limits in four tables and by Bickford\u2019s shear areas to five figures';

/** ISO 965-1, 6g and 6H: tolerances by pitch. */
export const pitchTolerances: StandardTable<PitchToleranceRow> = {
  id: 'iso965-pitch',
  edition: 'ISO 965-1',
  title: 'Thread tolerances 6g and 6H by pitch',
  source,
  covers: 'pitches 0.5 to 3 mm',
  verified: 'secondary',
  unit: 'um (P in mm)',
  memoryFields: [
    'es at P 1.75 and 3, Td at P 1.75, 2.5, 3 and TD1 at P 2.5, 3: confirmed only through the shear areas',
  ],
  rows: [
    { P: 0.5, es: 20, Td: 106, TD1: 140 },
    { P: 0.7, es: 22, Td: 140, TD1: 180 },
    { P: 0.8, es: 24, Td: 150, TD1: 200 },
    { P: 1, es: 26, Td: 180, TD1: 236 },
    { P: 1.25, es: 28, Td: 212, TD1: 265 },
    { P: 1.5, es: 32, Td: 236, TD1: 300 },
    { P: 1.75, es: 34, Td: 265, TD1: 335 },
    { P: 2, es: 38, Td: 280, TD1: 375 },
    { P: 2.5, es: 42, Td: 335, TD1: 450 },
    { P: 3, es: 48, Td: 375, TD1: 500 },
  ],
};

/** Tolerances of the pitch diameter, which go by diameter range (over < d <= upTo, mm) and pitch; micrometres. */
export interface PitchDiameterToleranceRow extends TableRow {
  readonly over: number;
  readonly upTo: number;
  readonly P: number;
  /** External, grade 6. */
  readonly Td2: number;
  /** Internal, grade 6. */
  readonly TD2: number;
}

/** ISO 965-1, 6g and 6H: tolerances of the pitch diameter. */
export const pitchDiameterTolerances: StandardTable<PitchDiameterToleranceRow> = {
  id: 'iso965-pitch-diameter',
  edition: 'ISO 965-1',
  title: 'Thread tolerances 6g and 6H of the pitch diameter',
  source,
  covers: 'M3 to M24',
  verified: 'secondary',
  unit: 'um (d and P in mm)',
  rows: [
    { over: 2.8, upTo: 5.6, P: 0.5, Td2: 75, TD2: 100 },
    { over: 2.8, upTo: 5.6, P: 0.7, Td2: 90, TD2: 118 },
    { over: 2.8, upTo: 5.6, P: 0.8, Td2: 95, TD2: 125 },
    { over: 5.6, upTo: 11.2, P: 1, Td2: 112, TD2: 150 },
    { over: 5.6, upTo: 11.2, P: 1.25, Td2: 118, TD2: 160 },
    { over: 5.6, upTo: 11.2, P: 1.5, Td2: 132, TD2: 180 },
    { over: 11.2, upTo: 22.4, P: 1.25, Td2: 132, TD2: 180 },
    { over: 11.2, upTo: 22.4, P: 1.5, Td2: 140, TD2: 190 },
    { over: 11.2, upTo: 22.4, P: 1.75, Td2: 150, TD2: 200 },
    { over: 11.2, upTo: 22.4, P: 2, Td2: 160, TD2: 212 },
    { over: 11.2, upTo: 22.4, P: 2.5, Td2: 170, TD2: 224 },
    { over: 22.4, upTo: 45, P: 2, Td2: 170, TD2: 224 },
    { over: 22.4, upTo: 45, P: 3, Td2: 200, TD2: 265 },
  ],
};
