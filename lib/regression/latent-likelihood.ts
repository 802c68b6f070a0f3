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
  /** By level of the exclusive factor: product of 1 + exp(−|eta|) over the trials of its rows. */
  readonly product: Float64Array;
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
    product: new Float64Array(model.barren.length),
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
 *
 * @param slopes whether score and weight are wanted too
 */
export function logLikelihood(
  model: LatentModel,
  scales: LatentScales,
  work: RowWork,
  slopes = true,
): number {
  if (model.exclusive >= 0 && scales.exclusive > 0) return mixedLogLikelihood(model, scales, work, slopes);
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

/** Rows of more trials take a logarithm of their own, so that no power overflows. */
const mostTrials = 64;

/** Adds up the rows by level, their logarithms left in a product: a logarithm a level instead of one a row. */
function addRows(model: LatentModel, work: RowWork, slopes: boolean): number {
  const { codes } = model.factors[model.exclusive]!;
  const { eta, score, weight, level, product } = work;
  let sum = 0;
  level.fill(0);
  product.fill(1);
  for (let i = 0; i < model.n; i += 1) {
    const x = eta[i]!;
    const m = model.trials[i]!;
    const y = model.successes[i]!;
    const e = expMinus(Math.abs(x));
    if (slopes) {
      const small = e / (1 + e);
      score[i] = y - m * (x >= 0 ? 1 - small : small);
      weight[i] = m * small * (1 - small);
    }
    let term = x > 0 ? y * x - m * x : y * x;
    const code = codes[i]!;
    if (code < 0 || m > mostTrials) term -= m * Math.log1p(e);
    if (code < 0) {
      sum += term;
      continue;
    }
    if (m <= mostTrials) {
      const whole = product[code]! * (m === 1 ? 1 + e : (1 + e) ** m);
      product[code] = whole > largeProduct ? 1 : whole;
      if (whole > largeProduct) term -= Math.log(whole);
    }
    level[code]! += term;
  }
  return sum;
}

function mixedLogLikelihood(
  model: LatentModel,
  scales: LatentScales,
  work: RowWork,
  slopes: boolean,
): number {
  const { codes } = model.factors[model.exclusive]!;
  const { level, product } = work;
  let sum = addRows(model, work, slopes);
  const pi = scales.exclusive;
  for (let a = 0; a < level.length; a += 1) {
    const own = level[a]! - Math.log(product[a]!);
    if (model.barren[a]) {
      const ordinary = (1 - pi) * Math.exp(own);
      sum += Math.log(pi + ordinary);
      level[a] = ordinary / (pi + ordinary);
    } else {
      sum += Math.log1p(-pi) + own;
      level[a] = 1;
    }
  }
  if (!slopes) return sum;
  for (let i = 0; i < model.n; i += 1) {
    const code = codes[i]!;
    if (code < 0 || level[code] === 1) continue;
    work.score[i]! *= level[code]!;
    work.weight[i]! *= level[code]!;
  }
  return sum;
}
