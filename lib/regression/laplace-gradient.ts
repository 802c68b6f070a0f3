/** Laplace's approximation of a mixed logistic model, with its gradient by coefficients and standard deviations. */

import { expMinus } from '../numerics/exponential.ts';
import { rowProduct } from '../numerics/row-product.ts';
import { chordStart } from './chord-steps.ts';
import { type CurvatureInverse, emptyInverse, invertCurvature } from './curvature-inverse.ts';
import { solveCurvature } from './latent-curvature.ts';
import type { LatentPoint, RowWork } from './latent-likelihood.ts';
import { type LatentMode, type ModeFinder, modeFinder } from './latent-mode.ts';
import type { LatentFactor, LatentModel } from './latent-model.ts';
import { latentModel } from './latent-model.ts';
import { emptyTraceTerms, traceTerms } from './trace-terms.ts';

/** A binomial logit with fixed columns and crossed random intercepts. */
export interface MixedModel {
  readonly successes: Float64Array;
  readonly trials: Float64Array;
  /** Known part of the linear predictor. */
  readonly offset: Float64Array;
  /** p arrays of length n. */
  readonly columns: readonly Float64Array[];
  readonly factors: readonly LatentFactor[];
}

/** The approximation at one point: log-likelihood without binomial coefficients, and its first derivatives. */
export interface LaplaceSlope {
  readonly value: number;
  /** p derivatives by the coefficients. */
  readonly byCoefficient: Float64Array;
  /** One derivative a factor, by its standard deviation. */
  readonly bySd: Float64Array;
  /** Where the random effects have their mode. */
  readonly mode: LatentMode;
}

/**
 * Squared distance to the mode, in standard deviations, that is let pass: the gradient feels the distance at first
 * order, and differences of it a thousand times as much.
 */
const exactMode = 1e-18;
/** Enough on the way to the optimum. */
export const roughMode = 1e-16;

/** Evaluates one model again and again, each time starting from the last mode. */
export interface LaplaceSurface {
  readonly model: MixedModel;
  readonly latent: LatentModel;
  readonly finder: ModeFinder;
  readonly inverse: CurvatureInverse;
  /**
   * Value and gradient at p coefficients and one standard deviation a factor. Standard deviations may have either
   * sign: the approximation is an even, smooth function of each. `near` is how near to the mode of the random effects
   * it is taken, as a squared distance in standard deviations; to rounding where left out. The last point asked for
   * again costs nothing.
   */
  readonly slope: (coefficients: Float64Array, sds: Float64Array, near?: number) => LaplaceSlope;
}

/**
 * The surface of a mixed model.
 *
 * With u = S v, v ~ N(0, I), S the diagonal of standard deviations: at the mode of v the approximation is
 * L = l(eta) − v′v / 2 − log det H / 2, H = S Z′W Z S + I. Everything is written in v, so that it stays exact as a
 * standard deviation goes to 0.
 *
 * @source Bates, Mächler, Bolker & Walker (2015) Journal of Statistical Software 67(1), section 3, for the
 *   spherical form; Skaug & Fournier (2006) Computational Statistics & Data Analysis 51, 699–709, equation 7, for
 *   the gradient of Laplace's approximation
 */
export function laplaceSurface(model: MixedModel): LaplaceSurface {
  const offset = model.offset.slice();
  const latent = latentModel({
    successes: model.successes,
    trials: model.trials,
    offset,
    columns: [],
    factors: model.factors,
    exclusive: -1,
  });
  const finder = modeFinder(latent);
  const inverse = emptyInverse(latent);
  const rows = emptyTraceTerms(latent);
  const total = new Float64Array(latent.n);
  let last: LatentMode | undefined;
  let known: { readonly at: Float64Array; readonly slope: LaplaceSlope } | undefined;
  const slope = (coefficients: Float64Array, sds: Float64Array, near = exactMode): LaplaceSlope => {
    const at = Float64Array.of(...coefficients, ...sds, near);
    if (known?.at.every((value, k) => value === at[k])) return known.slope;
    known = { at, slope: slopeAnew(coefficients, sds, near) };
    return known.slope;
  };
  const slopeAnew = (coefficients: Float64Array, sds: Float64Array, near: number): LaplaceSlope => {
    shiftOffset(model, coefficients, offset);
    const scales = { columns: new Float64Array(0), factors: sds, exclusive: 0 };
    const start = last && chordStart(finder, scales, last, near / 2);
    const mode = finder.find(scales, start?.point, { tolerance: exactMode, near, value: start?.value });
    last = mode;
    invertCurvature(latent, mode.curvature, inverse);
    traceTerms(latent, sds, inverse, rows);
    const adjoint = adjointOf(latent, finder, sds, mode, rows.leverage, total);
    return {
      value: mode.logMarginal,
      byCoefficient: byCoefficient(model, total),
      bySd: bySd(latent, finder, mode, adjoint, rows.meeting, total),
      mode,
    };
  };
  return { model, latent, finder, inverse, slope };
}

function shiftOffset(model: MixedModel, coefficients: Float64Array, offset: Float64Array): void {
  offset.set(model.offset);
  model.columns.forEach((column, j) => {
    const coefficient = coefficients[j]!;
    for (let i = 0; i < offset.length; i += 1) offset[i]! += column[i]! * coefficient;
  });
}

/**
 * The adjoint a = H⁻¹ S Z′q with q_i = leverage_i dW_i/deta_i, and the derivative of L by eta_i while v follows its
 * mode: score_i − (q_i − W_i (Z S a)_i) / 2, written into `total`.
 */
function adjointOf(
  latent: LatentModel,
  finder: ModeFinder,
  sds: Float64Array,
  mode: LatentMode,
  leverage: Float64Array,
  total: Float64Array,
): LatentPoint {
  const { eta, score, weight } = finder.work;
  for (let i = 0; i < latent.n; i += 1) {
    const x = eta[i]!;
    const e = expMinus(Math.abs(x));
    // dW/deta = −W tanh(eta / 2).
    const product = (leverage[i]! * weight[i]! * (1 - e)) / (1 + e);
    total[i] = x > 0 ? -product : product;
  }
  const adjoint = solveCurvature(latent, mode.curvature, scaledSums(latent, sds, total));
  for (let i = 0; i < latent.n; i += 1) total[i] = score[i]! - total[i]! / 2;
  latent.factors.forEach(({ codes }, g) => {
    const effects = g === latent.eliminated ? adjoint.block : adjoint.core;
    const start = g === latent.eliminated ? 0 : latent.factorStart[g]!;
    addWeighted(total, weight, codes, effects, start, sds[g]! / 2);
  });
  return adjoint;
}

function addWeighted(
  total: Float64Array,
  weight: Float64Array,
  codes: Int32Array,
  effects: Float64Array,
  start: number,
  factor: number,
): void {
  for (let i = 0; i < total.length; i += 1) {
    if (codes[i]! >= 0) total[i]! += weight[i]! * factor * effects[start + codes[i]!]!;
  }
}

/** S Z′ x: the sums of x over the rows of each level, times the standard deviation of its factor. */
export function scaledSums(latent: LatentModel, sds: Float64Array, x: Float64Array): LatentPoint {
  const sums = { core: new Float64Array(latent.coreSize), block: new Float64Array(latent.blockSize) };
  latent.factors.forEach(({ codes }, g) => {
    const target = g === latent.eliminated ? sums.block : sums.core;
    const start = g === latent.eliminated ? 0 : latent.factorStart[g]!;
    addSums(target, codes, start, sds[g]!, x);
  });
  return sums;
}

function addSums(target: Float64Array, codes: Int32Array, start: number, sd: number, x: Float64Array): void {
  for (let i = 0; i < x.length; i += 1) {
    if (codes[i]! >= 0) target[start + codes[i]!]! += sd * x[i]!;
  }
}

function byCoefficient(model: MixedModel, total: Float64Array): Float64Array {
  return Float64Array.from(model.columns, (column) => rowProduct(column, 0, total, 0, column.length));
}

/** Sum over rows of v total − a score / 2 − W meeting, for each factor. */
function bySd(
  latent: LatentModel,
  finder: ModeFinder,
  mode: LatentMode,
  adjoint: LatentPoint,
  meeting: readonly Float64Array[],
  total: Float64Array,
): Float64Array {
  return Float64Array.from(latent.factors, ({ codes }, g) => {
    const inBlock = g === latent.eliminated;
    const effects = inBlock ? mode.point.block : mode.point.core;
    const adjoints = inBlock ? adjoint.block : adjoint.core;
    const start = inBlock ? 0 : latent.factorStart[g]!;
    return levelSum(finder.work, codes, effects, adjoints, start, meeting[g]!, total);
  });
}

function levelSum(
  { score, weight }: RowWork,
  codes: Int32Array,
  effects: Float64Array,
  adjoints: Float64Array,
  start: number,
  meeting: Float64Array,
  total: Float64Array,
): number {
  let sum = 0;
  for (let i = 0; i < codes.length; i += 1) {
    if (codes[i]! < 0) continue;
    const k = start + codes[i]!;
    sum += effects[k]! * total[i]! - (adjoints[k]! * score[i]!) / 2 - weight[i]! * meeting[i]!;
  }
  return sum;
}
