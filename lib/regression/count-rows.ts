/** Log-likelihoods of one count: Poisson and negative binomial, as they are or given that the count is not zero. */

import { type RisingFactorial, risingFactorial } from './rising-factorial.ts';
import type { RowSlopes } from './shape-climb.ts';

/** Writes the log-likelihood of a count without its −log count!; `logTheta` is of no meaning to the Poisson ones. */
export type CountLikelihood = (count: number, eta: number, logTheta: number, slopes: RowSlopes) => void;

/** Poisson: mean and variance mu = exp(eta). */
export function poissonRow(count: number, eta: number, _logTheta: number, slopes: RowSlopes): void {
  const mu = Math.exp(eta);
  slopes.value = count * eta - mu;
  slopes.eta = count - mu;
  slopes.etaEta = -mu;
}

const rise: RisingFactorial = { log: 0, first: 0, second: 0 };

/**
 * Negative binomial with mean mu = exp(eta) and variance mu + mu² / theta.
 *
 * Written so that it goes to `poissonRow` digit by digit as theta grows. Source: Lawless (1987) Canadian Journal of
 * Statistics 15, 209–225, with a = 1 / theta.
 */
export function negativeBinomialRow(count: number, eta: number, logTheta: number, slopes: RowSlopes): void {
  const mu = Math.exp(eta);
  const theta = Math.exp(logTheta);
  const sum = theta + mu;
  const logSum = Math.log1p(mu / theta);
  risingFactorial(theta, count, rise);
  slopes.value = rise.log + count * eta - (count + theta) * logSum;
  slopes.eta = ((count - mu) * theta) / sum;
  slopes.etaEta = -((count + theta) / sum) * ((theta * mu) / sum);
  slopes.shape = theta * (rise.first - logSum + (mu - count) / sum);
  slopes.etaShape = ((count - mu) / sum) * ((mu * theta) / sum);
  const byTheta = rise.second + mu / (theta * sum) + (count - mu) / (sum * sum);
  slopes.shapeShape = slopes.shape + theta * theta * byTheta;
}

/**
 * Adds −log(1 − exp(−t)), which conditions on a count above 0, exp(−t) being the probability of 0; `t` holds t in
 * `value` and its derivatives.
 */
function truncate(t: RowSlopes, slopes: RowSlopes): void {
  const first = -1 / Math.expm1(t.value);
  const second = first * (first - 1);
  slopes.value -= Math.log(-Math.expm1(-t.value));
  slopes.eta += first * t.eta;
  slopes.etaEta += first * t.etaEta + second * t.eta * t.eta;
  slopes.shape += first * t.shape;
  slopes.etaShape += first * t.etaShape + second * t.eta * t.shape;
  slopes.shapeShape += first * t.shapeShape + second * t.shape * t.shape;
}

/** Poisson given a count of at least 1; mu = exp(eta) is the mean with the zeros. */
export function truncatedPoissonRow(count: number, eta: number, logTheta: number, slopes: RowSlopes): void {
  const mu = Math.exp(eta);
  poissonRow(count, eta, logTheta, slopes);
  truncate({ value: mu, eta: mu, etaEta: mu, shape: 0, etaShape: 0, shapeShape: 0 }, slopes);
}

/** Negative binomial given a count of at least 1; mu = exp(eta) is the mean with the zeros. */
export function truncatedNegativeBinomialRow(
  count: number,
  eta: number,
  logTheta: number,
  slopes: RowSlopes,
): void {
  const mu = Math.exp(eta);
  const theta = Math.exp(logTheta);
  const part = mu / (theta + mu);
  const value = theta * Math.log1p(mu / theta);
  const shape = value - theta * part;
  negativeBinomialRow(count, eta, logTheta, slopes);
  truncate(
    {
      value,
      eta: theta * part,
      etaEta: theta * part * (1 - part),
      shape,
      etaShape: theta * part * part,
      shapeShape: shape - theta * part * part,
    },
    slopes,
  );
}
