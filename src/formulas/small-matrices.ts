/** Small symmetric matrices: Cholesky factors, and eigenvalues by Jacobi's rotations. Rows as arrays; meant for up to some dozens of rows. */
import { hypot } from '../units/hypot.ts';

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
 * @param reach how far from the diagonal a cell may be other than 0; left out: anywhere. L reaches no further, and zeros are not multiplied
 * @throws RangeError when the matrix is not positive definite: a beam that nothing holds
 */
export function cholesky(matrix: Matrix, reach = matrix.length): Matrix {
  const size = matrix.length;
  const factor = zeros(size);
  for (let i = 0; i < size; i++) {
    const own = factor[i] as number[];
    const first = Math.max(0, i - reach);
    for (let j = first; j <= i; j++) {
      const other = factor[j] as number[];
      let sum = cell(matrix, i, j);
      for (let k = first; k < j; k++) sum -= (own[k] as number) * (other[k] as number);
      if (i !== j) own[j] = sum / (other[j] as number);
      else if (sum > 0) own[j] = Math.sqrt(sum);
      else throw new RangeError('The matrix is not positive definite.');
    }
  }
  return factor;
}

/** Solves L x = b, L a lower factor. `reach` as for the factor. */
export function forward(factor: Matrix, right: readonly number[], reach = factor.length): number[] {
  const x: number[] = [];
  for (let i = 0; i < factor.length; i++) {
    const row = factor[i] as number[];
    let sum = right[i] as number;
    for (let k = Math.max(0, i - reach); k < i; k++) sum -= (row[k] as number) * (x[k] as number);
    x.push(sum / (row[i] as number));
  }
  return x;
}

/** Solves L^T x = b, L a lower factor. `reach` as for the factor. */
export function backward(factor: Matrix, right: readonly number[], reach = factor.length): number[] {
  const x = [...right];
  for (let i = factor.length - 1; i >= 0; i--) {
    const end = Math.min(factor.length - 1, i + reach);
    let sum = x[i] as number;
    for (let k = i + 1; k <= end; k++) sum -= cell(factor, k, i) * (x[k] as number);
    x[i] = sum / cell(factor, i, i);
  }
  return x;
}

/** A times x, A with no more than zeros further than `reach` from the diagonal; left out: any A. */
export function times(matrix: readonly (readonly number[])[], x: readonly number[], reach = x.length): number[] {
  const product: number[] = [];
  for (let i = 0; i < matrix.length; i++) {
    const row = matrix[i] as readonly number[];
    const end = Math.min(row.length - 1, i + reach);
    let sum = 0;
    for (let k = Math.max(0, i - reach); k <= end; k++) sum += (row[k] as number) * (x[k] as number);
    product.push(sum);
  }
  return product;
}

export function dot(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let k = 0; k < a.length; k++) sum += (a[k] as number) * (b[k] as number);
  return sum;
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
  const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + hypot(1, theta));
  const c = 1 / hypot(1, t);
  const s = t * c;
  for (const matrix of [a, v])
    for (const row of matrix) {
      const x = row[p] as number;
      const y = row[q] as number;
      row[p] = c * x - s * y;
      row[q] = s * x + c * y;
    }
  const rowP = a[p] as number[];
  const rowQ = a[q] as number[];
  for (let k = 0; k < a.length; k++) {
    const x = rowP[k] as number;
    const y = rowQ[k] as number;
    rowP[k] = c * x - s * y;
    rowQ[k] = s * x + c * y;
  }
}
