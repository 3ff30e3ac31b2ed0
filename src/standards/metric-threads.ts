import type { StandardTable, TableRow } from './table.ts';

/** One ISO metric thread. Symbols of ISO 724 and ISO 898-1; lengths mm, area mm2. */
export interface MetricThreadRow extends TableRow {
  readonly designation: string;
  /** Nominal (major) diameter. */
  readonly d: number;
  /** Pitch. */
  readonly P: number;
  /** Pitch diameter. */
  readonly d2: number;
  /** Minor diameter of the internal thread. */
  readonly D1: number;
  /** Minor diameter of the external thread. */
  readonly d3: number;
  /** Nominal stress area. */
  readonly As: number;
  /** Tap drill, nearest stocked size to d - P. */
  readonly drill: number;
}

const source =
  'geometry of ISO 68-1 and ISO 724 recomputed, agreed with a published thread guide and two fine-thread tables; ' +
  'stress areas as in the ISO 898-1 reprints; tap drills ISO 2306 as in two open tables';

/** ISO 261 coarse series, M3 to M24. */
export const metricCoarse: StandardTable<MetricThreadRow> = {
  id: 'iso261-coarse',
  edition: 'ISO 261 / ISO 724 / ISO 898-1 / ISO 2306',
  title: 'ISO metric threads, coarse series',
  source,
  covers: 'M3 to M24',
  verified: 'secondary',
  unit: 'mm, mm2',
  notes: [
    'M7, M14, M18 and M22 are second choice.',
    'As = pi/4 (d - 0.938194 P)^2; ISO 898-1 prints it to three figures.',
  ],
  // biome-ignore format: a table is read row by row
  rows: [
    { designation: 'M3', d: 3, P: 0.5, d2: 2.675, D1: 2.459, d3: 2.387, As: 5.03, drill: 2.5 },
    // biome-ignore lint/suspicious/noApproximativeNumericConstant: the minor diameter of M4 happens to look like pi.
    { designation: 'M4', d: 4, P: 0.7, d2: 3.545, D1: 3.242, d3: 3.141, As: 8.78, drill: 3.3 },
    { designation: 'M5', d: 5, P: 0.8, d2: 4.48, D1: 4.134, d3: 4.019, As: 14.18, drill: 4.2 },
    { designation: 'M6', d: 6, P: 1, d2: 5.35, D1: 4.917, d3: 4.773, As: 20.12, drill: 5 },
    { designation: 'M7', d: 7, P: 1, d2: 6.35, D1: 5.917, d3: 5.773, As: 28.86, drill: 6 },
    { designation: 'M8', d: 8, P: 1.25, d2: 7.188, D1: 6.647, d3: 6.466, As: 36.61, drill: 6.8 },
    { designation: 'M10', d: 10, P: 1.5, d2: 9.026, D1: 8.376, d3: 8.16, As: 57.99, drill: 8.5 },
    { designation: 'M12', d: 12, P: 1.75, d2: 10.863, D1: 10.106, d3: 9.853, As: 84.27, drill: 10.2 },
    { designation: 'M14', d: 14, P: 2, d2: 12.701, D1: 11.835, d3: 11.546, As: 115.44, drill: 12 },
    { designation: 'M16', d: 16, P: 2, d2: 14.701, D1: 13.835, d3: 13.546, As: 156.67, drill: 14 },
    { designation: 'M18', d: 18, P: 2.5, d2: 16.376, D1: 15.294, d3: 14.933, As: 192.47, drill: 15.5 },
    { designation: 'M20', d: 20, P: 2.5, d2: 18.376, D1: 17.294, d3: 16.933, As: 244.79, drill: 17.5 },
    { designation: 'M22', d: 22, P: 2.5, d2: 20.376, D1: 19.294, d3: 18.933, As: 303.4, drill: 19.5 },
    { designation: 'M24', d: 24, P: 3, d2: 22.051, D1: 20.752, d3: 20.319, As: 352.5, drill: 21 },
  ],
};

/** ISO 261 fine series, the pitches a shop meets from M8 to M24. */
export const metricFine: StandardTable<MetricThreadRow> = {
  id: 'iso261-fine',
  edition: 'ISO 261 / ISO 724 / ISO 898-1 / ISO 2306',
  title: 'ISO metric threads, fine series',
  source,
  covers: 'M8x1 to M24x2',
  verified: 'secondary',
  unit: 'mm, mm2',
  notes: ['Tap drills printed 8.75 and 10.75 for P 1.25 are the same holes as 8.8 and 10.8.'],
  rows: [
    { designation: 'M8x1', d: 8, P: 1, d2: 7.35, D1: 6.917, d3: 6.773, As: 39.17, drill: 7 },
    { designation: 'M10x1.25', d: 10, P: 1.25, d2: 9.188, D1: 8.647, d3: 8.466, As: 61.2, drill: 8.8 },
    { designation: 'M10x1', d: 10, P: 1, d2: 9.35, D1: 8.917, d3: 8.773, As: 64.49, drill: 9 },
    { designation: 'M12x1.5', d: 12, P: 1.5, d2: 11.026, D1: 10.376, d3: 10.16, As: 88.13, drill: 10.5 },
    { designation: 'M12x1.25', d: 12, P: 1.25, d2: 11.188, D1: 10.647, d3: 10.466, As: 92.07, drill: 10.8 },
    { designation: 'M14x1.5', d: 14, P: 1.5, d2: 13.026, D1: 12.376, d3: 12.16, As: 124.55, drill: 12.5 },
    { designation: 'M16x1.5', d: 16, P: 1.5, d2: 15.026, D1: 14.376, d3: 14.16, As: 167.25, drill: 14.5 },
    { designation: 'M18x2', d: 18, P: 2, d2: 16.701, D1: 15.835, d3: 15.546, As: 204.18, drill: 16 },
    { designation: 'M18x1.5', d: 18, P: 1.5, d2: 17.026, D1: 16.376, d3: 16.16, As: 216.23, drill: 16.5 },
    { designation: 'M20x2', d: 20, P: 2, d2: 18.701, D1: 17.835, d3: 17.546, As: 257.98, drill: 18 },
    { designation: 'M20x1.5', d: 20, P: 1.5, d2: 19.026, D1: 18.376, d3: 18.16, As: 271.5, drill: 18.5 },
    { designation: 'M22x2', d: 22, P: 2, d2: 20.701, D1: 19.835, d3: 19.546, As: 318.05, drill: 20 },
    { designation: 'M22x1.5', d: 22, P: 1.5, d2: 21.026, D1: 20.376, d3: 20.16, As: 333.06, drill: 20.5 },
    { designation: 'M24x2', d: 24, P: 2, d2: 22.701, D1: 21.835, d3: 21.546, As: 384.42, drill: 22 },
  ],
};
