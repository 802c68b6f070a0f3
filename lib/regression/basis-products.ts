/** Sums over the rows of a basis: all that scoring does with it. */

import { solveLower } from '../numerics/linear-algebra.ts';
import { rowProduct } from '../numerics/row-product.ts';
import { addDenseProducts, denseLengths, piece } from './dense-products.ts';
import type { OrthogonalBasis, SparseRows } from './orthogonal-basis.ts';
import type { RowResponse } from './response.ts';
import { addSparseProducts } from './sparse-basis.ts';

/** Writes offset + Q gamma. */
export function predictRows(
  { m, p, entries }: OrthogonalBasis,
  offset: Float64Array,
  gamma: Float64Array,
  eta: Float64Array,
): void {
  eta.set(offset);
  if (!('start' in entries)) {
    for (let from = 0; from < m; from += piece) {
      const to = Math.min(m, from + piece);
      for (let k = 0; k < p; k += 3) addThree(eta, entries, gamma, k, from, to);
    }
    return;
  }
  const { start, index, value } = entries;
  for (let i = 0; i < m; i += 1) {
    let sum = eta[i]!;
    for (let e = start[i]!; e < start[i + 1]!; e += 1) sum += value[e]! * gamma[index[e]!]!;
    eta[i] = sum;
  }
}

/** Adds three columns at a time, the last one or two alone. */
function addThree(
  target: Float64Array,
  columns: readonly Float64Array[],
  gamma: Float64Array,
  k: number,
  from: number,
  to: number,
): void {
  const last = columns.length - 1;
  const a = columns[k]!;
  const b = columns[Math.min(k + 1, last)]!;
  const c = columns[Math.min(k + 2, last)]!;
  const byA = gamma[k]!;
  const byB = k + 1 <= last ? gamma[k + 1]! : 0;
  const byC = k + 2 <= last ? gamma[k + 2]! : 0;
  for (let i = from; i < to; i += 1) target[i]! += byA * a[i]! + byB * b[i]! + byC * c[i]!;
}

/** Q′x: the score by the coefficients, from that of each row. */
export function scoreOf({ m, p, entries }: OrthogonalBasis, x: Float64Array): Float64Array {
  if (!('start' in entries)) return Float64Array.from(entries, (column) => rowProduct(x, 0, column, 0, m));
  const { start, index, value } = entries;
  const score = new Float64Array(p);
  for (let i = 0; i < m; i += 1) {
    for (let e = start[i]!; e < start[i + 1]!; e += 1) score[index[e]!]! += x[i]! * value[e]!;
  }
  return score;
}

/** Adds the weighted cross products of the rows to the lower triangle of `matrix`, and the scores to `score`. */
export function addProducts(
  basis: OrthogonalBasis,
  { weight, score: rowScore }: Pick<RowResponse, 'weight' | 'score'>,
  matrix: Float64Array,
  score: Float64Array,
): void {
  const { m, p, entries } = basis;
  if (!('start' in entries)) {
    addDenseProducts(entries, m, { weight, score: rowScore }, matrix, score);
    return;
  }
  const added = scoreOf(basis, rowScore);
  for (let k = 0; k < p; k += 1) score[k]! += added[k]!;
  addSparseProducts(entries, p, weight, matrix);
}

/** Writes q′ A⁻¹ q for each row q of Q, from the Cholesky factor of A. */
export function squaredLengths(
  { m, p, entries }: OrthogonalBasis,
  factor: Float64Array,
  target: Float64Array,
): void {
  if ('start' in entries) sparseLengths(entries, p, factor, target);
  else denseLengths(entries, m, factor, target);
}

function sparseLengths(
  { start, index, value }: SparseRows,
  p: number,
  factor: Float64Array,
  target: Float64Array,
): void {
  const row = new Float64Array(p);
  for (let i = 0; i < target.length; i += 1) {
    row.fill(0);
    for (let e = start[i]!; e < start[i + 1]!; e += 1) row[index[e]!] = value[e]!;
    solveLower(factor, p, row);
    let sum = 0;
    for (let k = 0; k < p; k += 1) sum += row[k]! * row[k]!;
    target[i] = sum;
  }
}
