/** A finished fit of a binomial response: immutable; intervals, tests and predictions are functions of it. */

import type { Design } from './design.ts';

export type Link = 'logit' | 'probit' | 'cloglog';
export type FitMethod = 'maximum-likelihood' | 'firth';

/** How the iteration ended. When `settled` is false the estimates must not be shown. */
export interface Convergence {
  readonly settled: boolean;
  readonly iterations: number;
  /** Largest absolute score at the end. */
  readonly gradient: number;
  readonly reason: string;
}

/** One coefficient with its standard error (from the inverse Fisher information at the estimate). */
export interface Term {
  readonly term: string;
  readonly estimate: number;
  readonly se: number;
}

/** A finished fit: what was estimated, how sure, and whether the iteration settled. */
export interface Fit {
  readonly method: FitMethod;
  readonly link: Link;
  readonly design: Design;
  readonly terms: readonly Term[];
  /** p coefficients, in the order of `design.names`. */
  readonly coefficients: Float64Array;
  /** p × p covariance of the coefficients, row by row. */
  readonly covariance: Float64Array;
  /** Fitted probabilities, one a row. */
  readonly fitted: Float64Array;
  /** Log-likelihood with the binomial coefficients, as R's `logLik`. */
  readonly logLik: number;
  /** Log-likelihood without the binomial coefficients plus half the log determinant of the information; Firth only. */
  readonly penalisedLogLik: number | null;
  readonly deviance: number;
  readonly df: number;
  /** Whether maximum likelihood is infinite on this design; `separatedBy` names the columns that cause it. */
  readonly separated: boolean;
  readonly separatedBy: readonly string[];
  readonly convergence: Convergence;
  /** True where `correctIntercept` moved the intercept: the coefficients are then no maximum of the likelihood. */
  readonly interceptCorrected?: boolean;
}
