import type { StandardTable } from './table.ts';

/** One step of nominal size (over < d <= upTo, mm) and its fundamental deviations by letter, micrometres. */
export interface DeviationRow {
  readonly over: number;
  readonly upTo: number;
  /** null where the letter is not used in this step. */
  readonly deviation: Readonly<Record<string, number | null>>;
}

/**
 * Shaft letters in the order of the columns below. c to h give es, the upper deviation; j to u give ei, the lower.
 * k holds for IT4 to IT7 only and is 0 in every other grade. j5 and j6 share a column; t starts above 24 mm.
 */
export const shaftLetters = ['c', 'd', 'e', 'f', 'g', 'h', 'k', 'm', 'n', 'p', 'r', 's', 't', 'u', 'j5', 'j7'] as const;

// over, upTo, then c d e f g h k m n p r s t u j5(=j6) j7
const shaftFigures: readonly (readonly (number | null)[])[] = [
  [0, 3, -60, -20, -14, -6, -2, 0, 0, 2, 4, 6, 10, 14, null, 18, -2, -4],
  [3, 6, -70, -30, -20, -10, -4, 0, 1, 4, 8, 12, 15, 19, null, 23, -2, -4],
  [6, 10, -80, -40, -25, -13, -5, 0, 1, 6, 10, 15, 19, 23, null, 28, -2, -5],
  [10, 14, -95, -50, -32, -16, -6, 0, 1, 7, 12, 18, 23, 28, null, 33, -3, -6],
  [14, 18, -95, -50, -32, -16, -6, 0, 1, 7, 12, 18, 23, 28, null, 33, -3, -6],
  [18, 24, -110, -65, -40, -20, -7, 0, 2, 8, 15, 22, 28, 35, null, 41, -4, -8],
  [24, 30, -110, -65, -40, -20, -7, 0, 2, 8, 15, 22, 28, 35, 41, 48, -4, -8],
  [30, 40, -120, -80, -50, -25, -9, 0, 2, 9, 17, 26, 34, 43, 48, 60, -5, -10],
  [40, 50, -130, -80, -50, -25, -9, 0, 2, 9, 17, 26, 34, 43, 54, 70, -5, -10],
  [50, 65, -140, -100, -60, -30, -10, 0, 2, 11, 20, 32, 41, 53, 66, 87, -7, -12],
  [65, 80, -150, -100, -60, -30, -10, 0, 2, 11, 20, 32, 43, 59, 75, 102, -7, -12],
  [80, 100, -170, -120, -72, -36, -12, 0, 3, 13, 23, 37, 51, 71, 91, 124, -9, -15],
  [100, 120, -180, -120, -72, -36, -12, 0, 3, 13, 23, 37, 54, 79, 104, 144, -9, -15],
  [120, 140, -200, -145, -85, -43, -14, 0, 3, 15, 27, 43, 63, 92, 122, 170, -11, -18],
  [140, 160, -210, -145, -85, -43, -14, 0, 3, 15, 27, 43, 65, 100, 134, 190, -11, -18],
  [160, 180, -230, -145, -85, -43, -14, 0, 3, 15, 27, 43, 68, 108, 146, 210, -11, -18],
  [180, 200, -240, -170, -100, -50, -15, 0, 4, 17, 31, 50, 77, 122, 166, 236, -13, -21],
  [200, 225, -260, -170, -100, -50, -15, 0, 4, 17, 31, 50, 80, 130, 180, 258, -13, -21],
  [225, 250, -280, -170, -100, -50, -15, 0, 4, 17, 31, 50, 84, 140, 196, 284, -13, -21],
  [250, 280, -300, -190, -110, -56, -17, 0, 4, 20, 34, 56, 94, 158, 218, 315, -16, -26],
  [280, 315, -330, -190, -110, -56, -17, 0, 4, 20, 34, 56, 98, 170, 240, 350, -16, -26],
  [315, 355, -360, -210, -125, -62, -18, 0, 4, 21, 37, 62, 108, 190, 268, 390, -18, -28],
  [355, 400, -400, -210, -125, -62, -18, 0, 4, 21, 37, 62, 114, 208, 294, 435, -18, -28],
  [400, 450, -440, -230, -135, -68, -20, 0, 5, 23, 40, 68, 126, 232, 330, 490, -20, -32],
  [450, 500, -480, -230, -135, -68, -20, 0, 5, 23, 40, 68, 132, 252, 360, 540, -20, -32],
];

/** ISO 286-1 table 4 and 5, the letters a shop uses: shaft deviations c to h (es) and j to u (ei). */
export const shaftDeviations: StandardTable<DeviationRow> = {
  id: 'iso286-shafts',
  edition: 'ISO 286-1:2010',
  title: 'Fundamental deviations of shafts',
  source:
    'Narayana, Kannaiah and Venkata Reddy, Machine Drawing, chapter 15; compared cell by cell with three open tables of the same standard',
  covers: 'sizes over 0 up to 500 mm; letters c d e f g h j js k m n p r s t u',
  verified: 'secondary',
  unit: 'um (steps in mm)',
  notes: ['t and u are confirmed by two open tables only.', 'j8 exists up to 3 mm only: ei = -6.'],
  rows: shaftFigures.map((row) => deviationRow(shaftLetters, row)),
};

/** Hole letters of the table below. The other holes follow from the shafts by rule, see iso286.ts. */
export const holeLetters = ['J6', 'J7', 'J8'] as const;

// over, upTo, then ES of J6 J7 J8
const holeFigures: readonly (readonly number[])[] = [
  [0, 3, 2, 4, 6],
  [3, 6, 5, 6, 10],
  [6, 10, 5, 8, 12],
  [10, 14, 6, 10, 15],
  [14, 18, 6, 10, 15],
  [18, 24, 8, 12, 20],
  [24, 30, 8, 12, 20],
  [30, 40, 10, 14, 24],
  [40, 50, 10, 14, 24],
  [50, 65, 13, 18, 28],
  [65, 80, 13, 18, 28],
  [80, 100, 16, 22, 34],
  [100, 120, 16, 22, 34],
  [120, 140, 18, 26, 41],
  [140, 160, 18, 26, 41],
  [160, 180, 18, 26, 41],
  [180, 200, 22, 30, 47],
  [200, 225, 22, 30, 47],
  [225, 250, 22, 30, 47],
  [250, 280, 25, 36, 55],
  [280, 315, 25, 36, 55],
  [315, 355, 29, 39, 60],
  [355, 400, 29, 39, 60],
  [400, 450, 33, 43, 66],
  [450, 500, 33, 43, 66],
];

/** ISO 286-1: ES of the holes J6, J7 and J8, the only holes that follow from no rule. */
export const holeDeviationsJ: StandardTable<DeviationRow> = {
  id: 'iso286-holes-j',
  edition: 'ISO 286-1:2010',
  title: 'Upper deviations ES of holes J6, J7, J8',
  source: 'a mould-component catalogue and two open tables of the same standard',
  covers: 'sizes over 0 up to 500 mm; J6, J7, J8',
  verified: 'secondary',
  unit: 'um (steps in mm)',
  rows: holeFigures.map((row) => deviationRow(holeLetters, row)),
};

/** Name the figures of one printed line. */
function deviationRow(letters: readonly string[], line: readonly (number | null)[]): DeviationRow {
  const [over, upTo, ...figures] = line;
  return {
    over: over ?? 0,
    upTo: upTo ?? 0,
    deviation: Object.fromEntries(letters.map((letter, at) => [letter, figures[at] ?? null])),
  };
}
