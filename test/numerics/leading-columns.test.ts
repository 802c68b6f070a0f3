import { describe, expect, it } from 'vitest';
import { leadingColumns } from '../../lib/numerics/leading-columns.ts';
import { cholesky } from '../../lib/numerics/linear-algebra.ts';
import { randomStream } from '../../lib/numerics/random.ts';

/** A matrix whose first rows are diagonal, its others partly zeros; the diagonal outweighs each row. */
function withDiagonalLead(n: number, lead: number, filled: number): Float64Array {
  const random = randomStream(n);
  const matrix = new Float64Array(n * n);
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; j < i; j += 1) {
      if (i >= lead && random.uniform() < filled) matrix[i * n + j] = random.normal();
    }
    matrix[i * n + i] = 3 * n;
  }
  return matrix;
}

/** The textbook's algorithm (Golub & Van Loan 2013, 4.2.1), which adds up in one go. */
function slowCholesky(matrix: Float64Array, n: number): Float64Array {
  const factor = new Float64Array(n * n);
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      let sum = matrix[i * n + j]!;
      for (let k = 0; k < j; k += 1) sum -= factor[i * n + k]! * factor[j * n + k]!;
      factor[i * n + j] = i === j ? Math.sqrt(sum) : sum / factor[j * n + j]!;
    }
  }
  return factor;
}

/** The factor as it is where zeros are no special case: in fours from the first column on. */
function factorInFours(matrix: Float64Array, n: number): Float64Array {
  const factor = new Float64Array(n * n);
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      const sums = [0, 0, 0, 0];
      for (let k = 0; k < j; k += 1) {
        const quarter = k < (j & -4) ? k & 3 : 0;
        sums[quarter]! += factor[i * n + k]! * factor[j * n + k]!;
      }
      const sum = matrix[i * n + j]! - (sums[0]! + sums[1]! + (sums[2]! + sums[3]!));
      factor[i * n + j] = i === j ? Math.sqrt(sum) : sum / factor[j * n + j]!;
    }
  }
  return factor;
}

describe('leading columns that are mostly zeros', () => {
  it.each([
    [60, 40, 0.3],
    [61, 41, 0.1],
    [70, 27, 0.8],
    [48, 48, 0],
    [50, 49, 1],
  ])('give the factor of the textbook, %i rows of which %i are diagonal', (n, lead, filled) => {
    const matrix = withDiagonalLead(n, lead, filled);
    expect(leadingColumns(matrix, n)).not.toBeNull();
    const slow = slowCholesky(matrix, n);
    cholesky(matrix, n)!.forEach((value, k) => {
      expect(Math.abs(value - slow[k]!)).toBeLessThanOrEqual(1e-12 * n);
    });
  });

  it('change no digit, apart and over the matrix itself', () => {
    const n = 83;
    const matrix = withDiagonalLead(n, 37, 0.35);
    const plain = factorInFours(matrix, n);
    expect(cholesky(matrix, n)).toEqual(plain);
    expect(cholesky(matrix, n, matrix)).toEqual(plain);
  });

  it('are not kept account of where they are few', () => {
    expect(leadingColumns(withDiagonalLead(40, 23, 0.5), 40)).toBeNull();
  });

  it('find a matrix that is not positive definite as any other does', () => {
    const n = 60;
    const matrix = withDiagonalLead(n, 40, 0.3);
    matrix[n * n - 1] = 0;
    expect(cholesky(matrix, n)).toBeNull();
  });
});
