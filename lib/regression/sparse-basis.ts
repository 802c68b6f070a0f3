/** A basis of columns that are mostly zeros, such as indicators of many levels: the columns themselves, at length 1. */

import { cholesky } from '../numerics/linear-algebra.ts';
import { type ColumnSource, widthOf } from './column-source.ts';
import { type OrthogonalBasis, type SparseRows, withRows } from './orthogonal-basis.ts';

// Below this many columns, or above this share of entries that are not zero, an orthogonal basis costs less.
const fewestColumns = 10;
const mostFilled = 0.25;
// Squared part of its own that a column must have, in its length: below it normal equations lose too many digits.
const smallestOwnPart = 1e-8;

function filledEntries(sources: readonly ColumnSource[]): number {
  let filled = 0;
  for (const source of sources) {
    const values = 'codes' in source ? source.codes : source.values;
    for (let i = 0; i < values.length; i += 1) if (values[i] !== 0) filled += 1;
  }
  return filled;
}

/** The entries that are not zero, row by row; `place[j]` is where column j of the sources stands. */
function rowsOf(sources: readonly ColumnSource[], place: Int32Array, m: number, filled: number): SparseRows {
  const start = new Int32Array(m + 1);
  const index = new Int32Array(filled);
  const value = new Float64Array(filled);
  let first = 0;
  const firsts = sources.map((source) => {
    first += widthOf(source);
    return first - widthOf(source);
  });
  let at = 0;
  for (let i = 0; i < m; i += 1) {
    for (let s = 0; s < sources.length; s += 1) {
      const source = sources[s]!;
      const labelled = 'codes' in source;
      const entry = labelled ? source.codes[i]! : source.values[i]!;
      if (entry === 0) continue;
      index[at] = place[firsts[s]! + (labelled ? entry - 1 : 0)]!;
      value[at] = labelled ? 1 : entry;
      at += 1;
    }
    start[i + 1] = at;
  }
  return { start, index, value };
}

/** Divides each column by its length under the weights; the lengths. */
function normalise({ start, index, value }: SparseRows, weights: Float64Array, p: number): Float64Array {
  const lengths = new Float64Array(p);
  for (let i = 0; i < weights.length; i += 1) {
    for (let e = start[i]!; e < start[i + 1]!; e += 1) {
      lengths[index[e]!]! += weights[i]! * value[e]! * value[e]!;
    }
  }
  for (let k = 0; k < p; k += 1) lengths[k] = Math.sqrt(lengths[k]!);
  for (let e = 0; e < value.length; e += 1) value[e]! /= lengths[index[e]!]!;
  return lengths;
}

/** Whether every column keeps enough of its own beside those before it. */
function wellConditioned(rows: SparseRows, weights: Float64Array, p: number): boolean {
  const gram = new Float64Array(p * p);
  addSparseProducts(rows, p, weights, gram);
  const factor = cholesky(gram, p, gram);
  if (factor === null) return false;
  for (let k = 0; k < p; k += 1) if (factor[k * (p + 1)]! ** 2 < smallestOwnPart) return false;
  return true;
}

/** Adds the weighted cross products of the rows to the lower triangle of `matrix`. */
export function addSparseProducts(
  { start, index, value }: SparseRows,
  p: number,
  weight: Float64Array,
  matrix: Float64Array,
): void {
  for (let i = 0; i < weight.length; i += 1) {
    const end = start[i + 1]!;
    for (let e = start[i]!; e < end; e += 1) {
      const scaled = weight[i]! * value[e]!;
      for (let f = start[i]!; f <= e; f += 1) {
        const j = index[e]!;
        const k = index[f]!;
        matrix[j > k ? j * p + k : k * p + j]! += scaled * value[f]!;
      }
    }
  }
}

function denseRows({ start, index, value }: SparseRows, m: number, p: number): Float64Array {
  const rows = new Float64Array(m * p);
  for (let i = 0; i < m; i += 1) {
    for (let e = start[i]!; e < start[i + 1]!; e += 1) rows[i * p + index[e]!] = value[e]!;
  }
  return rows;
}

/**
 * A basis of m rows that is as sparse as the columns: X = Q R with R the diagonal of the columns' lengths, so that Q
 * has columns of length 1 that need not be orthogonal.
 *
 * @param sources the columns
 * @param weights m positive row weights, the trials
 * @param order the columns in another order, as indices; in their own where left out
 * @returns null where the columns are few, mostly filled, or so nearly dependent that only an orthogonal basis will do
 */
export function sparseBasis(
  sources: readonly ColumnSource[],
  weights: Float64Array,
  order?: readonly number[],
): OrthogonalBasis | null {
  const p = sources.reduce((sum, source) => sum + widthOf(source), 0);
  const m = weights.length;
  if (p < fewestColumns) return null;
  const filled = filledEntries(sources);
  if (filled > mostFilled * m * p) return null;
  const place = Int32Array.from({ length: p }, (_, j) => j);
  order?.forEach((j, k) => {
    place[j] = k;
  });
  const sparse = rowsOf(sources, place, m, filled);
  const lengths = normalise(sparse, weights, p);
  if (lengths.includes(0) || !wellConditioned(sparse, weights, p)) return null;
  const triangle = new Float64Array(p * p);
  for (let k = 0; k < p; k += 1) triangle[k * (p + 1)] = lengths[k]!;
  return withRows({ m, p, triangle, entries: sparse }, () => denseRows(sparse, m, p));
}
