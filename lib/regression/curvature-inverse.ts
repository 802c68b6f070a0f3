/** Entries of the inverse curvature of a latent model, where two levels meet in a row and on the diagonal. */

import type { Curvature } from './latent-curvature.ts';
import type { LatentModel } from './latent-model.ts';

/** The inverse of H = [diagonal, cross; cross′, core], at the places where H itself may have an entry. */
export interface CurvatureInverse {
  /** coreSize × coreSize; 0 where two levels of one factor never meet, not in any eliminated level's row either. */
  readonly core: Float64Array;
  /** Diagonal of the eliminated block. */
  readonly diagonal: Float64Array;
  /** Each eliminated level against the core indices it touches, in the order of `touchIndex`. */
  readonly cross: Float64Array;
  /** Room for the inverse of the factor, coreSize × coreSize. */
  readonly triangle: Float64Array;
  /** For each core index, the end of the entries to its left that are wanted. */
  readonly wanted: Int32Array;
}

/** Room for the inverse of one model's curvature, to be used again and again. */
export function emptyInverse(model: LatentModel): CurvatureInverse {
  return {
    core: new Float64Array(model.coreSize * model.coreSize),
    diagonal: new Float64Array(model.blockSize),
    cross: new Float64Array(model.touchIndex.length),
    triangle: new Float64Array(model.coreSize * model.coreSize),
    wanted: wantedEnds(model),
  };
}

/** Entries of two levels of one factor are wanted only where an eliminated level touches both. */
function wantedEnds({
  coreSize,
  factors,
  factorStart,
  blockSize,
  touchStart,
  touchIndex,
}: LatentModel): Int32Array {
  const factorOf = new Int32Array(coreSize).fill(-1);
  factors.forEach(({ size }, g) => {
    if (factorStart[g]! >= 0) factorOf.fill(g, factorStart[g]!, factorStart[g]! + size);
  });
  const together = new Uint8Array(factors.length);
  for (let a = 0; a < blockSize; a += 1) {
    for (let k = touchStart[a]! + 1; k < touchStart[a + 1]!; k += 1) {
      const g = factorOf[touchIndex[k]!]!;
      if (g >= 0 && g === factorOf[touchIndex[k - 1]!]) together[g] = 1;
    }
  }
  return Int32Array.from(factorOf, (g, k) => (g < 0 || together[g] ? k : factorStart[g]!));
}

/**
 * Writes the inverse into `target`.
 *
 * With S the Schur complement of the eliminated block, d_a its diagonal and c_a its row of cross terms: the core's
 * inverse is S⁻¹, a level against the core −c_a′S⁻¹ / d_a, and a level with itself 1 / d_a + c_a′S⁻¹c_a / d_a²
 * (Golub & Van Loan 2013, Matrix Computations, section 2.1.4). Two eliminated levels never meet in a row.
 */
export function invertCurvature(model: LatentModel, curvature: Curvature, target: CurvatureInverse): void {
  const { coreSize: size, blockSize, touchStart, touchIndex } = model;
  const { core, diagonal, cross } = target;
  invertFactor(curvature.factor, size, target);
  for (let a = 0; a < blockSize; a += 1) {
    const start = touchStart[a]!;
    const end = touchStart[a + 1]!;
    const inverse = 1 / curvature.diagonal[a]!;
    let quadratic = 0;
    for (let j = start; j < end; j += 1) {
      const sum = gathered(curvature.cross, core, touchIndex[j]! * size, touchIndex, start, end);
      cross[j] = -sum * inverse;
      quadratic += curvature.cross[j]! * sum;
    }
    diagonal[a] = inverse + quadratic * inverse * inverse;
  }
}

/** Product of some values with entries of a row; four sums at a time, which the processor can overlap. */
function gathered(
  values: Float64Array,
  matrix: Float64Array,
  row: number,
  index: Int32Array,
  start: number,
  end: number,
): number {
  let s0 = 0;
  let s1 = 0;
  let s2 = 0;
  let s3 = 0;
  let k = start;
  for (; k + 3 < end; k += 4) {
    s0 += values[k]! * matrix[row + index[k]!]!;
    s1 += values[k + 1]! * matrix[row + index[k + 1]!]!;
    s2 += values[k + 2]! * matrix[row + index[k + 2]!]!;
    s3 += values[k + 3]! * matrix[row + index[k + 3]!]!;
  }
  for (; k < end; k += 1) s0 += values[k]! * matrix[row + index[k]!]!;
  return s0 + s1 + (s2 + s3);
}

/** The wanted entries of (L L′)⁻¹ = L⁻¹′ L⁻¹: a third of the work of solving for the columns one by one. */
function invertFactor(
  factor: Float64Array,
  size: number,
  { triangle, core, wanted }: CurvatureInverse,
): void {
  const first = invertTriangle(factor, size, triangle);
  core.fill(0);
  for (let i = 0; i < size; i += 1) {
    const end = wanted[i]!;
    let own = 0;
    let k = i;
    for (; k + 3 < size; k += 4) {
      const row = k * size;
      const s0 = triangle[row + i]!;
      const s1 = triangle[row + size + i]!;
      const s2 = triangle[row + 2 * size + i]!;
      const s3 = triangle[row + 3 * size + i]!;
      if (s0 === 0 && s1 === 0 && s2 === 0 && s3 === 0) continue;
      own += s0 * s0 + s1 * s1 + (s2 * s2 + s3 * s3);
      const from = Math.min(first[k]!, first[k + 1]!, first[k + 2]!, first[k + 3]!);
      addFourRows(core, i * size, triangle, row, size, from, end, s0, s1, s2, s3);
    }
    for (; k < size; k += 1) {
      const scale = triangle[k * size + i]!;
      own += scale * scale;
      addRow(core, i * size, triangle, k * size, first[k]!, end, scale);
    }
    core[i * size + i] = own;
  }
  for (let i = 0; i < size; i += 1) {
    for (let j = 0; j < i; j += 1) core[j * size + i] = core[i * size + j]!;
  }
}

/**
 * L⁻¹, row by row, so that memory is read in order; above its diagonal it stays zero. Returns where the first entry of
 * each row is that is not zero.
 */
function invertTriangle(factor: Float64Array, size: number, inverse: Float64Array): Int32Array {
  const first = new Int32Array(size);
  inverse.fill(0);
  for (let i = 0; i < size; i += 1) {
    const own = i * size;
    const pivot = 1 / factor[own + i]!;
    let least = i;
    let k = 0;
    for (; k + 3 < i; k += 4) {
      const s0 = -factor[own + k]! * pivot;
      const s1 = -factor[own + k + 1]! * pivot;
      const s2 = -factor[own + k + 2]! * pivot;
      const s3 = -factor[own + k + 3]! * pivot;
      if (s0 === 0 && s1 === 0 && s2 === 0 && s3 === 0) continue;
      const from = Math.min(first[k]!, first[k + 1]!, first[k + 2]!, first[k + 3]!);
      least = Math.min(least, from);
      addFourRows(inverse, own, inverse, k * size, size, from, k + 4, s0, s1, s2, s3);
    }
    for (; k < i; k += 1) {
      least = Math.min(least, first[k]!);
      addRow(inverse, own, inverse, k * size, first[k]!, k + 1, -factor[own + k]! * pivot);
    }
    inverse[own + i] = pivot;
    first[i] = least;
  }
  return first;
}

/** Adds multiples of four rows that follow one another: each entry of the target is read and written once for four. */
function addFourRows(
  target: Float64Array,
  to: number,
  source: Float64Array,
  from: number,
  size: number,
  begin: number,
  end: number,
  s0: number,
  s1: number,
  s2: number,
  s3: number,
): void {
  const second = from + size;
  const third = second + size;
  const fourth = third + size;
  for (let j = begin; j < end; j += 1) {
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
  begin: number,
  end: number,
  scale: number,
): void {
  if (scale === 0) return;
  for (let j = begin; j < end; j += 1) target[to + j]! += scale * source[from + j]!;
}
