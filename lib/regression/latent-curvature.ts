/** Curvature of a latent model at a point: worked out, factored and solved with its largest block eliminated. */

import { cholesky, solveLower, solveUpper } from '../numerics/linear-algebra.ts';
import {
  coreScales,
  emptyPoint,
  type LatentPoint,
  type LatentScales,
  type RowWork,
} from './latent-likelihood.ts';
import type { LatentModel } from './latent-model.ts';

/** Curvature at a point: H = [diagonal, cross; cross′, core], with the eliminated block diagonal. */
export interface Curvature {
  /** Diagonal of the eliminated block. */
  readonly diagonal: Float64Array;
  /** Off-diagonal part: each eliminated level against the core indices it touches, in the order of `touchIndex`. */
  readonly cross: Float64Array;
  /** Cholesky factor of the Schur complement, coreSize × coreSize. */
  readonly factor: Float64Array;
}

/** A curvature with the room that working it out takes, to be used again and again. */
export interface CurvatureMemory extends Curvature {
  readonly normal: Float64Array;
  readonly scale: Float64Array;
}

export function curvatureMemory(model: LatentModel): CurvatureMemory {
  return {
    normal: new Float64Array(model.coreSize * model.coreSize),
    factor: new Float64Array(model.coreSize * model.coreSize),
    scale: new Float64Array(model.coreSize),
    diagonal: new Float64Array(model.blockSize),
    cross: new Float64Array(model.touchIndex.length),
  };
}

/** H at the weights in `work`: identity plus weighted cross products, the Schur complement factored. */
export function curvatureAt(
  model: LatentModel,
  scales: LatentScales,
  work: RowWork,
  memory: CurvatureMemory,
): Curvature {
  const { normal, diagonal, cross, scale } = memory;
  coreScales(model, scales, scale);
  addRows(model, work.weight, memory);
  scaleRows(model, scales, memory);
  eliminate(model, memory);
  const factor = cholesky(normal, model.coreSize, memory.factor);
  if (factor === null) throw new RangeError('latent model: the normal matrix is not positive definite');
  return { diagonal, cross, factor };
}

/** Weighted products of every row's entries, not yet scaled: lower triangle of the core, block and cross terms. */
function addRows(model: LatentModel, weight: Float64Array, memory: CurvatureMemory): void {
  const { n, coreSize: size, entryStart, entryCore, entryValue, entryPlace, eliminated } = model;
  const { normal, diagonal, cross } = memory;
  const levels = eliminated < 0 ? null : model.factors[eliminated]!.codes;
  normal.fill(0);
  diagonal.fill(0);
  cross.fill(0);
  for (let i = 0; i < n; i += 1) {
    const w = weight[i]!;
    if (w === 0) continue;
    const level = levels === null ? -1 : levels[i]!;
    if (level >= 0) diagonal[level]! += w;
    const start = entryStart[i]!;
    const end = entryStart[i + 1]!;
    for (let e = start; e < end; e += 1) {
      const weighted = w * entryValue[e]!;
      const row = entryCore[e]! * size;
      if (level >= 0) cross[entryPlace[e]!]! += weighted;
      for (let f = start; f <= e; f += 1) normal[row + entryCore[f]!]! += weighted * entryValue[f]!;
    }
  }
}

/** Brings the products to the standard normal scale and adds the identity. */
function scaleRows(model: LatentModel, scales: LatentScales, memory: CurvatureMemory): void {
  const { coreSize: size, blockSize, eliminated, touchStart, touchIndex } = model;
  const { normal, diagonal, cross, scale } = memory;
  for (let k = 0; k < size; k += 1) {
    const row = k * size;
    const own = scale[k]!;
    for (let j = 0; j <= k; j += 1) normal[row + j]! *= own * scale[j]!;
    normal[row + k]! += 1;
  }
  if (eliminated < 0) return;
  const own = scales.factors[eliminated]!;
  for (let a = 0; a < blockSize; a += 1) {
    diagonal[a] = 1 + own * own * diagonal[a]!;
    const end = touchStart[a + 1]!;
    for (let k = touchStart[a]!; k < end; k += 1) cross[k]! *= own * scale[touchIndex[k]!]!;
  }
}

/** The Schur complement of the eliminated block, in place. */
function eliminate(model: LatentModel, { normal, diagonal, cross }: CurvatureMemory): void {
  const { coreSize: size, blockSize, touchStart, touchIndex } = model;
  for (let a = 0; a < blockSize; a += 1) {
    const start = touchStart[a]!;
    const end = touchStart[a + 1]!;
    const inverse = 1 / diagonal[a]!;
    for (let j = start; j < end; j += 1) {
      const scaled = cross[j]! * inverse;
      const row = touchIndex[j]! * size;
      for (let k = start; k <= j; k += 1) normal[row + touchIndex[k]!]! -= scaled * cross[k]!;
    }
  }
}

/** Solves H x = b; the solution is written into `target`. */
export function solveCurvature(
  model: LatentModel,
  curvature: Curvature,
  b: LatentPoint,
  target = emptyPoint(model),
): LatentPoint {
  const { coreSize, blockSize, touchStart, touchIndex } = model;
  const { diagonal, cross, factor } = curvature;
  const { core, block } = target;
  core.set(b.core);
  for (let a = 0; a < blockSize; a += 1) {
    const scaled = b.block[a]! / diagonal[a]!;
    const end = touchStart[a + 1]!;
    for (let k = touchStart[a]!; k < end; k += 1) core[touchIndex[k]!]! -= cross[k]! * scaled;
  }
  solveUpper(factor, coreSize, solveLower(factor, coreSize, core));
  for (let a = 0; a < blockSize; a += 1) {
    let sum = b.block[a]!;
    const end = touchStart[a + 1]!;
    for (let k = touchStart[a]!; k < end; k += 1) sum -= cross[k]! * core[touchIndex[k]!]!;
    block[a] = sum / diagonal[a]!;
  }
  return target;
}
