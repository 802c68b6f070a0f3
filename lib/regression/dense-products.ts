/** Weighted cross products and squared lengths of a basis of dense columns: most of the time of a fit of many rows. */

import { rowProduct } from '../numerics/row-product.ts';
import type { RowResponse } from './response.ts';

/** Columns are taken in pieces of so many rows, which stay in the processor's nearest memory. */
export const piece = 512;

type Columns = readonly Float64Array[];

/** Adds the weighted cross products of m rows to the lower triangle of `matrix`, and the scores to `score`. */
export function addDenseProducts(
  columns: Columns,
  m: number,
  { weight, score: rowScore }: Pick<RowResponse, 'weight' | 'score'>,
  matrix: Float64Array,
  score: Float64Array,
): void {
  const p = columns.length;
  const first = new Float64Array(piece);
  const second = new Float64Array(piece);
  for (let from = 0; from < m; from += piece) {
    const length = Math.min(m - from, piece);
    for (let j = 0; j < p; j += 2) {
      score[j]! += weigh(columns[j]!, weight, rowScore, from, length, first);
      if (j + 1 === p) {
        for (let k = 0; k <= j; k += 1) matrix[j * p + k]! += rowProduct(first, 0, columns[k]!, from, length);
        break;
      }
      score[j + 1]! += weigh(columns[j + 1]!, weight, rowScore, from, length, second);
      addTwoRows(first, second, columns, from, length, j, matrix);
    }
  }
}

/** Writes a piece of a column times the weights; its product with the row scores. */
function weigh(
  column: Float64Array,
  weight: Float64Array,
  rowScore: Float64Array,
  from: number,
  length: number,
  target: Float64Array,
): number {
  let sum = 0;
  for (let i = 0; i < length; i += 1) {
    const x = column[from + i]!;
    sum += rowScore[from + i]! * x;
    target[i] = weight[from + i]! * x;
  }
  return sum;
}

/**
 * Products of the weighted columns j and j + 1 with those up to each: two by three at a time, so that every entry read
 * is used two or three times over.
 */
function addTwoRows(
  first: Float64Array,
  second: Float64Array,
  columns: Columns,
  from: number,
  length: number,
  j: number,
  matrix: Float64Array,
): void {
  const p = columns.length;
  const row = j * p;
  let k = 0;
  for (; k + 2 <= j; k += 3) {
    const a = columns[k]!;
    const b = columns[k + 1]!;
    const c = columns[k + 2]!;
    let a0 = 0;
    let b0 = 0;
    let c0 = 0;
    let a1 = 0;
    let b1 = 0;
    let c1 = 0;
    for (let i = 0; i < length; i += 1) {
      const x = first[i]!;
      const y = second[i]!;
      const atA = a[from + i]!;
      const atB = b[from + i]!;
      const atC = c[from + i]!;
      a0 += x * atA;
      b0 += x * atB;
      c0 += x * atC;
      a1 += y * atA;
      b1 += y * atB;
      c1 += y * atC;
    }
    matrix[row + k]! += a0;
    matrix[row + k + 1]! += b0;
    matrix[row + k + 2]! += c0;
    matrix[row + p + k]! += a1;
    matrix[row + p + k + 1]! += b1;
    matrix[row + p + k + 2]! += c1;
  }
  for (; k <= j; k += 1) {
    const a = columns[k]!;
    let s0 = 0;
    let s1 = 0;
    for (let i = 0; i < length; i += 1) {
      const x = a[from + i]!;
      s0 += first[i]! * x;
      s1 += second[i]! * x;
    }
    matrix[row + k]! += s0;
    matrix[row + p + k]! += s1;
  }
  matrix[row + p + j + 1]! += rowProduct(second, 0, columns[j + 1]!, from, length);
}

/**
 * Writes q′ A⁻¹ q, A = L L′, of each of m rows q: the squared lengths of L⁻¹ q, two entries of all of them after the
 * others.
 */
export function denseLengths(columns: Columns, m: number, factor: Float64Array, target: Float64Array): void {
  const p = columns.length;
  const inverse = invertLower(factor, p);
  const room = [new Float64Array(piece), new Float64Array(piece)] as const;
  target.fill(0, 0, m);
  for (let from = 0; from < m; from += piece) {
    const length = Math.min(m - from, piece);
    let j = 0;
    for (; j + 1 < p; j += 2) addSquares(room, columns, inverse, j, from, length, target);
    if (j < p) addLastSquares(room[0], columns, inverse, from, length, target);
  }
}

/**
 * Adds the squares of sum over k ≤ j of inverse_jk q_ik, and of the same of j + 1, for a piece of rows. Three columns at
 * a time for both, so that these are read a half, and the sums written a third as often, not at all where they are the
 * last.
 */
function addSquares(
  [first, second]: readonly [Float64Array, Float64Array],
  columns: Columns,
  inverse: Float64Array,
  j: number,
  from: number,
  length: number,
  target: Float64Array,
): void {
  const p = columns.length;
  const row = j * p;
  first.fill(0, 0, length);
  second.fill(0, 0, length);
  for (let k = 0; k <= j + 1; k += 3) {
    const a = columns[k]!;
    const b = columns[Math.min(k + 1, j + 1)]!;
    const c = columns[Math.min(k + 2, j + 1)]!;
    const a0 = inverse[row + k]!;
    const a1 = inverse[row + p + k]!;
    const b0 = k + 1 <= j ? inverse[row + k + 1]! : 0;
    const b1 = k + 1 <= j + 1 ? inverse[row + p + k + 1]! : 0;
    const c0 = k + 2 <= j ? inverse[row + k + 2]! : 0;
    const c1 = k + 2 <= j + 1 ? inverse[row + p + k + 2]! : 0;
    const last = k + 2 >= j + 1;
    for (let i = 0; i < length; i += 1) {
      const atA = a[from + i]!;
      const atB = b[from + i]!;
      const atC = c[from + i]!;
      const x = first[i]! + a0 * atA + b0 * atB + c0 * atC;
      const y = second[i]! + a1 * atA + b1 * atB + c1 * atC;
      if (last) target[from + i]! += x * x + y * y;
      else {
        first[i] = x;
        second[i] = y;
      }
    }
  }
}

/** The same of the last entry alone, where there is an odd number of columns. */
function addLastSquares(
  y: Float64Array,
  columns: Columns,
  inverse: Float64Array,
  from: number,
  length: number,
  target: Float64Array,
): void {
  const p = columns.length;
  y.fill(0, 0, length);
  for (let k = 0; k < p; k += 1) {
    const column = columns[k]!;
    const factor = inverse[(p - 1) * p + k]!;
    for (let i = 0; i < length; i += 1) y[i]! += factor * column[from + i]!;
  }
  for (let i = 0; i < length; i += 1) target[from + i]! += y[i]! * y[i]!;
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
