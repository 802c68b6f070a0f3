/** The binomial response: links, fitted means, working weights, scores and log-likelihood. */

import { expMinus } from '../numerics/exponential.ts';
import { normalCdf, normalDensity, normalLogCdf, normalQuantile } from '../numerics/normal.ts';
import { logGamma } from '../numerics/special-functions.ts';
import type { Link } from './fit.ts';

/** Where the response of m rows is written: fitted probability, Fisher weight and score of each row. */
export interface RowResponse {
  /** mu, a probability. */
  readonly mean: Float64Array;
  /** trials · (dmu/deta)² / (mu (1 − mu)). */
  readonly weight: Float64Array;
  /** Derivative of the log-likelihood by the linear predictor. */
  readonly score: Float64Array;
}

/** Room for the response of m rows. */
export function emptyResponse(m: number): RowResponse {
  return { mean: new Float64Array(m), weight: new Float64Array(m), score: new Float64Array(m) };
}

/** Counts of m rows. */
export interface Counts {
  readonly successes: Float64Array;
  readonly trials: Float64Array;
}

/** Products of 1 + exp(−|eta|) are this large at most before their logarithm is taken. */
const largeProduct = 1e250;

function respondLogit(eta: Float64Array, { successes, trials }: Counts, target: RowResponse): number {
  const { mean, weight, score } = target;
  let logLik = 0;
  // Rows of one trial share a logarithm, that of their product: it costs as much as all the rest of a row.
  let product = 1;
  for (let i = 0; i < eta.length; i += 1) {
    const x = eta[i]!;
    const m = trials[i]!;
    const e = expMinus(Math.abs(x));
    const larger = 1 / (1 + e);
    const mu = x >= 0 ? larger : e * larger;
    mean[i] = mu;
    weight[i] = m * e * larger * larger;
    score[i] = successes[i]! - m * mu;
    logLik += successes[i]! * x;
    if (x > 0) logLik -= m * x;
    if (m === 1 && e > 1e-4) {
      product *= 1 + e;
      if (product > largeProduct) {
        logLik -= Math.log(product);
        product = 1;
      }
    } else logLik -= m * Math.log1p(e);
  }
  return logLik - Math.log(product);
}

function respondProbit(eta: Float64Array, { successes, trials }: Counts, target: RowResponse): number {
  let logLik = 0;
  for (let i = 0; i < eta.length; i += 1) {
    const logBelow = normalLogCdf(eta[i]!);
    const logAbove = normalLogCdf(-eta[i]!);
    const logDensity = normalDensity(eta[i]!, { log: true });
    const failures = trials[i]! - successes[i]!;
    target.mean[i] = normalCdf(eta[i]!);
    target.weight[i] = trials[i]! * Math.exp(2 * logDensity - logBelow - logAbove);
    target.score[i] =
      successes[i]! * Math.exp(logDensity - logBelow) - failures * Math.exp(logDensity - logAbove);
    if (successes[i]! > 0) logLik += successes[i]! * logBelow;
    if (failures > 0) logLik += failures * logAbove;
  }
  return logLik;
}

/** log(1 − exp(−exp(eta))), also where exp(eta) is lost in 1. */
function logCloglogMean(eta: number): number {
  return eta < -36 ? eta : Math.log(-Math.expm1(-Math.exp(eta)));
}

function respondCloglog(eta: Float64Array, { successes, trials }: Counts, target: RowResponse): number {
  let logLik = 0;
  for (let i = 0; i < eta.length; i += 1) {
    const hazard = Math.exp(Math.min(eta[i]!, 700));
    const failures = trials[i]! - successes[i]!;
    // hazard / (exp(hazard) − 1), the odds of failure times the hazard.
    const ratio = hazard === 0 ? 1 : hazard / Math.expm1(hazard);
    target.mean[i] = -Math.expm1(-hazard);
    target.weight[i] = trials[i]! * hazard * ratio;
    target.score[i] = successes[i]! * ratio - failures * hazard;
    if (successes[i]! > 0) logLik += successes[i]! * logCloglogMean(eta[i]!);
    if (failures > 0) logLik -= failures * hazard;
  }
  return logLik;
}

/**
 * Evaluates the binomial response at a linear predictor.
 *
 * @param link `logit`, `probit` or `cloglog` (complementary log-log)
 * @param eta linear predictor, m rows
 * @param counts successes and trials, m rows
 * @param target receives mean, weight and score
 * @returns log-likelihood without the binomial coefficients
 * @source McCullagh & Nelder (1989) Generalized Linear Models, section 4.4
 */
export function respond(link: Link, eta: Float64Array, counts: Counts, target: RowResponse): number {
  if (link === 'logit') return respondLogit(eta, counts, target);
  return link === 'probit' ? respondProbit(eta, counts, target) : respondCloglog(eta, counts, target);
}

/** Probability at a linear predictor. */
export function linkInverse(link: Link, eta: number): number {
  if (link === 'probit') return normalCdf(eta);
  if (link === 'cloglog') return -Math.expm1(-Math.exp(eta));
  const e = expMinus(Math.abs(eta));
  return eta >= 0 ? 1 / (1 + e) : e / (1 + e);
}

/** Derivative of the probability by the linear predictor. */
export function linkSlope(link: Link, eta: number): number {
  if (link === 'probit') return normalDensity(eta);
  if (link === 'cloglog') return Math.exp(eta - Math.exp(eta));
  const e = expMinus(Math.abs(eta));
  return e / ((1 + e) * (1 + e));
}

/** Linear predictor at a probability strictly between 0 and 1. */
export function linkFunction(link: Link, mu: number): number {
  if (link === 'probit') return normalQuantile(mu);
  return link === 'cloglog' ? Math.log(-Math.log1p(-mu)) : Math.log(mu / (1 - mu));
}

/** Sum of the logarithms of the binomial coefficients: what `logLik` adds to the kernel of the likelihood. */
export function logBinomialCoefficients({ successes, trials }: Counts): number {
  let sum = 0;
  for (let i = 0; i < trials.length; i += 1) {
    const failures = trials[i]! - successes[i]!;
    if (successes[i]! > 0 && failures > 0) {
      sum += logGamma(trials[i]! + 1) - logGamma(successes[i]! + 1) - logGamma(failures + 1);
    }
  }
  return sum;
}

/** Log-likelihood of the saturated model, without the binomial coefficients. */
export function saturatedLogLik({ successes, trials }: Counts): number {
  let sum = 0;
  for (let i = 0; i < trials.length; i += 1) {
    const failures = trials[i]! - successes[i]!;
    if (successes[i]! > 0 && failures > 0) {
      sum +=
        successes[i]! * Math.log(successes[i]! / trials[i]!) + failures * Math.log(failures / trials[i]!);
    }
  }
  return sum;
}
