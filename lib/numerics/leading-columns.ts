/**
 * The leading columns of a Cholesky factor where they are mostly zeros: those of a factor whose levels never meet, such
 * as seed parents, each of which meets few of the others' levels.
 *
 * Their products are added up column by column, over the entries that are not zero (George & Liu 1981, Computer Solution
 * of Large Sparse Positive Definite Systems, section 5.4). What is left out are zeros, and the rest is added in the same
 * order and the same four sums as `rowProduct` has: every digit is as without this file.
 */

import { continuedProduct } from './row-product.ts';

/** Fewer columns than this cost more to keep account of than their zeros save. */
const FEWEST = 24;

export interface LeadingColumns {
  /**
   * Divides a row's leading entries by their pivots, and begins its products with all rows above and with itself.
   *
   * @param from first entry of the row that may not be zero
   * @returns the first entry that is left to do
   */
  takeRow(matrix: Float64Array, factor: Float64Array, i: number, from: number): number;
  /** Product of the row last taken with row j from `start` to j, the leading columns among it. */
  rowProduct(factor: Float64Array, i: number, j: number, start: number): number;
}

/** The leading columns of a matrix whose leading block is diagonal; null where they are few. */
export function leadingColumns(matrix: Float64Array, n: number): LeadingColumns | null {
  const size = diagonalRows(matrix, n) & -4;
  if (size < FEWEST) return null;
  const height = n - size;
  // By column: its entries below the diagonal block that are not zero, and their rows.
  const count = new Int32Array(size);
  const rows = new Int32Array(size * height);
  const values = new Float64Array(size * height);
  const sums = new Float64Array(4 * n);
  const add = (column: number, row: number, value: number): void => {
    const begin = column * height;
    const end = begin + count[column]!;
    rows[end] = row;
    values[end] = value;
    count[column]! += 1;
    const quarter = column & 3;
    for (let e = begin; e <= end; e += 1) sums[4 * rows[e]! + quarter]! += value * values[e]!;
  };
  return {
    takeRow: (from, factor, i, begin) => {
      if (i < size) return begin;
      sums.fill(0, 0, 4 * i + 4);
      for (let k = begin; k < size; k += 1) {
        const entry = from[i * n + k]!;
        factor[i * n + k] = entry === 0 ? 0 : entry / factor[k * n + k]!;
        if (entry !== 0) add(k, i, factor[i * n + k]!);
      }
      return Math.max(begin, size);
    },
    rowProduct: (factor, i, j, start) => {
      const at = 4 * j;
      const length = j - start;
      const a = i * n + start;
      const b = j * n + start;
      return continuedProduct(
        sums[at]!,
        sums[at + 1]!,
        sums[at + 2]!,
        sums[at + 3]!,
        factor,
        a,
        factor,
        b,
        length,
      );
    },
  };
}

/** How many rows from the first have zeros before their diagonal. */
function diagonalRows(matrix: Float64Array, n: number): number {
  for (let i = 1; i < n; i += 1) {
    for (let j = 0; j < i; j += 1) if (matrix[i * n + j] !== 0) return i;
  }
  return n;
}
