/** The mode of a latent model by Newton's method, its curvature there, and Laplace's approximation. */

import { logDeterminant } from '../numerics/linear-algebra.ts';
import { type Curvature, curvatureAt, curvatureMemory, solveCurvature } from './latent-curvature.ts';
import type { LatentPoint, LatentScales, RowWork } from './latent-likelihood.ts';
import { coreScales, emptyPoint, linearPredictor, logLikelihood, rowWork } from './latent-likelihood.ts';
import type { LatentModel } from './latent-model.ts';

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
  readonly find: (scales: LatentScales, start?: LatentPoint, options?: FindOptions) => LatentMode;
}

/** How a mode is looked for. */
export interface FindOptions {
  /** Expected gain, relative to the value, below which a step is the last one. */
  readonly tolerance?: number;
  /** Squared distance, in standard deviations, at which a start is the mode: its curvature is not redone. */
  readonly near?: number;
  /** The density at the start, where the finder's work holds it from the evaluation just before. */
  readonly value?: number | undefined;
}

/** Tolerance of a search whose mode is wanted to the last digits. */
const EXACT = 1e-12;
const MAX_ITERATIONS = 60;
const ALREADY_THERE = 1e-18;

/** A finder of modes for one model. */
export function modeFinder(model: LatentModel): ModeFinder {
  const work = rowWork(model);
  const trial = emptyPoint(model);
  const memory = curvatureMemory(model);
  const find = (scales: LatentScales, start?: LatentPoint, options: FindOptions = {}): LatentMode => {
    const { tolerance = EXACT, near = ALREADY_THERE } = options;
    const point = start ? { core: start.core.slice(), block: start.block.slice() } : emptyPoint(model);
    let value = options.value ?? density(model, scales, point, work);
    let settled = false;
    let iterations = 0;
    let curvature = curvatureAt(model, scales, work, memory);
    while (!settled && iterations < MAX_ITERATIONS) {
      iterations += 1;
      const decrement = newtonStep(model, scales, point, work, curvature);
      if (decrement < near) {
        settled = true;
        break;
      }
      settled = decrement < tolerance * (1 + Math.abs(value));
      // A rough search ends where it stands; an exact one takes the last step too.
      if (settled && tolerance > EXACT) break;
      const moved = lineSearch(model, scales, work, point, trial, value);
      if (moved === null) {
        settled = settled || decrement < 1e-8;
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

/**
 * Log-likelihood minus half the squared length of the point; leaves score and weights in `work` unless `slopes` is false.
 */
export function density(
  model: LatentModel,
  scales: LatentScales,
  point: LatentPoint,
  work: RowWork,
  slopes = true,
): number {
  linearPredictor(model, scales, point, work);
  return logLikelihood(model, scales, work, slopes) - (squared(point.core) + squared(point.block)) / 2;
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

/** Tries the full step, then halves of it; moves `point` and returns the new value, or null when none is better. */
function lineSearch(
  model: LatentModel,
  scales: LatentScales,
  work: RowWork,
  point: LatentPoint,
  trial: LatentPoint,
  value: number,
): number | null {
  const { step } = work;
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

/** Gradient of the log density at a point, from the scores in `work`; written into `work.slope`. */
export function gradient(
  model: LatentModel,
  scales: LatentScales,
  point: LatentPoint,
  work: RowWork,
): LatentPoint {
  const { n, entryStart, entryCore, entryValue, eliminated } = model;
  const { score, scaled } = work;
  const { core, block } = work.slope;
  core.fill(0);
  block.fill(0);
  const levels = eliminated < 0 ? null : model.factors[eliminated]!.codes;
  for (let i = 0; i < n; i += 1) {
    const r = score[i]!;
    const end = entryStart[i + 1]!;
    for (let e = entryStart[i]!; e < end; e += 1) core[entryCore[e]!]! += r * entryValue[e]!;
    if (levels !== null && levels[i]! >= 0) block[levels[i]!]! += r;
  }
  const scale = coreScales(model, scales, scaled);
  const own = eliminated < 0 ? 0 : scales.factors[eliminated]!;
  for (let k = 0; k < core.length; k += 1) core[k] = scale[k]! * core[k]! - point.core[k]!;
  for (let a = 0; a < block.length; a += 1) block[a] = own * block[a]! - point.block[a]!;
  return work.slope;
}

/** The step H⁻¹ × gradient, written into `work.step`; its decrement, gradient × step, is returned. */
export function newtonStep(
  model: LatentModel,
  scales: LatentScales,
  point: LatentPoint,
  work: RowWork,
  curvature: Curvature,
): number {
  const slope = gradient(model, scales, point, work);
  const step = solveCurvature(model, curvature, slope, work.step);
  let decrement = 0;
  for (let k = 0; k < step.core.length; k += 1) decrement += slope.core[k]! * step.core[k]!;
  for (let a = 0; a < step.block.length; a += 1) decrement += slope.block[a]! * step.block[a]!;
  return decrement;
}
