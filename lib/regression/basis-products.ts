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
      for (let k = 0; k <= j; k += 1) matrix[j * p + k]! += product(weighted, columns[k]!, from, length);
    }
  }
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

/** Forward substitution for many rows at once, column by column. */
function denseLengths(columns: Columns, m: number, factor: Float64Array, target: Float64Array): void {
  const p = columns.length;
  const solved = Array.from({ length: p }, () => new Float64Array(piece));
  for (let from = 0; from < m; from += piece) {
    const length = Math.min(m - from, piece);
    for (let j = 0; j < p; j += 1) {
      const own = solved[j]!;
      const pivot = 1 / factor[j * (p + 1)]!;
      own.set(columns[j]!.subarray(from, from + length));
      for (let k = 0; k < j; k += 1) addMultiple(own, solved[k]!, -factor[j * p + k]!, 0, length);
      for (let i = 0; i < length; i += 1) own[i]! *= pivot;
    }
    for (let i = 0; i < length; i += 1) {
      let sum = 0;
      for (let k = 0; k < p; k += 1) sum += solved[k]![i]! * solved[k]![i]!;
      target[from + i] = sum;
    }
  }
}
