/**
 * Dense symmetric positive definite systems on typed arrays.
 *
 * Matrices are n × n, row by row, in one Float64Array; a Cholesky factor L is lower triangular with A = L L′, the
 * part above its diagonal zero. Source: Golub & Van Loan (2013), Matrix Computations, algorithms 4.2.1 and 3.1.
 */

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
  // Zeros that begin a row of the matrix begin the factor's row too, and need no work (George & Liu 1981, Computer
  // Solution of Large Sparse Positive Definite Systems, chapter 4). Fours, for `rowProduct` adds up by fours.
  const first = new Int32Array(n);
  for (let i = 0; i < n; i += 1) {
    const rowI = i * n;
    let from = 0;
    while (from < i && matrix[rowI + from] === 0) factor[rowI + from++] = 0;
    from &= -4;
    first[i] = from;
    for (let j = from; j <= i; j += 1) {
      const rowJ = j * n;
      const start = Math.max(from, first[j]!);
      const sum = matrix[rowI + j]! - rowProduct(factor, rowI + start, factor, rowJ + start, j - start);
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

/** Product of `length` entries of two arrays; four sums at a time, which the processor can overlap. */
export function rowProduct(
  a: Float64Array,
  from: number,
  b: Float64Array,
  other: number,
  length: number,
): number {
  let s0 = 0;
  let s1 = 0;
  let s2 = 0;
  let s3 = 0;
  let k = 0;
  for (; k + 3 < length; k += 4) {
    s0 += a[from + k]! * b[other + k]!;
    s1 += a[from + k + 1]! * b[other + k + 1]!;
    s2 += a[from + k + 2]! * b[other + k + 2]!;
    s3 += a[from + k + 3]! * b[other + k + 3]!;
  }
  for (; k < length; k += 1) s0 += a[from + k]! * b[other + k]!;
  return s0 + s1 + (s2 + s3);
}

/** Solves L x = b in place (forward substitution). */
export function solveLower(factor: Float64Array, n: number, x: Float64Array): Float64Array {
  for (let i = 0; i < n; i += 1) {
    const row = i * n;
    x[i] = (x[i]! - rowProduct(factor, row, x, 0, i)) / factor[row + i]!;
  }
  return x;
}

/** Solves L′ x = b in place (back substitution, by rows of L so that memory is read in order). */
export function solveUpper(factor: Float64Array, n: number, x: Float64Array): Float64Array {
  for (let i = n - 1; i >= 0; i -= 1) {
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
