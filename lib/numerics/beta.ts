import { checkNumber, checkPositive, checkProbability } from './arguments.ts';
import { findIncreasingRoot } from './find-root.ts';
import { type LogOption, normalQuantile, type Tail, type TailOption } from './normal.ts';
import { devianceTerm, digamma, stirlingError, trigamma } from './special-functions.ts';

const TINY = 1e-300;
const CLOSE = 5e-16;
const MOST_TERMS = 10_000_000;
const LOG_TWO_PI = 1.8378770664093453;

/** log of x^a y^b / B(a, b), y = 1 − x, by Loader's saddle-point form. */
function logKernel(x: number, y: number, a: number, b: number): number {
  const n = a + b;
  const errors = stirlingError(n) - stirlingError(a) - stirlingError(b);
  const deviance = devianceTerm(a, n * x) + devianceTerm(b, n * y);
  return errors - deviance + 0.5 * (Math.log(a) + Math.log(b / n) - LOG_TWO_PI);
}

/** Continued fraction of the incomplete beta function, by Lentz's method (Press et al. 2007, 6.4.5). */
function continuedFraction(x: number, a: number, b: number): number {
  let c = 1;
  let d = 1 / (1 - ((a + b) * x) / (a + 1) || TINY);
  let h = d;
  let delta = 0;
  for (let m = 1; m < MOST_TERMS && Math.abs(delta - 1) > CLOSE; m += 1) {
    const at = a + 2 * m;
    const even = (m * (b - m) * x) / ((at - 1) * at);
    d = 1 / (1 + even * d || TINY);
    c = 1 + even / c || TINY;
    h *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / (at * (at + 1));
    d = 1 / (1 + odd * d || TINY);
    c = 1 + odd / c || TINY;
    delta = d * c;
    h *= delta;
  }
  return h;
}

interface Tails {
  readonly lower: number;
  readonly upper: number;
  /** x (1 − x) times the density: the slope of a tail in the logit of x. */
  readonly slope: number;
}

/** Both tails of a beta variable at x; y = 1 − x is given apart, so that neither loses digits near 0 or 1. */
function betaTails(x: number, y: number, a: number, b: number): Tails {
  const slope = Math.exp(logKernel(x, y, a, b));
  if (x * (a + b + 2) < a + 1) {
    const lower = Math.min(1, (slope * continuedFraction(x, a, b)) / a);
    return { lower, upper: 1 - lower, slope };
  }
  const upper = Math.min(1, (slope * continuedFraction(y, b, a)) / b);
  return { lower: 1 - upper, upper, slope };
}

function checkShapes(caller: string, shape1: number, shape2: number): void {
  checkPositive(caller, 'shape1', shape1);
  checkPositive(caller, 'shape2', shape2);
}

/**
 * Density of the beta distribution.
 *
 * @param x number; the density is 0 outside 0 to 1
 * @param shape1, shape2 numbers above 0; the mean is shape1 / (shape1 + shape2)
 * @param options `log: true` for its natural logarithm
 * @returns density at x; Infinity at an end where its shape is below 1
 * @throws RangeError or TypeError naming the argument
 * @source Loader (2000) Fast and accurate computation of binomial probabilities
 * @example betaDensity(0.5, 2, 2) // 1.5
 */
export function betaDensity(
  x: number,
  shape1: number,
  shape2: number,
  { log = false }: LogOption = {},
): number {
  checkNumber('betaDensity', 'x', x);
  checkShapes('betaDensity', shape1, shape2);
  const value = logBetaDensity(x, shape1, shape2);
  return log ? value : Math.exp(value);
}

function logBetaDensity(x: number, a: number, b: number): number {
  if (x < 0 || x > 1) return -Infinity;
  if (x === 0) return a === 1 ? Math.log(b) : a < 1 ? Infinity : -Infinity;
  if (x === 1) return b === 1 ? Math.log(a) : b < 1 ? Infinity : -Infinity;
  return logKernel(x, 1 - x, a, b) - Math.log(x) - Math.log1p(-x);
}

/**
 * Cumulative distribution function of the beta distribution (regularised incomplete beta function).
 *
 * Answers P(X ≤ x), or P(X > x) with `tail: 'upper'`.
 *
 * @param x number
 * @param shape1, shape2 numbers above 0
 * @param options `tail`, `lower` by default
 * @returns probability
 * @throws RangeError or TypeError naming the argument
 * @source Press et al. (2007) Numerical Recipes 6.4; prefactor of Loader (2000)
 * @example betaCdf(0.3, 2, 5) // 0.579825
 */
export function betaCdf(
  x: number,
  shape1: number,
  shape2: number,
  { tail = 'lower' }: TailOption = {},
): number {
  checkNumber('betaCdf', 'x', x);
  checkShapes('betaCdf', shape1, shape2);
  if (x <= 0) return tail === 'lower' ? 0 : 1;
  if (x >= 1) return tail === 'lower' ? 1 : 0;
  return betaTails(x, 1 - x, shape1, shape2)[tail];
}

/**
 * Logit of the quantile, which keeps x and 1 − x both exact; 0 < p < 1.
 *
 * The logit of a beta variable has a log-concave density, so the logarithm of either tail is concave in it and
 * Newton's method needs no luck. It starts from the exact mean and variance of the logit.
 */
function logitQuantile(p: number, a: number, b: number, tail: Tail): number {
  const small = p <= 0.5 ? p : 1 - p;
  const side = p <= 0.5 === (tail === 'lower') ? 'lower' : 'upper';
  const sign = side === 'lower' ? 1 : -1;
  const target = Math.log(small);
  const spread = Math.sqrt(trigamma(a) + trigamma(b));
  const start = digamma(a) - digamma(b) + sign * normalQuantile(small) * spread;
  return findIncreasingRoot((u) => {
    const tails = betaTails(1 / (1 + Math.exp(-u)), 1 / (1 + Math.exp(u)), a, b);
    return [sign * (Math.log(tails[side]) - target), tails.slope / tails[side]];
  }, start);
}

/**
 * Quantile function of the beta distribution.
 *
 * Answers the x that has probability p to its left, or to its right with `tail: 'upper'`.
 *
 * @param p probability, from 0 to 1
 * @param shape1, shape2 numbers above 0
 * @param options `tail`, `lower` by default
 * @returns x, from 0 to 1
 * @throws RangeError or TypeError naming the argument
 * @source Newton's method on the logarithm of the smaller tail against the logit of x
 * @example betaQuantile(0.5, 2, 5) // 0.26444998329566
 */
export function betaQuantile(
  p: number,
  shape1: number,
  shape2: number,
  { tail = 'lower' }: TailOption = {},
): number {
  checkProbability('betaQuantile', 'p', p);
  checkShapes('betaQuantile', shape1, shape2);
  if (p === 0 || p === 1) return p === (tail === 'lower' ? 0 : 1) ? 0 : 1;
  return 1 / (1 + Math.exp(-logitQuantile(p, shape1, shape2, tail)));
}
