/** Sums over the rows of a basis: all that scoring does with it. */

import { solveLower } from '../numerics/linear-algebra.ts';
import type { OrthogonalBasis, SparseRows } from './orthogonal-basis.ts';
import type { RowResponse } from './response.ts';
import { addSparseProducts } from './sparse-basis.ts';

/** Columns are taken in pieces of so many rows, which stay in the processor's nearest memory. */
const piece = 512;

type Columns = readonly Float64Array[];

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
      for (let k = 0; k < p; k += 1) addMultiple(eta, entries[k]!, gamma[k]!, from, to);
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

function addMultiple(
  target: Float64Array,
  column: Float64Array,
  factor: number,
  from: number,
  to: number,
): void {
  for (let i = from; i < to; i += 1) target[i]! += factor * column[i]!;
}

/** Q′x: the score by the coefficients, from that of each row. */
export function scoreOf({ m, p, entries }: OrthogonalBasis, x: Float64Array): Float64Array {
  if (!('start' in entries)) return Float64Array.from(entries, (column) => product(x, column, 0, m));
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
    addDenseProducts(entries, m, weight, rowScore, matrix, score);
    return;
  }
  const added = scoreOf(basis, rowScore);
  for (let k = 0; k < p; k += 1) score[k]! += added[k]!;
  addSparseProducts(entries, p, weight, matrix);
}

function addDenseProducts(
  columns: Columns,
  m: number,
  weight: Float64Array,
  rowScore: Float64Array,
  matrix: Float64Array,
  score: Float64Array,
): void {
  const p = columns.length;
  const weighted = new Float64Array(piece);
  for (let from = 0; from < m; from += piece) {
    const length = Math.min(m - from, piece);
    for (let j = 0; j < p; j += 1) {
      const column = columns[j]!;
      let sum = 0;
      for (let i = 0; i < length; i += 1) {
        const x = column[from + i]!;
        sum += rowScore[from + i]! * x;
        weighted[i] = weight[from + i]! * x;
      }
      score[j]! += sum;
      addRowOfProducts(weighted, columns, from, length, j, matrix);
    }
  }
}

/** Products of one weighted column with columns 0 to j: three at a time, so that it is read a third as often. */
function addRowOfProducts(
  weighted: Float64Array,
  columns: Columns,
  from: number,
  length: number,
  j: number,
  matrix: Float64Array,
): void {
  const row = j * columns.length;
  let k = 0;
  for (; k + 2 <= j; k += 3) {
    const a = columns[k]!;
    const b = columns[k + 1]!;
    const c = columns[k + 2]!;
    let s0 = 0;
    let s1 = 0;
    let s2 = 0;
    for (let i = 0; i < length; i += 1) {
      const x = weighted[i]!;
      s0 += x * a[from + i]!;
      s1 += x * b[from + i]!;
      s2 += x * c[from + i]!;
    }
    matrix[row + k]! += s0;
    matrix[row + k + 1]! += s1;
    matrix[row + k + 2]! += s2;
  }
  for (; k <= j; k += 1) matrix[row + k]! += product(weighted, columns[k]!, from, length);
}

/** Four sums at a time, which the processor can overlap. */
function product(piece: Float64Array, column: Float64Array, from: number, length: number): number {
  let s0 = 0;
  let s1 = 0;
  let s2 = 0;
  let s3 = 0;
  let i = 0;
  for (; i + 3 < length; i += 4) {
    s0 += piece[i]! * column[from + i]!;
    s1 += piece[i + 1]! * column[from + i + 1]!;
    s2 += piece[i + 2]! * column[from + i + 2]!;
    s3 += piece[i + 3]! * column[from + i + 3]!;
  }
  for (; i < length; i += 1) s0 += piece[i]! * column[from + i]!;
  return s0 + s1 + (s2 + s3);
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

/** Squared lengths of L⁻¹ q for many rows at once, one entry of all of them after the other. */
function denseLengths(columns: Columns, m: number, factor: Float64Array, target: Float64Array): void {
  const p = columns.length;
  const inverse = invertLower(factor, p);
  const entry = new Float64Array(piece);
  target.fill(0, 0, m);
  for (let from = 0; from < m; from += piece) {
    const length = Math.min(m - from, piece);
    for (let j = 0; j < p; j += 1) {
      addSquares(entry, columns, inverse, j, from, length, target);
    }
  }
}

/**
 * Adds the squares of y_i = sum over k ≤ j of inverse_jk q_ik for a piece of rows. Three columns at a time, so that y
 * is written a third as often, and not at all where they are the last.
 */
function addSquares(
  y: Float64Array,
  columns: Columns,
  inverse: Float64Array,
  j: number,
  from: number,
  length: number,
  target: Float64Array,
): void {
  const row = j * columns.length;
  y.fill(0, 0, length);
  for (let k = 0; k <= j; k += 3) {
    const a = columns[k]!;
    const b = columns[Math.min(k + 1, j)]!;
    const c = columns[Math.min(k + 2, j)]!;
    const byA = inverse[row + k]!;
    const byB = k + 1 <= j ? inverse[row + k + 1]! : 0;
    const byC = k + 2 <= j ? inverse[row + k + 2]! : 0;
    if (k + 2 < j) {
      for (let i = 0; i < length; i += 1) {
        y[i]! += byA * a[from + i]! + byB * b[from + i]! + byC * c[from + i]!;
      }
      continue;
    }
    for (let i = 0; i < length; i += 1) {
      const whole = y[i]! + byA * a[from + i]! + byB * b[from + i]! + byC * c[from + i]!;
      target[from + i]! += whole * whole;
    }
  }
}

/** L⁻¹ of a lower triangle, row by row. */
function invertLower(factor: Float64Array, p: number): Float64Array {
  const inverse = new Float64Array(p * p);
  for (let j = 0; j < p; j += 1) {
    const pivot = 1 / factor[j * (p + 1)]!;
    for (let k = 0; k < j; k += 1) {
      let sum = 0;
      for (let l = k; l < j; l += 1) sum += factor[j * p + l]! * inverse[l * p + k]!;
      inverse[j * p + k] = -sum * pivot;
    }
    inverse[j * (p + 1)] = pivot;
  }
  return inverse;
}
