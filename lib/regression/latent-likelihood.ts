/** Linear predictor and log-likelihood of a latent model, with the score and the working weight of each row. */

import { expMinus } from '../numerics/exponential.ts';
import type { LatentModel } from './latent-model.ts';

/** Scales of a latent model: prior standard deviation of each column and factor, and the exclusive probability. */
export interface LatentScales {
  readonly columns: Float64Array;
  readonly factors: Float64Array;
  /** Probability that a level of the exclusive factor never succeeds; 0 where there is none. */
  readonly exclusive: number;
}

/** A point in coefficient space: the core and the eliminated block, on the standard normal scale. */
export interface LatentPoint {
  readonly core: Float64Array;
  readonly block: Float64Array;
}

/** Arrays that one evaluation fills; made once and used again. */
export interface RowWork {
  readonly eta: Float64Array;
  readonly score: Float64Array;
  readonly weight: Float64Array;
  /** Core coefficients times their scales. */
  readonly scaled: Float64Array;
  /** By level of the exclusive factor: log-likelihood of its rows, then probability that it is not barren. */
  readonly level: Float64Array;
  /** Gradient and step of the last Newton or chord step. */
  readonly slope: LatentPoint;
  readonly step: LatentPoint;
}

/** A point of zeros. */
export function emptyPoint(model: LatentModel): LatentPoint {
  return { core: new Float64Array(model.coreSize), block: new Float64Array(model.blockSize) };
}

export function rowWork(model: LatentModel): RowWork {
  return {
    eta: new Float64Array(model.n),
    score: new Float64Array(model.n),
    weight: new Float64Array(model.n),
    scaled: new Float64Array(model.coreSize),
    level: new Float64Array(model.barren.length),
    slope: emptyPoint(model),
    step: emptyPoint(model),
  };
}

/** Scale of every core coefficient, written into `target`. */
export function coreScales(model: LatentModel, scales: LatentScales, target: Float64Array): Float64Array {
  model.factors.forEach(({ size }, g) => {
    const start = model.factorStart[g]!;
    if (start >= 0) target.fill(scales.factors[g]!, start, start + size);
  });
  target.set(scales.columns, model.columnStart);
  return target;
}

/** eta of every row at a point, written into `work.eta`. */
export function linearPredictor(
  model: LatentModel,
  scales: LatentScales,
  point: LatentPoint,
  work: RowWork,
): void {
  const { n, entryStart, entryCore, entryValue, offset, eliminated } = model;
  const { eta } = work;
  const b = coreScales(model, scales, work.scaled);
  for (let k = 0; k < b.length; k += 1) b[k]! *= point.core[k]!;
  const levels = eliminated < 0 ? null : model.factors[eliminated]!.codes;
  const own = eliminated < 0 ? 0 : scales.factors[eliminated]!;
  for (let i = 0; i < n; i += 1) {
    let sum = offset[i]!;
    const end = entryStart[i + 1]!;
    for (let e = entryStart[i]!; e < end; e += 1) sum += entryValue[e]! * b[entryCore[e]!]!;
    if (levels !== null && levels[i]! >= 0) sum += own * point.block[levels[i]!]!;
    eta[i] = sum;
  }
}

/** Log of 1 + exp(x), without overflow. */
export function softplus(x: number): number {
  return x > 0 ? x + Math.log1p(Math.exp(-x)) : Math.log1p(Math.exp(x));
}

/** Inverse of the logit. */
export function logistic01(x: number): number {
  if (x >= 0) return 1 / (1 + Math.exp(-x));
  const e = Math.exp(x);
  return e / (1 + e);
}

/**
 * Log-likelihood (without binomial coefficients) at `work.eta`.
 *
 * Where an exclusive factor is at work, rows of a barren level count with the probability that the level is of
 * the ordinary kind; the weight keeps only the part of the curvature that is never negative, so that the normal
 * matrix stays positive definite (the draws are reweighted by the exact likelihood afterwards).
 */
export function logLikelihood(model: LatentModel, scales: LatentScales, work: RowWork): number {
  if (model.exclusive >= 0 && scales.exclusive > 0) return mixedLogLikelihood(model, scales, work);
  work.level.fill(1);
  return plainLogLikelihood(model, work);
}

/** Products of 1 + exp(−|eta|) are this large at most before their logarithm is taken. */
const largeProduct = 1e250;

/** A logarithm costs as much as all the rest of a row of one trial: one for many rows, of their product, is enough. */
function plainLogLikelihood({ n, trials, successes }: LatentModel, work: RowWork): number {
  const { eta, score, weight } = work;
  let sum = 0;
  let product = 1;
  for (let i = 0; i < n; i += 1) {
    const x = eta[i]!;
    const m = trials[i]!;
    const y = successes[i]!;
    const e = expMinus(Math.abs(x));
    const small = e / (1 + e);
    const large = 1 - small;
    score[i] = y - m * (x >= 0 ? large : small);
    weight[i] = m * small * large;
    sum += y * x;
    if (x > 0) sum -= m * x;
    if (m === 1) {
      product *= 1 + e;
      if (product > largeProduct) {
        sum -= Math.log(product);
        product = 1;
      }
    } else sum -= m * Math.log1p(e);
  }
  return sum - Math.log(product);
}

/** Log-likelihood of one row; its score and weight go into `work`. */
function rowTerms(model: LatentModel, work: RowWork, i: number): number {
  const eta = work.eta[i]!;
  const trials = model.trials[i]!;
  const successes = model.successes[i]!;
  const e = expMinus(Math.abs(eta));
  const small = e / (1 + e);
  const p = eta >= 0 ? 1 - small : small;
  work.score[i] = successes - trials * p;
  work.weight[i] = trials * small * (1 - small);
  return successes * eta - trials * (Math.max(eta, 0) + Math.log1p(e));
}

function mixedLogLikelihood(model: LatentModel, scales: LatentScales, work: RowWork): number {
  const { codes } = model.factors[model.exclusive]!;
  const { level } = work;
  let sum = 0;
  level.fill(0);
  for (let i = 0; i < model.n; i += 1) {
    const term = rowTerms(model, work, i);
    const code = codes[i]!;
    if (code >= 0) level[code]! += term;
    else sum += term;
  }
  const pi = scales.exclusive;
  for (let a = 0; a < level.length; a += 1) {
    if (model.barren[a]) {
      const ordinary = (1 - pi) * Math.exp(level[a]!);
      sum += Math.log(pi + ordinary);
      level[a] = ordinary / (pi + ordinary);
    } else {
      sum += Math.log1p(-pi) + level[a]!;
      level[a] = 1;
    }
  }
  for (let i = 0; i < model.n; i += 1) {
    const code = codes[i]!;
    if (code < 0 || level[code] === 1) continue;
    work.score[i]! *= level[code]!;
    work.weight[i]! *= level[code]!;
  }
  return sum;
}
