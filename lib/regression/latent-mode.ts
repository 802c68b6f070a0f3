/** The mode of a latent model by Newton's method, its curvature there, and Laplace's approximation. */

import { cholesky, logDeterminant, solveLower, solveUpper } from '../numerics/linear-algebra.ts';
import type { LatentPoint, LatentScales, RowWork } from './latent-likelihood.ts';
import { linearPredictor, logLikelihood, rowWork } from './latent-likelihood.ts';
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
      logDensity: value,
      logDeterminant: logDet,
      logMarginal: value - logDet / 2,
      settled,
      iterations,
    };
  };
  return { model, work, find };
}

export function emptyPoint(model: LatentModel): LatentPoint {
  return { core: new Float64Array(model.coreSize), block: new Float64Array(model.blockSize) };
}

/** Log-likelihood minus half the squared length of the point; leaves score and weights in `work`. */
export function density(model: LatentModel, scales: LatentScales, point: LatentPoint, work: RowWork): number {
  linearPredictor(model, scales, point, work.eta);
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
}

function curvatureMemory(model: LatentModel): CurvatureMemory {
  return {
    normal: new Float64Array(model.coreSize * model.coreSize),
    factor: new Float64Array(model.coreSize * model.coreSize),
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
  const size = model.coreSize;
  const { normal, diagonal, cross } = memory;
  diagonal.fill(1);
  for (const values of cross) values.fill(0);
  normal.fill(0);
  for (let k = 0; k < size; k += 1) normal[k * size + k] = 1;
  addRows(model, scales, work, normal, diagonal, cross);
  for (let a = 0; a < model.blockSize; a += 1) {
    const list = model.touched[a]!;
    const values = cross[a]!;
    const inverse = 1 / diagonal[a]!;
    for (let j = 0; j < list.length; j += 1) {
      const scaled = values[j]! * inverse;
      if (scaled === 0) continue;
      const row = list[j]! * size;
      for (let k = 0; k <= j; k += 1) normal[row + list[k]!]! -= scaled * values[k]!;
    }
  }
  const factor = cholesky(normal, size, memory.factor);
  if (factor === null) throw new RangeError('latent model: the normal matrix is not positive definite');
  return { diagonal, cross, factor };
}

/** Adds every row's weighted products: lower triangle of the core, block diagonal and cross terms. */
function addRows(
  model: LatentModel,
  scales: LatentScales,
  work: RowWork,
  normal: Float64Array,
  diagonal: Float64Array,
  cross: readonly Float64Array[],
): void {
  const { n, columns, factors, coreSize: size, columnStart, eliminated } = model;
  const width = factors.length;
  const x = new Float64Array(columns.length);
  const index = new Int32Array(width);
  for (let i = 0; i < n; i += 1) {
    const w = work.weight[i]!;
    if (w === 0) continue;
    for (let c = 0; c < x.length; c += 1) x[c] = scales.columns[c]! * columns[c]![i]!;
    const level = eliminated < 0 ? -1 : factors[eliminated]!.codes[i]!;
    const own = level < 0 ? 0 : w * scales.factors[eliminated]!;
    if (level >= 0) diagonal[level]! += own * scales.factors[eliminated]!;
    const values = level < 0 ? null : cross[level]!;
    for (let g = 0; g < width; g += 1) {
      const code = factors[g]!.codes[i]!;
      index[g] = g === eliminated || code < 0 ? -1 : model.factorStart[g]! + code;
      if (index[g]! < 0) continue;
      const scale = scales.factors[g]!;
      const row = index[g]! * size;
      for (let h = 0; h < g; h += 1) {
        if (index[h]! >= 0) normal[row + index[h]!]! += w * scale * scales.factors[h]!;
      }
      normal[row + index[g]!]! += w * scale * scale;
      if (values) values[model.position[i * width + g]!]! += own * scale;
      for (let c = 0; c < x.length; c += 1)
        normal[(columnStart + c) * size + index[g]!]! += w * scale * x[c]!;
    }
    addColumns(x, w, normal, size, columnStart);
    if (values) {
      const from = values.length - x.length;
      for (let c = 0; c < x.length; c += 1) values[from + c]! += own * x[c]!;
    }
  }
}

function addColumns(x: Float64Array, w: number, normal: Float64Array, size: number, start: number): void {
  for (let c = 0; c < x.length; c += 1) {
    if (x[c] === 0) continue;
    const row = (start + c) * size + start;
    const scaled = w * x[c]!;
    for (let d = 0; d <= c; d += 1) normal[row + d]! += scaled * x[d]!;
  }
}

/** Gradient of the log density at a point, from the scores in `work`. */
export function gradient(
  model: LatentModel,
  scales: LatentScales,
  point: LatentPoint,
  score: Float64Array,
): LatentPoint {
  const core = new Float64Array(model.coreSize);
  const block = new Float64Array(model.blockSize);
  for (let k = 0; k < core.length; k += 1) core[k] = -point.core[k]!;
  for (let a = 0; a < block.length; a += 1) block[a] = -point.block[a]!;
  model.columns.forEach((column, c) => {
    let sum = 0;
    for (let i = 0; i < model.n; i += 1) sum += column[i]! * score[i]!;
    core[model.columnStart + c]! += scales.columns[c]! * sum;
  });
  model.factors.forEach((factor, g) => {
    const target = g === model.eliminated ? block : core;
    const start = g === model.eliminated ? 0 : model.factorStart[g]!;
    const scale = scales.factors[g]!;
    for (let i = 0; i < model.n; i += 1) {
      const code = factor.codes[i]!;
      if (code >= 0) target[start + code]! += scale * score[i]!;
    }
  });
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
