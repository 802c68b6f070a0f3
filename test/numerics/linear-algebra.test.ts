import { describe, expect, it } from 'vitest';
import {
  cholesky,
  invertCholesky,
  logDeterminant,
  solveCholesky,
  solveLower,
  solveUpper,
} from '../../lib/numerics/linear-algebra.ts';

// Whole numbers throughout: L L′ = A by hand, and every quotient is exact.
const A = Float64Array.of(4, 12, -16, 12, 37, -43, -16, -43, 98);
const L = Float64Array.of(2, 0, 0, 6, 1, 0, -8, 5, 3);

function expectClose(actual: ArrayLike<number>, expected: readonly number[], relative: number): void {
  expect(actual.length).toBe(expected.length);
  const size = Math.max(...expected.map(Math.abs));
  expected.forEach((value, k) => {
    expect(Math.abs(actual[k]! - value)).toBeLessThanOrEqual(relative * size);
  });
}

describe('cholesky', () => {
  it('finds the factor of a matrix of whole numbers exactly', () => {
    expect(cholesky(A, 3)).toEqual(L);
  });

  it('finds the factor of a matrix whose rows begin with zeros, over itself and apart', () => {
    // L L′ = A by hand, in whole numbers: eight rows, of which the last two are full and the others diagonal.
    const n = 8;
    const factor = new Float64Array(n * n);
    for (let i = 0; i < n; i += 1) {
      for (let j = 0; j < i; j += 1) factor[i * n + j] = i < 6 ? 0 : ((i * j) % 5) - 2;
      factor[i * n + i] = 2 + (i % 3);
    }
    const matrix = new Float64Array(n * n);
    for (let i = 0; i < n; i += 1) {
      for (let j = 0; j < n; j += 1) {
        for (let k = 0; k < n; k += 1) matrix[i * n + j]! += factor[i * n + k]! * factor[j * n + k]!;
      }
    }
    expect(cholesky(matrix, n)).toEqual(factor);
    expect(cholesky(matrix, n, matrix)).toEqual(factor);
  });

  it('reads the lower triangle only', () => {
    expect(cholesky(Float64Array.of(4, 99, 99, 12, 37, 99, -16, -43, 98), 3)).toEqual(L);
  });

  it('writes over the matrix itself where asked, with zeros above the diagonal', () => {
    const matrix = A.slice();
    expect(cholesky(matrix, 3, matrix)).toBe(matrix);
    expect(matrix).toEqual(L);
  });

  it('leaves the matrix as it is otherwise', () => {
    const matrix = A.slice();
    cholesky(matrix, 3);
    expect(matrix).toEqual(A);
  });

  it.each([
    ['singular', [1, 2, 2, 4]],
    ['indefinite', [1, 2, 2, 1]],
    ['not a number', [Number.NaN, 0, 0, 1]],
    ['singular but for the last digit', [1, 1, 1, 1 + 2 ** -52]],
  ])('has no factor for a matrix that is %s', (_, entries) => {
    expect(cholesky(Float64Array.from(entries), 2)).toBeNull();
  });
});

describe('solving', () => {
  // A x = b with x = (1, 2, 3) by hand.
  const b = [4 + 24 - 48, 12 + 74 - 129, -16 - 86 + 294];

  it('solves a system and leaves its right side as it is', () => {
    expectClose(solveCholesky(L, 3, b), [1, 2, 3], 1e-13);
    expect(b).toEqual([-20, -43, 192]);
  });

  it('solves the two triangular halves', () => {
    // L y = b: y = (-10, 17, 9); L′ x = (2, 7, 9): x = (1, -8, 3).
    expect(solveLower(L, 3, Float64Array.from(b))).toEqual(Float64Array.of(-10, 17, 9));
    expect(solveUpper(L, 3, Float64Array.of(2 - 48 - 24, -8 + 15, 9))).toEqual(Float64Array.of(1, -8, 3));
  });

  it.each([1, 3, 4, 7, 8, 11])('solves L′ x = b exactly in whole numbers, %i rows of eleven', (leading) => {
    const n = 11;
    const factor = new Float64Array(n * n);
    for (let i = 0; i < n; i += 1) {
      for (let j = 0; j < i; j += 1) factor[i * n + j] = ((i * j) % 7) - 3;
      factor[i * n + i] = 1 + (i % 3);
    }
    const x = Float64Array.from({ length: n }, (_, k) => (k % 5) - 2);
    const right = x.slice();
    for (let k = 0; k < leading; k += 1) {
      right[k] = 0;
      for (let i = k; i < leading; i += 1) right[k]! += factor[i * n + k]! * x[i]!;
    }
    expect(solveUpper(factor, n, right, leading)).toEqual(x);
  });
});

describe('invertCholesky', () => {
  it('finds the inverse that cofactors give', () => {
    // det A = (2 × 1 × 3)² = 36; cofactors by hand.
    const inverse = [1777, -488, 76, -488, 136, -20, 76, -20, 4].map((cofactor) => cofactor / 36);
    expectClose(invertCholesky(L, 3), inverse, 1e-13);
  });

  it('finds the whole-number inverse of the 5 × 5 Hilbert matrix to what its condition leaves', () => {
    // Condition number 4.8e5 (Higham 2002, Accuracy and Stability, table 28.1): 1e-10 is 5e5 rounding errors.
    const hilbert = Float64Array.from({ length: 25 }, (_, k) => 1 / (Math.floor(k / 5) + (k % 5) + 1));
    // R 4.2: round(solve(1 / outer(1:5, 1:5, function(i, j) i + j - 1))); exact by Choi (1983), Am. Math. Monthly 90:301.
    const inverse = [
      [25, -300, 1050, -1400, 630],
      [-300, 4800, -18900, 26880, -12600],
      [1050, -18900, 79380, -117600, 56700],
      [-1400, 26880, -117600, 179200, -88200],
      [630, -12600, 56700, -88200, 44100],
    ].flat();
    const found = invertCholesky(cholesky(hilbert, 5)!, 5);
    expectClose(found, inverse, 1e-10);
    for (let i = 0; i < 5; i += 1) {
      for (let j = 0; j < i; j += 1) expect(found[i * 5 + j]).toBe(found[j * 5 + i]);
    }
  });
});

describe('logDeterminant', () => {
  it('is the log of the determinant', () => {
    expect(logDeterminant(L, 3)).toBeCloseTo(Math.log(36), 14);
  });

  it('does not overflow where the determinant would', () => {
    const factor = new Float64Array(100);
    for (let i = 0; i < 10; i += 1) factor[i * 10 + i] = 1e100;
    expect(logDeterminant(factor, 10)).toBeCloseTo(2000 * Math.LN10, 9);
  });
});
