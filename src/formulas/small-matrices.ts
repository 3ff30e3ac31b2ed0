/** Small symmetric matrices: Cholesky factors, and eigenvalues by Jacobi's rotations. Rows as arrays; meant for up to some dozens of rows. */

export type Matrix = number[][];

/** A square of zeros. */
export function zeros(size: number): Matrix {
  return Array.from({ length: size }, () => new Array<number>(size).fill(0));
}

/** One cell; a place that is not there is a bug. */
export function cell(matrix: readonly (readonly number[])[], row: number, column: number): number {
  const value = matrix[row]?.[column];
  if (value === undefined) throw new RangeError(`There is no cell ${row}, ${column}.`);
  return value;
}

/**
 * Lower factor L of a positive definite matrix, A = L L^T. Textbook (Cholesky).
 * @throws RangeError when the matrix is not positive definite: a beam that nothing holds
 */
export function cholesky(matrix: Matrix): Matrix {
  const size = matrix.length;
  const factor = zeros(size);
  for (let i = 0; i < size; i++) {
    const own = factor[i] as number[];
    for (let j = 0; j <= i; j++) {
      const other = factor[j] as number[];
      let sum = cell(matrix, i, j);
      for (let k = 0; k < j; k++) sum -= (own[k] as number) * (other[k] as number);
      if (i !== j) own[j] = sum / (other[j] as number);
      else if (sum > 0) own[j] = Math.sqrt(sum);
      else throw new RangeError('The matrix is not positive definite.');
    }
  }
  return factor;
}

/** Solves L x = b, L a lower factor. */
export function forward(factor: Matrix, right: readonly number[]): number[] {
  const x: number[] = [];
  factor.forEach((row, i) => {
    let sum = right[i] as number;
    for (let k = 0; k < i; k++) sum -= (row[k] as number) * (x[k] as number);
    x.push(sum / (row[i] as number));
  });
  return x;
}

/** Solves L^T x = b, L a lower factor. */
export function backward(factor: Matrix, right: readonly number[]): number[] {
  const x = [...right];
  for (let i = factor.length - 1; i >= 0; i--) {
    let sum = x[i] as number;
    for (let k = i + 1; k < factor.length; k++) sum -= cell(factor, k, i) * (x[k] as number);
    x[i] = sum / cell(factor, i, i);
  }
  return x;
}

/** A times x. */
export function times(matrix: readonly (readonly number[])[], x: readonly number[]): number[] {
  return matrix.map((row) => row.reduce((sum, value, k) => sum + value * (x[k] as number), 0));
}

export function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, k) => sum + value * (b[k] as number), 0);
}

export interface Eigen {
  readonly value: number;
  /** Of length 1. */
  readonly vector: readonly number[];
}

/** Sweeps of rotations after which a symmetric matrix is diagonal to the last digit; ten are always enough. */
const mostSweeps = 30;

/** All eigenvalues of a symmetric matrix, greatest first, with their vectors. Jacobi's cyclic method, textbook. */
export function symmetricEigen(matrix: Matrix): Eigen[] {
  const size = matrix.length;
  const a = matrix.map((row) => [...row]);
  const v = zeros(size);
  for (let i = 0; i < size; i++) (v[i] as number[])[i] = 1;
  const scale = Math.max(...a.flat().map(Math.abs), Number.MIN_VALUE);
  for (let sweep = 0; sweep < mostSweeps; sweep++) {
    let off = 0;
    for (let p = 0; p < size; p++)
      for (let q = p + 1; q < size; q++) {
        off = Math.max(off, Math.abs(cell(a, p, q)));
        rotate(a, v, p, q);
      }
    if (off <= 1e-15 * scale) break;
  }
  return a
    .map((row, i) => ({ value: row[i] as number, vector: v.map((line) => line[i] as number) }))
    .sort((one, other) => other.value - one.value);
}

/** One rotation in the plane of p and q that makes their cell zero. */
function rotate(a: Matrix, v: Matrix, p: number, q: number): void {
  const apq = cell(a, p, q);
  if (apq === 0) return;
  const theta = (cell(a, q, q) - cell(a, p, p)) / (2 * apq);
  const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.hypot(1, theta));
  const c = 1 / Math.hypot(1, t);
  const s = t * c;
  for (const row of [...a, ...v]) {
    const [x, y] = [row[p] as number, row[q] as number];
    row[p] = c * x - s * y;
    row[q] = s * x + c * y;
  }
  const [rowP, rowQ] = [a[p] as number[], a[q] as number[]];
  for (let k = 0; k < a.length; k++) {
    const [x, y] = [rowP[k] as number, rowQ[k] as number];
    rowP[k] = c * x - s * y;
    rowQ[k] = s * x + c * y;
  }
}
