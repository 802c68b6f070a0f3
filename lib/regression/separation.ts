/** Complete and quasi-complete separation: whether maximum likelihood is infinite, and along which columns. */

import { cholesky, solveCholesky } from '../numerics/linear-algebra.ts';
import { columnCoefficients, type OrthogonalBasis, orthogonalBasis } from './orthogonal-basis.ts';
import type { Counts } from './response.ts';

/** A cone of vectors z_i, `count` × p row by row, each of length 1; row `source[i]` of the design gave z_i. */
interface Cone {
  readonly p: number;
  readonly count: number;
  readonly vectors: Float64Array;
  readonly source: Int32Array;
}

// Vectors have length 1: an inner product below this is zero.
const zero = 1e-8;

function along(cone: Cone, i: number, direction: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < cone.p; k += 1) sum += cone.vectors[i * cone.p + k]! * direction[k]!;
  return sum;
}

function norm(vector: Float64Array): number {
  let sum = 0;
  for (const value of vector) sum += value * value;
  return Math.sqrt(sum);
}

/** Takes from `vector` its part along orthonormal `directions`, twice, for accuracy. */
function removeParts(vector: Float64Array, directions: readonly Float64Array[]): void {
  for (let pass = 0; pass < 2; pass += 1) {
    for (const direction of directions) {
      let sum = 0;
      for (let k = 0; k < vector.length; k += 1) sum += vector[k]! * direction[k]!;
      for (let k = 0; k < vector.length; k += 1) vector[k]! -= sum * direction[k]!;
    }
  }
}

/** Row i of a matrix of p columns, at length 1, less its part along `directions`; null where nothing is left. */
function unitRow(
  rows: Float64Array,
  p: number,
  i: number,
  directions: readonly Float64Array[],
): Float64Array | null {
  const vector = rows.slice(i * p, (i + 1) * p);
  const length = norm(vector);
  if (length === 0) return null;
  removeParts(vector, directions);
  const left = norm(vector);
  return left > zero * length ? vector.map((value) => value / left) : null;
}

/** Sign of each row: 1 successes only, -1 failures only, 0 both. */
function signs({ successes, trials }: Counts): Int8Array {
  return Int8Array.from(trials, (m, i) => (successes[i] === 0 ? -1 : successes[i] === m ? 1 : 0));
}

/** Orthonormal basis of the rows that have both outcomes: no separating direction may lean on them. */
function mixedDirections(basis: OrthogonalBasis, sign: Int8Array): readonly Float64Array[] {
  const directions: Float64Array[] = [];
  for (let i = 0; i < basis.m && directions.length < basis.p; i += 1) {
    if (sign[i] !== 0) continue;
    const vector = unitRow(basis.rows, basis.p, i, directions);
    if (vector !== null) directions.push(vector);
  }
  return directions;
}

/** The cone of the `active` rows with one outcome, signed so that a separating direction has no negative product. */
function coneOf(basis: OrthogonalBasis, sign: Int8Array, active: readonly number[]): Cone | null {
  const { p } = basis;
  const mixed = mixedDirections(basis, sign);
  if (mixed.length === p) return null;
  const vectors = new Float64Array(active.length * p);
  const source = new Int32Array(active.length);
  let count = 0;
  for (const i of active) {
    const vector = unitRow(basis.rows, p, i, mixed);
    if (vector === null) continue;
    for (let k = 0; k < p; k += 1) vectors[count * p + k] = sign[i]! * vector[k]!;
    source[count] = i;
    count += 1;
  }
  return { p, count, vectors, source };
}

/** Least-squares weights of the passive vectors: minimises |b + sum of weight · vector|; null where dependent. */
function passiveWeights(cone: Cone, passive: readonly number[], b: Float64Array): Float64Array | null {
  const size = passive.length;
  const gram = new Float64Array(size * size);
  const target = new Float64Array(size);
  passive.forEach((i, row) => {
    const vector = cone.vectors.subarray(i * cone.p, (i + 1) * cone.p);
    target[row] = -along(cone, i, b);
    for (let column = 0; column <= row; column += 1) {
      gram[row * size + column] = along(cone, passive[column]!, vector);
    }
  });
  const factor = cholesky(gram, size, gram);
  return factor === null ? null : solveCholesky(factor, size, target);
}

interface NonNegative {
  readonly passive: number[];
  readonly weights: number[];
}

/** Moves towards the least-squares weights until all are positive, dropping those that reach zero on the way. */
function settlePassive(cone: Cone, state: NonNegative, b: Float64Array): boolean {
  for (;;) {
    const target = passiveWeights(cone, state.passive, b);
    if (target === null) return false;
    let step = 1;
    target.forEach((value, k) => {
      if (value <= 0) step = Math.min(step, state.weights[k]! / (state.weights[k]! - value));
    });
    target.forEach((value, k) => {
      state.weights[k]! += step * (value - state.weights[k]!);
    });
    if (step === 1) return true;
    for (let k = state.passive.length - 1; k >= 0; k -= 1) {
      if (state.weights[k]! > 1e-14) continue;
      state.passive.splice(k, 1);
      state.weights.splice(k, 1);
    }
  }
}

function residualOf(cone: Cone, { passive, weights }: NonNegative, b: Float64Array): Float64Array {
  const residual = b.slice();
  passive.forEach((i, row) => {
    for (let k = 0; k < cone.p; k += 1) residual[k]! += weights[row]! * cone.vectors[i * cone.p + k]!;
  });
  return residual;
}

function leastProduct(cone: Cone, direction: Float64Array): { index: number; value: number } {
  let index = -1;
  let value = Infinity;
  for (let i = 0; i < cone.count; i += 1) {
    const product = along(cone, i, direction);
    if (product < value) [index, value] = [i, product];
  }
  return { index, value };
}

/**
 * A direction d of length 1 with z_i · d ≥ 0 for all i and > 0 for some; null where there is none.
 *
 * By Stiemke's lemma there is none exactly where some strictly positive weights give sum (1 + w_i) z_i = 0. So the
 * distance of -b, b = sum z_i, from the cone is minimised over w ≥ 0 (Lawson & Hanson's non-negative least squares,
 * which ends after finitely many steps): a zero residual r is the certificate of overlap, any other r separates,
 * since the conditions of the minimum are z_i · r ≥ 0, and b · r = |r|² > 0.
 */
function separatingDirection(cone: Cone): Float64Array | null {
  const b = new Float64Array(cone.p);
  for (let i = 0; i < cone.count; i += 1) {
    for (let k = 0; k < cone.p; k += 1) b[k]! += cone.vectors[i * cone.p + k]!;
  }
  const state: NonNegative = { passive: [], weights: [] };
  for (let steps = 0; steps < 1000 + 50 * cone.p; steps += 1) {
    const residual = residualOf(cone, state, b);
    const length = norm(residual);
    if (length <= 1e-12 * cone.count) return null;
    const direction = residual.map((value) => value / length);
    const least = leastProduct(cone, direction);
    if (least.value >= -zero) return direction;
    if (state.passive.includes(least.index)) return null;
    state.passive.push(least.index);
    state.weights.push(0);
    if (!settlePassive(cone, state, b)) return null;
  }
  return null;
}

interface Direction {
  /** Columns that the direction uses. */
  readonly columns: readonly number[];
  /** Rows of the design that it separates strictly. */
  readonly rows: ReadonlySet<number>;
}

/** A separating direction of the active rows that uses the given columns only. */
function directionOf(
  columns: readonly Float64Array[],
  counts: Counts,
  active: readonly number[],
  allowed: readonly number[],
): Direction | null {
  const basis = orthogonalBasis(
    allowed.map((j) => columns[j]!),
    counts.trials,
  );
  if ('column' in basis) return null;
  const cone = coneOf(basis, signs(counts), active);
  const direction = cone === null ? null : separatingDirection(cone);
  if (cone === null || direction === null) return null;
  const coefficients = columnCoefficients(basis, direction);
  const sizes = coefficients.map((value, k) => Math.abs(value) * norm(columns[allowed[k]!]!));
  const most = Math.max(...sizes);
  const rows = new Set<number>();
  for (let i = 0; i < cone.count; i += 1) {
    if (along(cone, i, direction) > 10 * zero) rows.add(cone.source[i]!);
  }
  return { columns: allowed.filter((_, k) => sizes[k]! > 1e-7 * most), rows };
}

/** Leaves out columns, the last first, as long as those left still separate. */
function withFewestColumns(
  columns: readonly Float64Array[],
  counts: Counts,
  active: readonly number[],
  start: Direction,
): Direction {
  let direction = start;
  for (const column of [...start.columns].reverse()) {
    if (!direction.columns.includes(column) || direction.columns.length === 1) continue;
    const fewer = directionOf(
      columns,
      counts,
      active,
      direction.columns.filter((j) => j !== column),
    );
    if (fewer !== null) direction = fewer;
  }
  return direction;
}

/**
 * Detection of separation in binary regression.
 *
 * Answers whether the maximum-likelihood estimate of a binomial regression (any of the links here) fails to exist,
 * and which columns run to infinity. Separating directions are found one after another, each cut down to the fewest
 * columns, until the rows that are left overlap.
 *
 * @param columns p linearly independent columns of m rows
 * @param counts successes and trials of the m rows
 * @returns indices of the columns in increasing order; none where the estimate exists
 * @source Albert & Anderson (1984) Biometrika 71, 1–10; Correia, Guimarães & Zylkin (2019) arXiv:1903.01633,
 *   section 2 (separation found one direction at a time)
 */
export function separatingColumns(columns: readonly Float64Array[], counts: Counts): readonly number[] {
  const found = new Set<number>();
  const sign = signs(counts);
  let active = [...sign.keys()].filter((i) => sign[i] !== 0);
  const all = [...columns.keys()];
  while (active.length > 0) {
    const direction = directionOf(columns, counts, active, all);
    if (direction === null || direction.rows.size === 0) break;
    const fewest = withFewestColumns(columns, counts, active, direction);
    for (const column of fewest.columns) found.add(column);
    active = active.filter((i) => !fewest.rows.has(i));
  }
  return [...found].sort((a, b) => a - b);
}
