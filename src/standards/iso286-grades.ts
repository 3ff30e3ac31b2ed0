import type { StandardTable } from './table.ts';

/** One step of nominal size (over < d <= upTo, mm) and its standard tolerances, micrometres. */
export interface GradeRow {
  readonly over: number;
  readonly upTo: number;
  /** Tolerance by grade name: '01', '0', '1' ... '18'. */
  readonly IT: Readonly<Record<string, number>>;
}

/** Grades in the order of the columns below. */
export const gradeNames: readonly string[] = '01 0 1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16 17 18'.split(' ');

// over, upTo, then IT01 IT0 IT1 ... IT18
const figures: readonly (readonly number[])[] = [
  [0, 3, 0.3, 0.5, 0.8, 1.2, 2, 3, 4, 6, 10, 14, 25, 40, 60, 100, 140, 250, 400, 600, 1000, 1400],
  [3, 6, 0.4, 0.6, 1, 1.5, 2.5, 4, 5, 8, 12, 18, 30, 48, 75, 120, 180, 300, 480, 750, 1200, 1800],
  [6, 10, 0.4, 0.6, 1, 1.5, 2.5, 4, 6, 9, 15, 22, 36, 58, 90, 150, 220, 360, 580, 900, 1500, 2200],
  [10, 18, 0.5, 0.8, 1.2, 2, 3, 5, 8, 11, 18, 27, 43, 70, 110, 180, 270, 430, 700, 1100, 1800, 2700],
  [18, 30, 0.6, 1, 1.5, 2.5, 4, 6, 9, 13, 21, 33, 52, 84, 130, 210, 330, 520, 840, 1300, 2100, 3300],
  [30, 50, 0.6, 1, 1.5, 2.5, 4, 7, 11, 16, 25, 39, 62, 100, 160, 250, 390, 620, 1000, 1600, 2500, 3900],
  [50, 80, 0.8, 1.2, 2, 3, 5, 8, 13, 19, 30, 46, 74, 120, 190, 300, 460, 740, 1200, 1900, 3000, 4600],
  [80, 120, 1, 1.5, 2.5, 4, 6, 10, 15, 22, 35, 54, 87, 140, 220, 350, 540, 870, 1400, 2200, 3500, 5400],
  [120, 180, 1.2, 2, 3.5, 5, 8, 12, 18, 25, 40, 63, 100, 160, 250, 400, 630, 1000, 1600, 2500, 4000, 6300],
  [180, 250, 2, 3, 4.5, 7, 10, 14, 20, 29, 46, 72, 115, 185, 290, 460, 720, 1150, 1850, 2900, 4600, 7200],
  [250, 315, 2.5, 4, 6, 8, 12, 16, 23, 32, 52, 81, 130, 210, 320, 520, 810, 1300, 2100, 3200, 5200, 8100],
  [315, 400, 3, 5, 7, 9, 13, 18, 25, 36, 57, 89, 140, 230, 360, 570, 890, 1400, 2300, 3600, 5700, 8900],
  [400, 500, 4, 6, 8, 10, 15, 20, 27, 40, 63, 97, 155, 250, 400, 630, 970, 1550, 2500, 4000, 6300, 9700],
];

/** ISO 286-1 table 1: standard tolerance grades IT01 to IT18 up to 500 mm. */
export const standardTolerances: StandardTable<GradeRow> = {
  id: 'iso286-it',
  edition: 'ISO 286-1:2010',
  title: 'Standard tolerance grades IT',
  source:
    'Narayana, Kannaiah and Venkata Reddy, Machine Drawing, chapter 15; compared cell by cell with three open tables of the same standard',
  covers: 'sizes over 0 up to 500 mm; IT14 to IT18 only above 1 mm',
  verified: 'secondary',
  unit: 'um (steps in mm)',
  notes: ['The table is the standard; the formulas behind it miss 46 of its cells and are not used.'],
  rows: figures.map(([over = 0, upTo = 0, ...tolerances]) => ({
    over,
    upTo,
    IT: Object.fromEntries(gradeNames.map((grade, at) => [grade, tolerances[at] ?? Number.NaN])),
  })),
};

/** The correction delta = IT(n) - IT(n-1) of one step, micrometres, by grade name '3' to '8'. */
export interface DeltaRow {
  readonly over: number;
  readonly upTo: number;
  readonly delta: Readonly<Record<string, number>>;
}

// over, upTo, then delta for IT3 IT4 IT5 IT6 IT7 IT8
const deltaFigures: readonly (readonly number[])[] = [
  [0, 3, 0, 0, 0, 0, 0, 0],
  [3, 6, 1, 1.5, 1, 3, 4, 6],
  [6, 10, 1, 1.5, 2, 3, 6, 7],
  [10, 18, 1, 2, 3, 3, 7, 9],
  [18, 30, 1.5, 2, 3, 4, 8, 12],
  [30, 50, 1.5, 3, 4, 5, 9, 14],
  [50, 80, 2, 3, 5, 6, 11, 16],
  [80, 120, 2, 4, 5, 7, 13, 19],
  [120, 180, 3, 4, 6, 7, 15, 23],
  [180, 250, 3, 4, 6, 9, 17, 26],
  [250, 315, 4, 4, 7, 9, 20, 29],
  [315, 400, 4, 5, 7, 11, 21, 32],
  [400, 500, 5, 5, 7, 13, 23, 34],
];

/** ISO 286-1: the delta that holes K to ZC add to the mirrored shaft deviation. Zero up to 3 mm. */
export const holeDeltas: StandardTable<DeltaRow> = {
  id: 'iso286-delta',
  edition: 'ISO 286-1:2010',
  title: 'Delta for holes K to ZC',
  source:
    'Narayana, Kannaiah and Venkata Reddy, Machine Drawing, chapter 15; compared cell by cell with three open tables of the same standard',
  covers: 'sizes over 0 up to 500 mm; grades IT3 to IT8',
  verified: 'secondary',
  unit: 'um (steps in mm)',
  rows: deltaFigures.map(([over = 0, upTo = 0, ...deltas]) => ({
    over,
    upTo,
    delta: Object.fromEntries(['3', '4', '5', '6', '7', '8'].map((grade, at) => [grade, deltas[at] ?? Number.NaN])),
  })),
};
