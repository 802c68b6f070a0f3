/** Negative binomial regression of counts (NB2, log link) by maximum likelihood. */

import { cholesky, invertCholesky } from '../numerics/linear-algebra.ts';
import type { PossibleTest } from '../proportions/interval.ts';
import { type CountDesign, type CountSpec, countDesignOf } from './count-design.ts';
import {
  type CountClimb,
  type CountFamily,
  type CountFit,
  climbOverdispersed,
  climbPoisson,
  countFitAt,
  countWithoutFit,
  covarianceAt,
  overdispersionTest,
  type ShapeEstimate,
  shapeAt,
  shapeUnknown,
} from './count-fit.ts';
import { negativeBinomialRow, poissonRow } from './count-rows.ts';
import { columnCovariance } from './orthogonal-basis.ts';
import { rowPredictors } from './shape-climb.ts';

/** A finished fit; the variance of a count is mu + mu² / theta. */
export interface NegativeBinomialFit extends CountFit {
  /** Null because `no-overdispersion` where the Poisson limit (infinite theta) is the best; the fit is then Poisson's. */
  readonly theta: ShapeEstimate & {
    /** With the means held as they are, as R's `glm.nb` prints it. */
    readonly seGivenMeans: number | null;
  };
  /** (p + 1) × (p + 1) from the observed information, the logarithm of theta last; null without a finite theta. */
  readonly jointCovariance: Float64Array | null;
  /** With theta held. */
  readonly deviance: number | null;
  /** Pearson's chi-square. */
  readonly pearson: number | null;
  /** Log-likelihood of the Poisson limit. */
  readonly poissonLogLik: number | null;
  /** Likelihood-ratio test against the Poisson limit, half a chi-square with 1 df. */
  readonly overdispersion: PossibleTest;
}

const family: CountFamily = {
  smallest: 0,
  poisson: poissonRow,
  overdispersed: negativeBinomialRow,
  leaving: (count, mu) => ((count - mu) ** 2 - count) / 2,
};

/** Covariance of the coefficients from the expected information, which does not mix them with theta. */
function expectedCovariance({ model, end }: CountClimb, theta: number): Float64Array | null {
  const { p, rows } = model.basis;
  const information = new Float64Array(p * p);
  rowPredictors(model, end.point.gamma).forEach((eta, i) => {
    const mu = Math.exp(eta);
    const weight = mu / (1 + mu / theta);
    for (let j = 0; j < p; j += 1) {
      const share = weight * rows[i * p + j]!;
      for (let k = 0; k <= j; k += 1) information[j * p + k]! += share * rows[i * p + k]!;
    }
  });
  const factor = cholesky(information, p);
  return factor === null ? null : columnCovariance(model.basis, invertCholesky(factor, p));
}

/** Twice the log-likelihood that one count loses against a mean of its own; theta may be infinite. */
function devianceOf(count: number, mu: number, theta: number): number {
  const own = count === 0 ? 0 : count * Math.log(count / mu);
  if (theta === Infinity) return 2 * (own - (count - mu));
  return 2 * (own - (count + theta) * Math.log1p((count - mu) / (mu + theta)));
}

function distances({ counts }: CountDesign, fitted: Float64Array | null, theta: number) {
  if (fitted === null) return { deviance: null, pearson: null };
  let deviance = 0;
  let pearson = 0;
  counts.forEach((count, i) => {
    const mu = fitted[i]!;
    deviance += devianceOf(count, mu, theta);
    pearson += (count - mu) ** 2 / (mu + (mu * mu) / theta);
  });
  return { deviance, pearson };
}

const sameMean = (mu: number): number => mu;

function unfitted(fit: CountFit): NegativeBinomialFit {
  const because = fit.convergence.reason;
  return {
    ...fit,
    theta: { ...shapeUnknown(because), seGivenMeans: null },
    jointCovariance: null,
    deviance: null,
    pearson: null,
    poissonLogLik: null,
    overdispersion: { statistic: null, df: null, p: null, because },
  };
}

function atPoissonLimit(design: CountDesign, limit: CountFit): NegativeBinomialFit {
  if (limit.logLik === null) return unfitted(limit);
  return {
    ...limit,
    theta: { ...shapeUnknown('no-overdispersion'), seGivenMeans: null },
    jointCovariance: null,
    ...distances(design, limit.fitted, Infinity),
    poissonLogLik: limit.logLik,
    overdispersion: overdispersionTest(limit.logLik, limit.logLik),
  };
}

function withTheta(design: CountDesign, climbed: CountClimb, limit: CountFit): NegativeBinomialFit {
  const { point } = climbed.end;
  const joint = covarianceAt(climbed);
  const theta = Math.exp(point.gamma.at(-1)!);
  const fit = countFitAt(design, climbed, joint && expectedCovariance(climbed, theta), sameMean);
  if (fit.logLik === null || joint === null || limit.logLik === null) return unfitted(fit);
  return {
    ...fit,
    theta: { ...shapeAt(point, joint), seGivenMeans: theta / Math.sqrt(point.information.at(-1)!) },
    jointCovariance: joint,
    ...distances(design, fit.fitted, theta),
    poissonLogLik: limit.logLik,
    overdispersion: overdispersionTest(fit.logLik, limit.logLik),
  };
}

/**
 * Negative binomial regression (NB2) with a log link, theta estimated with the coefficients.
 *
 * Answers by what factor the expected count (seeds a fruit) changes with the columns, the others held, when counts vary
 * more than Poisson's. Not for fruits counted only if they have seeds (see `zeroTruncatedNegativeBinomial`), nor for
 * shares of a known total (`betaBinomial`).
 *
 * Variance mu + mu² / theta. Standard errors of the terms are those of R's `glm.nb`: expected information, theta held;
 * `jointCovariance` has those of the observed information. Where counts vary no more than Poisson's, theta is infinite:
 * it is null because `no-overdispersion`, and everything else is the Poisson fit. Where a mean runs to zero (a level
 * whose counts are all 0) the numbers are null and `convergence.reason` is `separated`, `separatedBy` names the columns.
 *
 * @param spec n rows of counts, p columns, an exposure; see `CountSpec`
 * @returns a finished fit; `waldIntervals` makes the ranges of its terms
 * @throws RangeError when the rules of `CountSpec` are broken, there is no column, more columns than rows, or a column
 *   that is a linear combination of others (it is named)
 * @source Lawless (1987) Canadian Journal of Statistics 15, 209–225; Venables & Ripley (2002) Modern Applied Statistics
 *   with S, section 7.4
 * @example negativeBinomial({ counts: [12, 40, 3, 22, 9, 31], columns: { stored: [1, 0, 1, 0, 1, 0] } }).theta.estimate // 26.45871...
 */
export function negativeBinomial(spec: CountSpec): NegativeBinomialFit {
  const design = countDesignOf(spec, 'negativeBinomial', 0);
  const poisson = climbPoisson('negativeBinomial', design, family);
  if (poisson.separatedBy.length > 0) {
    const { separatedBy, end } = poisson;
    return unfitted(countWithoutFit(design, separatedBy, design.names.length + 1, end.convergence));
  }
  const limit = countFitAt(design, poisson, covarianceAt(poisson), sameMean);
  const overdispersed = climbOverdispersed(design, family, poisson);
  return overdispersed === null ? atPoissonLimit(design, limit) : withTheta(design, overdispersed, limit);
}
