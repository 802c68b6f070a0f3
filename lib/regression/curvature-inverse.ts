/** Entries of the inverse curvature of a latent model, where two levels meet in a row and on the diagonal. */

import type { Curvature } from './latent-mode.ts';
import type { LatentModel } from './latent-model.ts';

/** The inverse of H = [diagonal, cross; cross′, core], at the places where H itself may have an entry. */
export interface CurvatureInverse {
  /** coreSize × coreSize. */
  readonly core: Float64Array;
  /** Diagonal of the eliminated block. */
  readonly diagonal: Float64Array;
  /** Each eliminated level against the core indices it touches. */
  readonly cross: readonly Float64Array[];
  /** Room for the inverse of the factor, coreSize × coreSize. */
  readonly triangle: Float64Array;
}

/** Room for the inverse of one model's curvature, to be used again and again. */
export function emptyInverse(model: LatentModel): CurvatureInverse {
  return {
    core: new Float64Array(model.coreSize * model.coreSize),
    diagonal: new Float64Array(model.blockSize),
    cross: model.touched.map((list) => new Float64Array(list.length)),
    triangle: new Float64Array(model.coreSize * model.coreSize),
  };
}

/**
 * Writes the inverse into `target`.
 *
 * With S the Schur complement of the eliminated block, d_a its diagonal and c_a its row of cross terms: the core's
 * inverse is S⁻¹, a level against the core −c_a′S⁻¹ / d_a, and a level with itself 1 / d_a + c_a′S⁻¹c_a / d_a²
 * (Golub & Van Loan 2013, Matrix Computations, section 2.1.4). Two eliminated levels never meet in a row.
 */
export function invertCurvature(model: LatentModel, curvature: Curvature, target: CurvatureInverse): void {
  const size = model.coreSize;
  const { core, diagonal, cross } = target;
  invertFactor(curvature.factor, size, target.triangle, core);
  for (let a = 0; a < model.blockSize; a += 1) {
    const list = model.touched[a]!;
    const values = curvature.cross[a]!;
    const inverse = 1 / curvature.diagonal[a]!;
    let quadratic = 0;
    for (let j = 0; j < list.length; j += 1) {
      const sum = gathered(values, core, list[j]! * size, list);
      cross[a]![j] = -sum * inverse;
      quadratic += values[j]! * sum;
    }
    diagonal[a] = inverse + quadratic * inverse * inverse;
  }
}

/** Product of some values with entries of a row; four sums at a time, which the processor can overlap. */
function gathered(values: Float64Array, matrix: Float64Array, row: number, list: Int32Array): number {
  let s0 = 0;
  let s1 = 0;
  let s2 = 0;
  let s3 = 0;
  let k = 0;
  for (; k + 3 < list.length; k += 4) {
    s0 += values[k]! * matrix[row + list[k]!]!;
    s1 += values[k + 1]! * matrix[row + list[k + 1]!]!;
    s2 += values[k + 2]! * matrix[row + list[k + 2]!]!;
    s3 += values[k + 3]! * matrix[row + list[k + 3]!]!;
  }
  for (; k < list.length; k += 1) s0 += values[k]! * matrix[row + list[k]!]!;
  return s0 + s1 + (s2 + s3);
}

/** (L L′)⁻¹ = L⁻¹′ L⁻¹ from the lower triangle L: a third of the work of solving for the columns one by one. */
function invertFactor(
  factor: Float64Array,
  size: number,
  triangle: Float64Array,
  target: Float64Array,
): void {
  invertTriangle(factor, size, triangle);
  target.fill(0);
  for (let i = 0; i < size; i += 1) {
    let k = i;
    for (; k + 3 < size; k += 4) {
      const row = k * size;
      const s0 = triangle[row + i]!;
      const s1 = triangle[row + size + i]!;
      const s2 = triangle[row + 2 * size + i]!;
      const s3 = triangle[row + 3 * size + i]!;
      addFourRows(target, i * size, triangle, row, size, i + 1, s0, s1, s2, s3);
    }
    for (; k < size; k += 1) addRow(target, i * size, triangle, k * size, i + 1, triangle[k * size + i]!);
  }
  for (let i = 0; i < size; i += 1) {
    for (let j = 0; j < i; j += 1) target[j * size + i] = target[i * size + j]!;
  }
}

/** L⁻¹, row by row, so that memory is read in order; above its diagonal it stays zero. */
function invertTriangle(factor: Float64Array, size: number, inverse: Float64Array): void {
  inverse.fill(0);
  for (let i = 0; i < size; i += 1) {
    const own = i * size;
    const pivot = 1 / factor[own + i]!;
    let k = 0;
    for (; k + 3 < i; k += 4) {
      const s0 = -factor[own + k]! * pivot;
      const s1 = -factor[own + k + 1]! * pivot;
      const s2 = -factor[own + k + 2]! * pivot;
      const s3 = -factor[own + k + 3]! * pivot;
      addFourRows(inverse, own, inverse, k * size, size, k + 4, s0, s1, s2, s3);
    }
    for (; k < i; k += 1) addRow(inverse, own, inverse, k * size, k + 1, -factor[own + k]! * pivot);
    inverse[own + i] = pivot;
  }
}

/** Adds multiples of four rows that follow one another: each entry of the target is read and written once for four. */
function addFourRows(
  target: Float64Array,
  to: number,
  source: Float64Array,
  from: number,
  size: number,
  length: number,
  s0: number,
  s1: number,
  s2: number,
  s3: number,
): void {
  if (s0 === 0 && s1 === 0 && s2 === 0 && s3 === 0) return;
  const second = from + size;
  const third = second + size;
  const fourth = third + size;
  for (let j = 0; j < length; j += 1) {
    target[to + j]! +=
      s0 * source[from + j]! +
      s1 * source[second + j]! +
      (s2 * source[third + j]! + s3 * source[fourth + j]!);
  }
}

function addRow(
  target: Float64Array,
  to: number,
  source: Float64Array,
  from: number,
  length: number,
  scale: number,
): void {
  if (scale === 0) return;
  for (let j = 0; j < length; j += 1) target[to + j]! += scale * source[from + j]!;
}
