/** Akaike's information criterion of a fit. */

import type { Convergence } from './fit.ts';
import { unsettledBecause } from './terms.ts';

/** What a fit must tell: fits of `logistic`, `mixedLogistic`, `betaBinomial`, `negativeBinomial` and the truncated ones. */
export interface LikelihoodFit {
  readonly logLik: number | null;
  /** Number of parameters estimated, variances and shapes among them. */
  readonly df: number;
  readonly convergence: Convergence;
  readonly method?: string;
  readonly interceptCorrected?: boolean;
}

/** A criterion, or why there is none. */
export interface Criterion {
  readonly estimate: number | null;
  readonly because?: string;
}

/**
 * Akaike's information criterion: −2 log-likelihood + 2 df.
 *
 * Answers which of several models of the same rows is expected to predict new rows better: the one with the smaller
 * value; differences below about 2 tell nothing. Not for fits of different rows, nor to compare random-effects
 * structures (a variance of 0 lies on the boundary), nor between row-wise and grouped data of one season, whose
 * log-likelihoods differ by the binomial coefficients. For few rows see `leaveOneOut`.
 *
 * @param fit a fit by maximum likelihood
 * @returns `estimate`, or null with `because` where the fit has not settled (`separated`, `not-settled` and others)
 * @throws RangeError for Firth's fits and for a corrected intercept, which do not maximise the likelihood
 * @source Akaike (1974) IEEE Transactions on Automatic Control 19, 716–723; as R's `AIC`
 * @example aic(logistic({ successes: [2, 8], trials: [10, 10], columns: { stored: [1, 0] } })).estimate // 8.78944...
 */
export function aic(fit: LikelihoodFit): Criterion {
  if (fit.method === 'firth' || fit.interceptCorrected) {
    const got = fit.interceptCorrected ? 'one with a corrected intercept' : "one with Firth's penalty";
    throw new RangeError(`aic: fit must be a maximum of the likelihood, got ${got}`);
  }
  const because = unsettledBecause(fit);
  if (because !== null) return { estimate: null, because };
  if (fit.logLik === null) return { estimate: null, because: 'not-settled' };
  return { estimate: 2 * (fit.df - fit.logLik) };
}
