/** The cone of directions along which a binomial likelihood never falls. */

import { cholesky, solveCholesky } from '../numerics/linear-algebra.ts';
import type { OrthogonalBasis } from './orthogonal-basis.ts';
import type { Counts } from './response.ts';

/**
 * Rows of one outcome as vectors z_i, signed so that the likelihood never falls along d where all z_i · d ≥ 0.
 * `count` × p row by row, each of length 1; row `source[i]` of the design gave z_i.
 */
export interface OutcomeCone {
  readonly p: number;
  /** Orthonormal basis of the rows with both outcomes: d must be orthogonal to them. */
  readonly mixed: readonly Float64Array[];
  readonly count: number;
  readonly vectors: Float64Array;
  readonly source: Int32Array;
}

// Vectors have length 1: an inner product below this is zero.
export const zeroProduct = 1e-8;

/** Inner product of vector i with a direction. */
export function along(cone: OutcomeCone, i: number, direction: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < cone.p; k += 1) sum += cone.vectors[i * cone.p + k]! * direction[k]!;
  return sum;
}

/** Euclidean length. */
export function norm(vector: Float64Array): number {
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
  return left > zeroProduct * length ? vector.map((value) => value / left) : null;
}

/** Sign of each row: 1 successes only, -1 failures only, 0 both. */
export function outcomeSigns({ successes, trials }: Counts): Int8Array {
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
export function outcomeCone(
  basis: OrthogonalBasis,
  sign: Int8Array,
  active: readonly number[],
): OutcomeCone | null {
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
  return { p, mixed, count, vectors, source };
}

/** Least-squares weights of the passive vectors: minimises |b + sum of weight · vector|; null where dependent. */
function passiveWeights(cone: OutcomeCone, passive: readonly number[], b: Float64Array): Float64Array | null {
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
function settlePassive(cone: OutcomeCone, state: NonNegative, b: Float64Array): boolean {
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

function residualOf(cone: OutcomeCone, { passive, weights }: NonNegative, b: Float64Array): Float64Array {
  const residual = b.slice();
  passive.forEach((i, row) => {
    for (let k = 0; k < cone.p; k += 1) residual[k]! += weights[row]! * cone.vectors[i * cone.p + k]!;
  });
  return residual;
}

function leastProduct(cone: OutcomeCone, direction: Float64Array): { index: number; value: number } {
  let index = -1;
  let value = Infinity;
  for (let i = 0; i < cone.count; i += 1) {
    const product = along(cone, i, direction);
    if (product < value) [index, value] = [i, product];
  }
  return { index, value };
}

/**
 * A direction d of length 1 with z_i · d ≥ 0 for all i and b · d > 0; null where there is none.
 *
 * By Farkas' lemma there is none exactly where some weights w ≥ 0 give b + sum w_i z_i = 0. So the distance of -b
 * from the cone is minimised over w ≥ 0 (Lawson & Hanson's non-negative least squares, which ends after finitely many
 * steps): a zero residual r is the certificate that there is none, any other r is such a direction, since the
 * conditions of the minimum are z_i · r ≥ 0, and b · r = |r|² > 0.
 *
 * @param cone the rows of one outcome
 * @param b p numbers, orthogonal to the rows with both outcomes
 * @param scale length of the terms that b is a sum of: a residual below 1e-12 of it is rounding
 * @source Lawson & Hanson (1974) Solving Least Squares Problems, chapter 23
 */
export function risingDirection(cone: OutcomeCone, b: Float64Array, scale: number): Float64Array | null {
  const state: NonNegative = { passive: [], weights: [] };
  for (let steps = 0; steps < 1000 + 50 * cone.p; steps += 1) {
    const residual = residualOf(cone, state, b);
    const length = norm(residual);
    if (length <= 1e-12 * scale) return null;
    const direction = residual.map((value) => value / length);
    const least = leastProduct(cone, direction);
    if (least.value >= -zeroProduct) return direction;
    if (state.passive.includes(least.index)) return null;
    state.passive.push(least.index);
    state.weights.push(0);
    if (!settlePassive(cone, state, b)) return null;
  }
  return null;
}

/**
 * A direction d of length 1 with z_i · d ≥ 0 for all i and > 0 for some; null where there is none: by Stiemke's lemma
 * then, and only then, strictly positive weights give sum (1 + w_i) z_i = 0.
 */
export function separatingDirection(cone: OutcomeCone): Float64Array | null {
  const b = new Float64Array(cone.p);
  for (let i = 0; i < cone.count; i += 1) {
    for (let k = 0; k < cone.p; k += 1) b[k]! += cone.vectors[i * cone.p + k]!;
  }
  return risingDirection(cone, b, cone.count);
}

/** Whether some direction that the likelihood never falls along has a positive product with `target`. */
export function rises(cone: OutcomeCone, target: Float64Array): boolean {
  const length = norm(target);
  const b = target.slice();
  removeParts(b, cone.mixed);
  if (norm(b) <= zeroProduct * length) return false;
  return risingDirection(cone, b, length) !== null;
}
