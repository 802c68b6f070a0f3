/** Laplace's approximation of a mixed logistic model, with its gradient by coefficients and standard deviations. */

import { chordStart } from './chord-steps.ts';
import { type CurvatureInverse, emptyInverse, invertCurvature } from './curvature-inverse.ts';
import type { LatentPoint } from './latent-likelihood.ts';
import { type LatentMode, type ModeFinder, modeFinder, solveCurvature } from './latent-mode.ts';
import type { LatentFactor, LatentModel } from './latent-model.ts';
import { latentModel } from './latent-model.ts';

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

/** Modes are wanted exact: the gradient, and differences of it, feel their error at first order. */
const modeTolerance = 1e-18;

/** Evaluates one model again and again, each time starting from the last mode. */
export interface LaplaceSurface {
  readonly model: MixedModel;
  readonly latent: LatentModel;
  readonly finder: ModeFinder;
  readonly inverse: CurvatureInverse;
  /**
   * Value and gradient at p coefficients and one standard deviation a factor. Standard deviations may have either
   * sign: the approximation is an even, smooth function of each.
   */
  readonly slope: (coefficients: Float64Array, sds: Float64Array) => LaplaceSlope;
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
  const rows = rowTerms(latent);
  let last: LatentMode | undefined;
  const slope = (coefficients: Float64Array, sds: Float64Array): LaplaceSlope => {
    shiftOffset(model, coefficients, offset);
    const scales = { columns: new Float64Array(0), factors: sds, exclusive: 0 };
    const mode = finder.find(scales, last && chordStart(finder, scales, last), modeTolerance);
    last = mode;
    invertCurvature(latent, mode.curvature, inverse);
    traceTerms(latent, sds, inverse, finder.work.weight, rows);
    const adjoint = adjointOf(latent, finder, sds, mode, rows);
    return {
      value: mode.logMarginal,
      byCoefficient: byCoefficient(model, rows.total),
      bySd: bySd(latent, finder, mode, adjoint, rows),
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

interface RowTerms {
  /** n × factors: element of H⁻¹ S z_i at the row's level of the factor. */
  readonly meeting: Float64Array;
  /** z_i′ S H⁻¹ S z_i, then the derivative of L by eta of row i. */
  readonly leverage: Float64Array;
  readonly total: Float64Array;
}

function rowTerms(latent: LatentModel): RowTerms {
  return {
    meeting: new Float64Array(latent.n * latent.factors.length),
    leverage: new Float64Array(latent.n),
    total: new Float64Array(latent.n),
  };
}

/** Fills `meeting` and `leverage`: what the derivative of log det H needs of each row. */
function traceTerms(
  latent: LatentModel,
  sds: Float64Array,
  inverse: CurvatureInverse,
  weight: Float64Array,
  { meeting, leverage }: RowTerms,
): void {
  const { n, factors, factorStart, eliminated, coreSize: size } = latent;
  const width = factors.length;
  for (let i = 0; i < n; i += 1) {
    const from = i * width;
    meeting.fill(0, from, from + width);
    leverage[i] = 0;
    if (weight[i] === 0) continue;
    const level = eliminated < 0 ? -1 : factors[eliminated]!.codes[i]!;
    const cross = level < 0 ? null : inverse.cross[level]!;
    if (level >= 0) meeting[from + eliminated]! += sds[eliminated]! * inverse.diagonal[level]!;
    for (let g = 0; g < width; g += 1) {
      const code = factors[g]!.codes[i]!;
      if (g === eliminated || code < 0) continue;
      const row = (factorStart[g]! + code) * size;
      for (let h = 0; h < width; h += 1) {
        const other = factors[h]!.codes[i]!;
        if (h === eliminated || other < 0) continue;
        meeting[from + g]! += sds[h]! * inverse.core[row + factorStart[h]! + other]!;
      }
      if (cross === null) continue;
      const entry = cross[latent.position[from + g]!]!;
      meeting[from + g]! += sds[eliminated]! * entry;
      meeting[from + eliminated]! += sds[g]! * entry;
    }
    for (let g = 0; g < width; g += 1) leverage[i]! += sds[g]! * meeting[from + g]!;
  }
}

/**
 * The adjoint a = H⁻¹ S Z′q with q_i = leverage_i dW_i/deta_i, and the derivative of L by eta_i while v follows its
 * mode: score_i − (q_i − W_i (Z S a)_i) / 2.
 */
function adjointOf(
  latent: LatentModel,
  finder: ModeFinder,
  sds: Float64Array,
  mode: LatentMode,
  { leverage, total }: RowTerms,
): LatentPoint {
  const { eta, score, weight } = finder.work;
  for (let i = 0; i < latent.n; i += 1) {
    total[i] = -leverage[i]! * weight[i]! * Math.tanh(eta[i]! / 2);
  }
  const adjoint = solveCurvature(latent, mode.curvature, scaledSums(latent, sds, total));
  for (let i = 0; i < latent.n; i += 1) total[i] = score[i]! - total[i]! / 2;
  latent.factors.forEach((factor, g) => {
    const effects = g === latent.eliminated ? adjoint.block : adjoint.core;
    const start = g === latent.eliminated ? 0 : latent.factorStart[g]!;
    for (let i = 0; i < latent.n; i += 1) {
      const code = factor.codes[i]!;
      if (code >= 0) total[i]! += (weight[i]! * sds[g]! * effects[start + code]!) / 2;
    }
  });
  return adjoint;
}

/** S Z′ x: the sums of x over the rows of each level, times the standard deviation of its factor. */
export function scaledSums(latent: LatentModel, sds: Float64Array, x: Float64Array): LatentPoint {
  const sums = { core: new Float64Array(latent.coreSize), block: new Float64Array(latent.blockSize) };
  latent.factors.forEach((factor, g) => {
    const target = g === latent.eliminated ? sums.block : sums.core;
    const start = g === latent.eliminated ? 0 : latent.factorStart[g]!;
    for (let i = 0; i < latent.n; i += 1) {
      const code = factor.codes[i]!;
      if (code >= 0) target[start + code]! += sds[g]! * x[i]!;
    }
  });
  return sums;
}

function byCoefficient(model: MixedModel, total: Float64Array): Float64Array {
  return Float64Array.from(model.columns, (column) => {
    let sum = 0;
    for (let i = 0; i < column.length; i += 1) sum += column[i]! * total[i]!;
    return sum;
  });
}

/** Sum over rows of v total − a score / 2 − W meeting, for each factor. */
function bySd(
  latent: LatentModel,
  finder: ModeFinder,
  mode: LatentMode,
  adjoint: LatentPoint,
  { meeting, total }: RowTerms,
): Float64Array {
  const { score, weight } = finder.work;
  const width = latent.factors.length;
  return Float64Array.from(latent.factors, (factor, g) => {
    const inBlock = g === latent.eliminated;
    const effects = inBlock ? mode.point.block : mode.point.core;
    const adjoints = inBlock ? adjoint.block : adjoint.core;
    const start = inBlock ? 0 : latent.factorStart[g]!;
    let sum = 0;
    for (let i = 0; i < latent.n; i += 1) {
      const code = factor.codes[i]!;
      if (code < 0) continue;
      const k = start + code;
      sum += effects[k]! * total[i]! - (adjoints[k]! * score[i]!) / 2 - weight[i]! * meeting[i * width + g]!;
    }
    return sum;
  });
}
