/** The mode of a latent model by Newton's method, its curvature there, and Laplace's approximation. */

import { cholesky, logDeterminant, solveLower, solveUpper } from '../numerics/linear-algebra.ts';
import type { LatentPoint, LatentScales, RowWork } from './latent-likelihood.ts';
import { coreScales, linearPredictor, logLikelihood, rowWork } from './latent-likelihood.ts';
import type { LatentModel } from './latent-model.ts';

/** Curvature at a point: H = [diagonal, cross; cross′, core], with the eliminated block diagonal. */
export interface Curvature {
  /** Diagonal of the eliminated block. */
  readonly diagonal: Float64Array;
  /** Off-diagonal part of each eliminated level against the core indices it touches. */
  readonly cross: readonly Float64Array[];
  /** Cholesky factor of the Schur complement, coreSize × coreSize. */
  readonly factor: Float64Array;
}

export interface LatentMode {
  readonly point: LatentPoint;
  readonly curvature: Curvature;
  /** Probability of each eliminated level to be barren; empty where the exclusive factor is not the eliminated one. */
  readonly barren: Float64Array;
  /** Log-likelihood at the mode minus half the squared length of the point. */
  readonly logDensity: number;
  readonly logDeterminant: number;
  /** Laplace's approximation of the log marginal likelihood: logDensity − logDeterminant / 2. */
  readonly logMarginal: number;
  readonly settled: boolean;
  readonly iterations: number;
}

/**
 * Finds modes of one model again and again, at other scales, with the same memory: the curvature of a mode holds
 * until the next call.
 */
export interface ModeFinder {
  readonly model: LatentModel;
  readonly work: RowWork;
  /** `tolerance` is the expected gain, relative to the value, below which a step is the last one. */
  readonly find: (scales: LatentScales, start?: LatentPoint, tolerance?: number) => LatentMode;
}

/** Tolerance of a search whose mode is wanted to the last digits. */
const EXACT = 1e-12;
const MAX_ITERATIONS = 60;
/** A start this near to the mode, in squared standard deviations, is the mode: its curvature need not be redone. */
const ALREADY_THERE = 1e-18;

/** A finder of modes for one model. */
export function modeFinder(model: LatentModel): ModeFinder {
  const work = rowWork(model);
  const trial = emptyPoint(model);
  const memory = curvatureMemory(model);
  const find = (scales: LatentScales, start?: LatentPoint, tolerance = EXACT): LatentMode => {
    const point = start ? { core: start.core.slice(), block: start.block.slice() } : emptyPoint(model);
    let value = density(model, scales, point, work);
    let settled = false;
    let iterations = 0;
    let curvature = curvatureAt(model, scales, work, memory);
    while (!settled && iterations < MAX_ITERATIONS) {
      iterations += 1;
      const step = newtonStep(model, scales, point, work, curvature);
      if (step.decrement < ALREADY_THERE) {
        settled = true;
        break;
      }
      settled = step.decrement < tolerance * (1 + Math.abs(value));
      // A rough search ends where it stands; an exact one takes the last step too.
      if (settled && tolerance > EXACT) break;
      const moved = lineSearch(model, scales, work, point, step, trial, value);
      if (moved === null) {
        settled = settled || step.decrement < 1e-8;
        value = density(model, scales, point, work);
        curvature = curvatureAt(model, scales, work, memory);
        break;
      }
      value = moved;
      curvature = curvatureAt(model, scales, work, memory);
    }
    const logDet = logDeterminant(curvature.factor, model.coreSize) + sumLog(curvature.diagonal);
    return {
      point,
      curvature,
      barren: barrenLevels(model, work),
      logDensity: value,
      logDeterminant: logDet,
      logMarginal: value - logDet / 2,
      settled,
      iterations,
    };
  };
  return { model, work, find };
}

function barrenLevels({ exclusive, eliminated }: LatentModel, { level }: RowWork): Float64Array {
  return exclusive >= 0 && exclusive === eliminated
    ? level.map((ordinary) => 1 - ordinary)
    : new Float64Array(0);
}

export function emptyPoint(model: LatentModel): LatentPoint {
  return { core: new Float64Array(model.coreSize), block: new Float64Array(model.blockSize) };
}

/** Log-likelihood minus half the squared length of the point; leaves score and weights in `work`. */
export function density(model: LatentModel, scales: LatentScales, point: LatentPoint, work: RowWork): number {
  linearPredictor(model, scales, point, work);
  return logLikelihood(model, scales, work) - (squared(point.core) + squared(point.block)) / 2;
}

function squared(x: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < x.length; i += 1) sum += x[i]! * x[i]!;
  return sum;
}

function sumLog(x: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < x.length; i += 1) sum += Math.log(x[i]!);
  return sum;
}

interface Step extends LatentPoint {
  readonly decrement: number;
}

/** Tries the full step, then halves of it; moves `point` and returns the new value, or null when none is better. */
function lineSearch(
  model: LatentModel,
  scales: LatentScales,
  work: RowWork,
  point: LatentPoint,
  step: Step,
  trial: LatentPoint,
  value: number,
): number | null {
  for (let size = 1; size > 1e-6; size /= 2) {
    for (let k = 0; k < model.coreSize; k += 1) trial.core[k] = point.core[k]! + size * step.core[k]!;
    for (let a = 0; a < model.blockSize; a += 1) trial.block[a] = point.block[a]! + size * step.block[a]!;
    const next = density(model, scales, trial, work);
    if (next >= value - 1e-13 * Math.abs(value)) {
      point.core.set(trial.core);
      point.block.set(trial.block);
      return next;
    }
  }
  return null;
}

interface CurvatureMemory extends Curvature {
  readonly normal: Float64Array;
  readonly scale: Float64Array;
}

function curvatureMemory(model: LatentModel): CurvatureMemory {
  return {
    normal: new Float64Array(model.coreSize * model.coreSize),
    factor: new Float64Array(model.coreSize * model.coreSize),
    scale: new Float64Array(model.coreSize),
    diagonal: new Float64Array(model.blockSize),
    cross: model.touched.map((list) => new Float64Array(list.length)),
  };
}

/** H at the weights in `work`: identity plus weighted cross products, the Schur complement factored. */
function curvatureAt(
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
  for (const values of cross) values.fill(0);
  for (let i = 0; i < n; i += 1) {
    const w = weight[i]!;
    if (w === 0) continue;
    const level = levels === null ? -1 : levels[i]!;
    const values = level < 0 ? null : cross[level]!;
    if (level >= 0) diagonal[level]! += w;
    const start = entryStart[i]!;
    const end = entryStart[i + 1]!;
    for (let e = start; e < end; e += 1) {
      const weighted = w * entryValue[e]!;
      const row = entryCore[e]! * size;
      if (values !== null) values[entryPlace[e]!]! += weighted;
      for (let f = start; f <= e; f += 1) normal[row + entryCore[f]!]! += weighted * entryValue[f]!;
    }
  }
}

/** Brings the products to the standard normal scale and adds the identity. */
function scaleRows(model: LatentModel, scales: LatentScales, memory: CurvatureMemory): void {
  const { coreSize: size, blockSize, eliminated } = model;
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
    const list = model.touched[a]!;
    const values = cross[a]!;
    for (let k = 0; k < list.length; k += 1) values[k]! *= own * scale[list[k]!]!;
  }
}

/** The Schur complement of the eliminated block, in place. */
function eliminate(model: LatentModel, { normal, diagonal, cross }: CurvatureMemory): void {
  const size = model.coreSize;
  for (let a = 0; a < model.blockSize; a += 1) {
    const list = model.touched[a]!;
    const values = cross[a]!;
    const inverse = 1 / diagonal[a]!;
    for (let j = 0; j < list.length; j += 1) {
      const scaled = values[j]! * inverse;
      const row = list[j]! * size;
      for (let k = 0; k <= j; k += 1) normal[row + list[k]!]! -= scaled * values[k]!;
    }
  }
}

/** Gradient of the log density at a point, from the scores in `work`. */
export function gradient(
  model: LatentModel,
  scales: LatentScales,
  point: LatentPoint,
  score: Float64Array,
): LatentPoint {
  const { n, entryStart, entryCore, entryValue, eliminated } = model;
  const core = new Float64Array(model.coreSize);
  const block = new Float64Array(model.blockSize);
  const levels = eliminated < 0 ? null : model.factors[eliminated]!.codes;
  for (let i = 0; i < n; i += 1) {
    const r = score[i]!;
    const end = entryStart[i + 1]!;
    for (let e = entryStart[i]!; e < end; e += 1) core[entryCore[e]!]! += r * entryValue[e]!;
    if (levels !== null && levels[i]! >= 0) block[levels[i]!]! += r;
  }
  const scale = coreScales(model, scales, new Float64Array(model.coreSize));
  const own = eliminated < 0 ? 0 : scales.factors[eliminated]!;
  for (let k = 0; k < core.length; k += 1) core[k] = scale[k]! * core[k]! - point.core[k]!;
  for (let a = 0; a < block.length; a += 1) block[a] = own * block[a]! - point.block[a]!;
  return { core, block };
}

function newtonStep(
  model: LatentModel,
  scales: LatentScales,
  point: LatentPoint,
  work: RowWork,
  curvature: Curvature,
): Step {
  const slope = gradient(model, scales, point, work.score);
  const step = solveCurvature(model, curvature, slope);
  let decrement = 0;
  for (let k = 0; k < step.core.length; k += 1) decrement += slope.core[k]! * step.core[k]!;
  for (let a = 0; a < step.block.length; a += 1) decrement += slope.block[a]! * step.block[a]!;
  return { ...step, decrement };
}

/** Solves H x = b. */
export function solveCurvature(model: LatentModel, curvature: Curvature, b: LatentPoint): LatentPoint {
  const core = b.core.slice();
  for (let a = 0; a < model.blockSize; a += 1) {
    const scaled = b.block[a]! / curvature.diagonal[a]!;
    const list = model.touched[a]!;
    const values = curvature.cross[a]!;
    for (let k = 0; k < list.length; k += 1) core[list[k]!]! -= values[k]! * scaled;
  }
  solveUpper(curvature.factor, model.coreSize, solveLower(curvature.factor, model.coreSize, core));
  const block = new Float64Array(model.blockSize);
  for (let a = 0; a < model.blockSize; a += 1) {
    const list = model.touched[a]!;
    const values = curvature.cross[a]!;
    let sum = b.block[a]!;
    for (let k = 0; k < list.length; k += 1) sum -= values[k]! * core[list[k]!]!;
    block[a] = sum / curvature.diagonal[a]!;
  }
  return { core, block };
}
