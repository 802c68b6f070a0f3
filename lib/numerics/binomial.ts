import { checkNumber, checkProbability, checkWhole } from './arguments.ts';
import { betaCdf } from './beta.ts';
import type { LogOption, TailOption } from './normal.ts';
import { shareDeviance, stirlingError } from './special-functions.ts';

const LOG_TWO_PI = 1.8378770664093453;

/** Slack for rounding in a quantile, so that the quantile of a computed cdf is the point it was computed at. */
const SLACK = 64 * Number.EPSILON;

/** n log q with q = 1 − p, from whichever of the two is known better. */
function powerLog(n: number, p: number, q: number): number {
  return p < 0.1 ? n * Math.log1p(-p) : n * Math.log(q);
}

/** log of the binomial probability of x in n, q = 1 − p given apart (Loader 2000, section 4). */
export function logBinomialTerm(x: number, n: number, p: number, q: number): number {
  if (x < 0 || x > n) return -Infinity;
  if (p === 0) return x === 0 ? 0 : -Infinity;
  if (q === 0) return x === n ? 0 : -Infinity;
  if (n === 0) return 0;
  if (x === 0) return powerLog(n, p, q);
  if (x === n) return powerLog(n, q, p);
  const errors = stirlingError(n) - stirlingError(x) - stirlingError(n - x);
  return errors - shareDeviance(x, n - x, p, q) - 0.5 * (LOG_TWO_PI + Math.log(x) + Math.log((n - x) / n));
}

/**
 * Probability of x successes in n trials, binomial distribution.
 *
 * @param x number; the probability is 0 where it is not a whole number from 0 to n
 * @param trials n, a whole number of at least 0
 * @param probability p, from 0 to 1
 * @param options `log: true` for its natural logarithm
 * @returns probability of x
 * @throws RangeError or TypeError naming the argument
 * @source Loader (2000) Fast and accurate computation of binomial probabilities
 * @example binomialDensity(2, 5, 0.5) // 0.3125
 */
export function binomialDensity(
  x: number,
  trials: number,
  probability: number,
  { log = false }: LogOption = {},
): number {
  checkBinomial('binomialDensity', x, trials, probability);
  const value = Number.isInteger(x) ? logBinomialTerm(x, trials, probability, 1 - probability) : -Infinity;
  return log ? value : Math.exp(value);
}

function checkBinomial(caller: string, x: number, trials: number, probability: number): void {
  checkNumber(caller, 'x', x);
  checkWhole(caller, 'trials', trials);
  checkProbability(caller, 'probability', probability);
}

/**
 * Cumulative distribution function of the binomial distribution.
 *
 * Answers P(X ≤ x), or P(X > x) with `tail: 'upper'` (x itself is never in the upper tail).
 *
 * @param x number
 * @param trials n, a whole number of at least 0
 * @param probability p, from 0 to 1
 * @param options `tail`, `lower` by default
 * @returns probability
 * @throws RangeError or TypeError naming the argument
 * @source Abramowitz & Stegun (1964) 26.5.24, by the incomplete beta function
 * @example binomialCdf(2, 5, 0.5) // 0.5
 */
export function binomialCdf(
  x: number,
  trials: number,
  probability: number,
  { tail = 'lower' }: TailOption = {},
): number {
  checkBinomial('binomialCdf', x, trials, probability);
  const whole = Math.floor(x);
  if (whole < 0) return tail === 'lower' ? 0 : 1;
  if (whole >= trials) return tail === 'lower' ? 1 : 0;
  // X > x exactly where a beta(x + 1, n − x) variable lies below p.
  return betaCdf(probability, whole + 1, trials - whole, { tail: tail === 'lower' ? 'upper' : 'lower' });
}

/**
 * The smallest whole number from `lower` to `upper` at which an increasing condition holds; it holds at `upper`.
 */
export function firstWhole(lower: number, upper: number, holds: (x: number) => boolean): number {
  let [below, at] = [lower - 1, upper];
  while (at - below > 1) {
    const middle = Math.floor((below + at) / 2);
    if (holds(middle)) at = middle;
    else below = middle;
  }
  return at;
}

/** Whether a tail at x, as the cdf returns it, is enough for p: P(X ≤ x) ≥ p or P(X > x) ≤ p, up to rounding. */
export function reaches(p: number, tailAtX: number, { tail = 'lower' }: TailOption): boolean {
  return tail === 'lower' ? tailAtX >= p * (1 - SLACK) : tailAtX <= p * (1 + SLACK);
}

/**
 * Quantile function of the binomial distribution.
 *
 * Answers the smallest x with P(X ≤ x) ≥ p, or with P(X > x) ≤ p for `tail: 'upper'`.
 *
 * @param p probability, from 0 to 1
 * @param trials n, a whole number of at least 0
 * @param probability of a success, from 0 to 1
 * @param options `tail`, `lower` by default
 * @returns a whole number from 0 to n
 * @throws RangeError or TypeError naming the argument
 * @source the definition, by bisection
 * @example binomialQuantile(0.5, 10, 0.3) // 3
 */
export function binomialQuantile(
  p: number,
  trials: number,
  probability: number,
  options: TailOption = {},
): number {
  checkProbability('binomialQuantile', 'p', p);
  checkBinomial('binomialQuantile', 0, trials, probability);
  return firstWhole(0, trials, (x) => reaches(p, binomialCdf(x, trials, probability, options), options));
}
