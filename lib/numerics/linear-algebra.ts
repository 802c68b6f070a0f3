/**
 * Dense symmetric positive definite systems on typed arrays.
 *
 * Matrices are n × n, row by row, in one Float64Array; a Cholesky factor L is lower triangular with A = L L′, the
 * part above its diagonal zero. Source: Golub & Van Loan (2013), Matrix Computations, algorithms 4.2.1 and 3.1.
 */

import { leadingColumns } from './leading-columns.ts';
import { rowProduct } from './row-product.ts';

/**
 * Cholesky factor of a symmetric positive definite matrix.
 *
 * @param matrix n × n, only its lower triangle is read
 * @param n number of rows
 * @param target where the factor goes, zero above its diagonal; may be `matrix` itself; a new array where left out
 * @returns the factor, or null where the matrix is not positive definite to working precision
 */
export function cholesky(matrix: Float64Array, n: number, target?: Float64Array): Float64Array | null {
  const factor = target ?? new Float64Array(n * n);
  const lead = leadingColumns(matrix, n);
  // Zeros that begin a row of the matrix begin the factor's row too, and need no work (George & Liu 1981, Computer
  // Solution of Large Sparse Positive Definite Systems, chapter 4). Fours, for products add up by fours.
  const first = new Int32Array(n);
  for (let i = 0; i < n; i += 1) {
    const rowI = i * n;
    let from = 0;
    while (from < i && matrix[rowI + from] === 0) factor[rowI + from++] = 0;
    from &= -4;
    first[i] = from;
    if (lead !== null) from = lead.takeRow(matrix, factor, i, from);
    for (let j = from; j <= i; j += 1) {
      const rowJ = j * n;
      const start = Math.max(from, first[j]!);
      const product =
        lead === null
          ? rowProduct(factor, rowI + start, factor, rowJ + start, j - start)
          : lead.rowProduct(factor, i, j, start);
      const sum = matrix[rowI + j]! - product;
      if (j < i) {
        factor[rowI + j] = sum / factor[rowJ + j]!;
      } else {
        // A pivot lost to cancellation is a singular matrix, not a small one.
        if (!(sum > 1e-14 * Math.abs(matrix[rowI + i]!))) return null;
        factor[rowI + i] = Math.sqrt(sum);
      }
    }
    if (factor === matrix) factor.fill(0, rowI + i + 1, rowI + n);
  }
  return factor;
}

/** Solves L x = b in place (forward substitution). */
export function solveLower(factor: Float64Array, n: number, x: Float64Array): Float64Array {
  for (let i = 0; i < n; i += 1) {
    const row = i * n;
    x[i] = (x[i]! - rowProduct(factor, row, x, 0, i)) / factor[row + i]!;
  }
  return x;
}

/**
 * Solves L′ x = b in place (back substitution, by rows of L so that memory is read in order, four rows at a time so that
 * entries of x are read and written once for four).
 *
 * @param leading order of the leading block of L that is solved for, all of L by default
 */
export function solveUpper(factor: Float64Array, n: number, x: Float64Array, leading = n): Float64Array {
  let i = leading - 1;
  for (; i >= 3; i -= 4) {
    const r3 = i * n;
    const r2 = r3 - n;
    const r1 = r2 - n;
    const r0 = r1 - n;
    const x3 = x[i]! / factor[r3 + i]!;
    const x2 = (x[i - 1]! - factor[r3 + i - 1]! * x3) / factor[r2 + i - 1]!;
    const x1 = (x[i - 2]! - factor[r3 + i - 2]! * x3 - factor[r2 + i - 2]! * x2) / factor[r1 + i - 2]!;
    const left = x[i - 3]! - factor[r3 + i - 3]! * x3 - factor[r2 + i - 3]! * x2;
    const x0 = (left - factor[r1 + i - 3]! * x1) / factor[r0 + i - 3]!;
    for (let k = 0; k < i - 3; k += 1) {
      x[k] =
        x[k]! - factor[r3 + k]! * x3 - factor[r2 + k]! * x2 - factor[r1 + k]! * x1 - factor[r0 + k]! * x0;
    }
    x[i] = x3;
    x[i - 1] = x2;
    x[i - 2] = x1;
    x[i - 3] = x0;
  }
  for (; i >= 0; i -= 1) {
    const row = i * n;
    const value = x[i]! / factor[row + i]!;
    x[i] = value;
    for (let k = 0; k < i; k += 1) x[k]! -= factor[row + k]! * value;
  }
  return x;
}

/** Solves A x = b given the Cholesky factor of A; `b` is left as it is. */
export function solveCholesky(factor: Float64Array, n: number, b: ArrayLike<number>): Float64Array {
  return solveUpper(factor, n, solveLower(factor, n, Float64Array.from(b)));
}

/** Inverse of A from its Cholesky factor, n × n, symmetric. */
export function invertCholesky(factor: Float64Array, n: number): Float64Array {
  const inverse = new Float64Array(n * n);
  const column = new Float64Array(n);
  for (let j = 0; j < n; j += 1) {
    column.fill(0);
    column[j] = 1;
    solveUpper(factor, n, solveLower(factor, n, column));
    for (let i = 0; i < n; i += 1) inverse[i * n + j] = column[i]!;
  }
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; j < i; j += 1) {
      const mean = (inverse[i * n + j]! + inverse[j * n + i]!) / 2;
      inverse[i * n + j] = mean;
      inverse[j * n + i] = mean;
    }
  }
  return inverse;
}

/** Logarithm of the determinant of A from its Cholesky factor. */
export function logDeterminant(factor: Float64Array, n: number): number {
  let sum = 0;
  for (let i = 0; i < n; i += 1) sum += Math.log(factor[i * n + i]!);
  return 2 * sum;
}
