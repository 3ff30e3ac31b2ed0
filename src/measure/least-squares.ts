/**
 * Linear least squares by normal equations, and how far a bounded error of each value can move the answer.
 *
 * Every value is taken to be wrong by at most its doubt. The answer is a fixed weighted sum of the values (the gains), so the
 * sum of gain times doubt is the farthest it can be moved: a bound, not a likelihood.
 */

export interface LinearFit {
  /** One number for each column. */
  readonly solution: readonly number[];
  /** Value less what the fit says, for each row. */
  readonly residuals: readonly number[];
  /** gains[column][row]: how much the column's answer moves when that row's value moves by one. */
  readonly gains: readonly (readonly number[])[];
  /** How large each residual can get when no value is wrong by more than its doubt. */
  readonly residualBounds: (doubts: readonly number[]) => number[];
}

/**
 * Solve rows x = values in the least-squares sense (C. F. Gauss's normal equations, any text on numerical methods).
 * Columns should be of about one size. @returns null when the rows do not settle every column
 */
export function leastSquares(
  rows: readonly (readonly number[])[],
  values: readonly number[],
  weights: readonly number[] = values.map(() => 1),
): LinearFit | null {
  const width = rows[0]?.length ?? 0;
  const normal = Array.from({ length: width }, (_, i) =>
    Array.from({ length: width }, (_, j) => sum(rows.map((row, n) => at(row, i) * at(row, j) * at(weights, n)))),
  );
  const inverse = inverseOf(normal);
  if (inverse === null) return null;
  const gains = inverse.map((line) =>
    rows.map((row, n) => sum(line.map((cell, i) => cell * at(row, i))) * at(weights, n)),
  );
  const solution = gains.map((line) => dot(line, values));
  const residuals = rows.map((row, n) => at(values, n) - dot(row, solution));
  const residualBounds = (doubts: readonly number[]) =>
    rows.map((row, n) =>
      sum(
        rows.map((_, m) => {
          const hat = sum(gains.map((line, i) => at(row, i) * at(line, m)));
          return Math.abs((n === m ? 1 : 0) - hat) * at(doubts, m);
        }),
      ),
    );
  return { solution, residuals, gains, residualBounds };
}

/** Farthest that the mix of columns (one factor a column) can be moved by values wrong by up to their doubts. */
export function mixBound(fit: LinearFit, mix: readonly number[], doubts: readonly number[]): number {
  return sum(
    doubts.map((doubt, n) => Math.abs(sum(mix.map((factor, i) => factor * at(fit.gains[i] ?? [], n)))) * doubt),
  );
}

/** Inverse of a square matrix by Gauss-Jordan elimination with row pivots; null when it has none worth having. */
export function inverseOf(matrix: readonly (readonly number[])[]): number[][] | null {
  const size = matrix.length;
  const work = matrix.map((row, i) => [...row, ...Array.from({ length: size }, (_, j) => (i === j ? 1 : 0))]);
  const scale = Math.max(...matrix.flat().map(Math.abs));
  for (let column = 0; column < size; column++) {
    let pivot = column;
    for (let row = column; row < size; row++) {
      if (Math.abs(at(work[row] ?? [], column)) > Math.abs(at(work[pivot] ?? [], column))) pivot = row;
    }
    const lead = work[pivot] as number[];
    if (!(Math.abs(at(lead, column)) > 1e-12 * scale)) return null;
    work[pivot] = work[column] as number[];
    const head = at(lead, column);
    const unit = lead.map((cell) => cell / head);
    work[column] = unit;
    for (let row = 0; row < size; row++) {
      if (row === column) continue;
      const line = work[row] as number[];
      const factor = at(line, column);
      if (factor !== 0) work[row] = line.map((cell, j) => cell - factor * at(unit, j));
    }
  }
  return work.map((row) => row.slice(size));
}

/**
 * Student's t for 95 % two-sided, by degrees of freedom (any statistics table): how many standard deviations hold 95 of 100
 * when the deviation itself was estimated from few residuals. Between the steps the smaller number of freedoms is taken.
 */
export function student95(freedom: number): number {
  const step = studentSteps.findLast(([from]) => freedom >= from);
  return step === undefined ? Number.POSITIVE_INFINITY : step[1];
}

const studentSteps: readonly (readonly [number, number])[] = [
  [1, 12.706],
  [2, 4.303],
  [3, 3.182],
  [4, 2.776],
  [5, 2.571],
  [6, 2.447],
  [7, 2.365],
  [8, 2.306],
  [9, 2.262],
  [10, 2.228],
  [12, 2.179],
  [15, 2.131],
  [20, 2.086],
  [30, 2.042],
  [60, 2.0],
];

export function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, number) => total + number, 0);
}

function dot(a: readonly number[], b: readonly number[]): number {
  return sum(a.map((value, i) => value * at(b, i)));
}

/** Cell of a list that is known to be long enough. */
function at(list: readonly number[], index: number): number {
  return list[index] ?? 0;
}
