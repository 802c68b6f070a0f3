/** Regressions of counts that are never zero: a fruit that was harvested has seeds. */

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
  type PoissonClimb,
  type ShapeEstimate,
  shapeAt,
  shapeUnknown,
} from './count-fit.ts';
import { truncatedNegativeBinomialRow, truncatedPoissonRow } from './count-rows.ts';

/** A finished fit; with the zeros the variance of a count would be mu + mu² / theta. */
export interface ZeroTruncatedNegativeBinomialFit extends CountFit {
  /** Null because `no-overdispersion` where the Poisson limit (infinite theta) is the best; the fit is then Poisson's. */
  readonly theta: ShapeEstimate;
  /** (p + 1) × (p + 1) from the observed information, the logarithm of theta last; null without a finite theta. */
  readonly jointCovariance: Float64Array | null;
  /** Log-likelihood of the Poisson limit. */
  readonly poissonLogLik: number | null;
  /** Likelihood-ratio test against the Poisson limit, half a chi-square with 1 df. */
  readonly overdispersion: PossibleTest;
}

const family: CountFamily = {
  smallest: 1,
  poisson: truncatedPoissonRow,
  overdispersed: truncatedNegativeBinomialRow,
  leaving: (count, mu) => ((count - mu) ** 2 - count + (mu * mu) / Math.expm1(mu)) / 2,
};

/** Below this theta the counts are at the logarithmic distribution, the limit of theta and all means going to zero. */
const leastTheta = 1e-6;

/** Mean of a Poisson count that is not zero. */
function poissonMean(mu: number): number {
  return mu / -Math.expm1(-mu);
}

/**
 * Zero-truncated Poisson regression with a log link.
 *
 * Answers what `zeroTruncatedNegativeBinomial` does for counts that vary no more than Poisson's. Seeds a fruit mostly vary
 * more: its standard errors are then far too small.
 *
 * The coefficients act on the mean mu that the count would have with its zeros; `fitted` is mu / (1 − exp(−mu)), the mean
 * without them. Where mu runs to zero (a level whose counts are all 1) the numbers are null and `convergence.reason` is
 * `separated`, `separatedBy` names the columns.
 *
 * @param spec n rows of counts of at least 1, p columns, an exposure; see `CountSpec`
 * @returns a finished fit; `waldIntervals` makes the ranges of its terms
 * @throws RangeError when the rules of `CountSpec` are broken, a count is 0, there is no column, more columns than rows,
 *   or a column that is a linear combination of others (it is named)
 * @source Cameron & Trivedi (1998) Regression Analysis of Count Data, section 4.3; standard errors from the observed
 *   information
 * @example zeroTruncatedPoisson({ counts: [1, 3, 2, 5, 4, 6], columns: { stored: [1, 1, 1, 0, 0, 0] } }).terms[1].estimate // -1.13642...
 */
export function zeroTruncatedPoisson(spec: CountSpec): CountFit {
  const design = countDesignOf(spec, 'zeroTruncatedPoisson', 1);
  const climbed = climbPoisson('zeroTruncatedPoisson', design, family);
  return poissonFit(design, climbed, design.names.length);
}

function poissonFit(design: CountDesign, climbed: PoissonClimb, df: number): CountFit {
  const { separatedBy, end } = climbed;
  if (separatedBy.length > 0) return countWithoutFit(design, separatedBy, df, end.convergence);
  return countFitAt(design, climbed, covarianceAt(climbed), poissonMean);
}

function unfitted(fit: CountFit): ZeroTruncatedNegativeBinomialFit {
  const because = fit.convergence.reason;
  return {
    ...fit,
    theta: shapeUnknown(because),
    jointCovariance: null,
    poissonLogLik: null,
    overdispersion: { statistic: null, df: null, p: null, because },
  };
}

function withTheta(
  design: CountDesign,
  climbed: CountClimb,
  poissonLogLik: number,
): ZeroTruncatedNegativeBinomialFit {
  const { point, convergence } = climbed.end;
  const theta = Math.exp(point.gamma.at(-1)!);
  if (theta < leastTheta) {
    const reason = 'logarithmic-limit';
    return unfitted(
      countWithoutFit(design, [], design.names.length + 1, { ...convergence, settled: false, reason }),
    );
  }
  const joint = covarianceAt(climbed);
  const fit = countFitAt(design, climbed, joint, (mu) => mu / -Math.expm1(-theta * Math.log1p(mu / theta)));
  if (fit.logLik === null || joint === null) return unfitted(fit);
  return {
    ...fit,
    theta: shapeAt(point, joint),
    jointCovariance: joint,
    poissonLogLik,
    overdispersion: overdispersionTest(fit.logLik, poissonLogLik),
  };
}

/**
 * Zero-truncated negative binomial regression (NB2) with a log link, theta estimated with the coefficients.
 *
 * Answers by what factor the seeds of a fruit change with the columns, where flowers without seeds set no fruit and so are
 * not among the counts. Not for counts that could have been 0 (see `negativeBinomial`).
 *
 * The coefficients act on the mean mu that the count would have with its zeros, of variance mu + mu² / theta; `fitted` is
 * the mean without them. All standard errors from the observed information of coefficients and log theta together. Where
 * counts vary no more than a zero-truncated Poisson's, theta is null because `no-overdispersion` and the fit is that of
 * `zeroTruncatedPoisson`. The numbers are null where they have no maximum: `convergence.reason` is `separated` (a level
 * whose counts are all 1), or `logarithmic-limit` where theta and all means go to zero together, which happens with many
 * ones beside a few very large counts.
 *
 * @param spec n rows of counts of at least 1, p columns, an exposure; see `CountSpec`
 * @returns a finished fit; `waldIntervals` makes the ranges of its terms
 * @throws RangeError when the rules of `CountSpec` are broken, a count is 0, there is no column, more columns than rows,
 *   or a column that is a linear combination of others (it is named)
 * @source Cameron & Trivedi (1998) Regression Analysis of Count Data, section 4.3; Johnson, Kemp & Kotz (2005) Univariate
 *   Discrete Distributions, 5.11 and 7.1 for the logarithmic limit
 * @example zeroTruncatedNegativeBinomial({ counts: [1, 9, 2, 15, 4, 36], columns: { stored: [1, 1, 1, 0, 0, 0] } }).theta.estimate // 1.15569...
 */
export function zeroTruncatedNegativeBinomial(spec: CountSpec): ZeroTruncatedNegativeBinomialFit {
  const caller = 'zeroTruncatedNegativeBinomial';
  const design = countDesignOf(spec, caller, 1);
  const poisson = climbPoisson(caller, design, family);
  const limit = poissonFit(design, poisson, design.names.length + 1);
  if (limit.logLik === null) return unfitted(limit);
  const climbed = climbOverdispersed(design, family, poisson);
  if (climbed !== null) return withTheta(design, climbed, limit.logLik);
  return {
    ...unfitted(limit),
    theta: shapeUnknown('no-overdispersion'),
    poissonLogLik: limit.logLik,
    overdispersion: overdispersionTest(limit.logLik, limit.logLik),
  };
}
