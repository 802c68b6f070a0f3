import { checkNumber, checkPositive, checkProbability } from './arguments.ts';
import { findIncreasingRoot } from './find-root.ts';
import { type LogOption, normalQuantile, type TailOption } from './normal.ts';
import { productRest } from './rounding.ts';
import { digamma, restoredDeviance, stirlingError, trigamma } from './special-functions.ts';

const TINY = 1e-300;
const CLOSE = 5e-16;
const MOST_TERMS = 10_000_000;
const LOG_TWO_PI = 1.8378770664093453;

/** log of x^a e^−x / Γ(a + 1) by Loader's saddle-point form; `lost` is what rounding took from x. */
function logPoisson(a: number, x: number, lost: number): number {
  return -stirlingError(a) - restoredDeviance(a, x, lost) - 0.5 * (LOG_TWO_PI + Math.log(a));
}

/** 1 + x/(a+1) + x²/((a+1)(a+2)) + …: the lower tail over its prefactor (Abramowitz & Stegun 1964, 6.5.29). */
function lowerSeries(a: number, x: number): number {
  let term = 1;
  let sum = 1;
  for (let n = 1; n < MOST_TERMS && term > sum * 1e-17; n += 1) {
    term *= x / (a + n);
    sum += term;
  }
  return sum;
}

/** Continued fraction of the upper tail over x^a e^−x / Γ(a), by Lentz's method (Press et al. 2007, 6.2.7). */
function upperFraction(a: number, x: number): number {
  let b = x + 1 - a;
  let c = 1 / TINY;
  let d = 1 / b;
  let h = d;
  let delta = 0;
  for (let i = 1; i < MOST_TERMS && Math.abs(delta - 1) > CLOSE; i += 1) {
    const numerator = -i * (i - a);
    b += 2;
    d = 1 / (numerator * d + b || TINY);
    c = b + numerator / c || TINY;
    delta = d * c;
    h *= delta;
  }
  return h;
}

interface Tails {
  readonly lower: number;
  readonly upper: number;
  /** x times the density: the slope of a tail in log x. */
  readonly slope: number;
}

/** Both tails of a gamma variable with shape a and rate 1 at x ≥ 0; the one computed directly is the smaller or near it. */
function gammaTails(a: number, x: number, lost = 0): Tails {
  if (x === 0) return { lower: 0, upper: 1, slope: 0 };
  if (x === Infinity) return { lower: 1, upper: 0, slope: 0 };
  const prefactor = Math.exp(logPoisson(a, x, lost));
  const slope = a * prefactor;
  if (x < a + 1) {
    const lower = Math.min(1, prefactor * lowerSeries(a, x));
    return { lower, upper: 1 - lower, slope };
  }
  const upper = Math.min(1, slope * upperFraction(a, x));
  return { lower: 1 - upper, upper, slope };
}

/**
 * Density of the gamma distribution.
 *
 * @param x number; the density is 0 below 0
 * @param shape number above 0
 * @param rate number above 0, the inverse of the scale
 * @param options `log: true` for its natural logarithm
 * @returns density at x; Infinity at 0 for a shape below 1
 * @throws RangeError or TypeError naming the argument
 * @source Loader (2000) Fast and accurate computation of binomial probabilities
 * @example gammaDensity(1, 2, 1) // 0.36787944...
 */
export function gammaDensity(x: number, shape: number, rate = 1, { log = false }: LogOption = {}): number {
  checkNumber('gammaDensity', 'x', x);
  checkPositive('gammaDensity', 'shape', shape);
  checkPositive('gammaDensity', 'rate', rate);
  const value = logGammaDensity(x * rate, shape, productRest(x, rate)) + Math.log(rate);
  return log ? value : Math.exp(value);
}

function logGammaDensity(x: number, shape: number, lost: number): number {
  if (x < 0 || x === Infinity) return -Infinity;
  if (x === 0) return shape === 1 ? 0 : shape < 1 ? Infinity : -Infinity;
  return logPoisson(shape, x, lost) + Math.log(shape / x);
}

/**
 * Cumulative distribution function of the gamma distribution.
 *
 * Answers P(X ≤ x), or P(X > x) with `tail: 'upper'`.
 *
 * @param x number
 * @param shape number above 0
 * @param rate number above 0, the inverse of the scale
 * @param options `tail`, `lower` by default
 * @returns probability, to about 1e-12 relatively for shapes of at least 0.01
 * @throws RangeError or TypeError naming the argument
 * @source Press et al. (2007) Numerical Recipes 6.2; prefactor of Loader (2000)
 * @example gammaCdf(1, 2, 1) // 0.26424111765711533
 */
export function gammaCdf(x: number, shape: number, rate = 1, { tail = 'lower' }: TailOption = {}): number {
  checkNumber('gammaCdf', 'x', x);
  checkPositive('gammaCdf', 'shape', shape);
  checkPositive('gammaCdf', 'rate', rate);
  const scaled = x * rate;
  if (scaled <= 0) return tail === 'lower' ? 0 : 1;
  return gammaTails(shape, scaled, productRest(x, rate))[tail];
}

/**
 * Quantile function of the gamma distribution.
 *
 * Answers the x that has probability p to its left, or to its right with `tail: 'upper'`.
 *
 * @param p probability, from 0 to 1
 * @param shape number above 0
 * @param rate number above 0, the inverse of the scale
 * @param options `tail`, `lower` by default
 * @returns x, from 0 to Infinity
 * @throws RangeError or TypeError naming the argument
 * @source Newton's method on the logarithm of the smaller tail against log x, both concave; started from the exact
 *   mean and variance of log X, Abramowitz & Stegun (1964) 6.3 and 6.4
 * @example gammaQuantile(0.5, 2, 1) // 1.6783469900166608
 */
export function gammaQuantile(
  p: number,
  shape: number,
  rate = 1,
  { tail = 'lower' }: TailOption = {},
): number {
  checkProbability('gammaQuantile', 'p', p);
  checkPositive('gammaQuantile', 'shape', shape);
  checkPositive('gammaQuantile', 'rate', rate);
  const lower = tail === 'lower' ? p : 1 - p;
  if (p === 0 || p === 1) return lower === 0 ? 0 : Infinity;
  // The tail that p names is kept exact where it is the smaller one; otherwise its complement is (p ≥ 1/2).
  const small = p <= 0.5 ? p : 1 - p;
  const side = p <= 0.5 === (tail === 'lower') ? 'lower' : 'upper';
  const sign = side === 'lower' ? 1 : -1;
  const target = Math.log(small);
  const start = digamma(shape) + sign * normalQuantile(small) * Math.sqrt(trigamma(shape));
  const logX = findIncreasingRoot((u) => {
    const tails = gammaTails(shape, Math.exp(u));
    return [sign * (Math.log(tails[side]) - target), tails.slope / tails[side]];
  }, start);
  return Math.exp(logX) / rate;
}

/**
 * Cumulative distribution function of the chi-square distribution.
 *
 * Answers P(X ≤ x); a test's p-value is the upper tail.
 *
 * @param x number
 * @param df degrees of freedom, above 0, not necessarily whole
 * @param options `tail`, `lower` by default
 * @returns probability
 * @throws RangeError or TypeError naming the argument
 * @source Abramowitz & Stegun (1964) 26.4.19
 * @example chiSquareCdf(3.841458820694124, 1, { tail: 'upper' }) // 0.05
 */
export function chiSquareCdf(x: number, df: number, options: TailOption = {}): number {
  checkNumber('chiSquareCdf', 'x', x);
  checkPositive('chiSquareCdf', 'df', df);
  return gammaCdf(x, df / 2, 0.5, options);
}

/**
 * Quantile function of the chi-square distribution.
 *
 * @param p probability, from 0 to 1
 * @param df degrees of freedom, above 0
 * @param options `tail`, `lower` by default
 * @returns x, from 0 to Infinity
 * @throws RangeError or TypeError naming the argument
 * @source see `gammaQuantile`
 * @example chiSquareQuantile(0.95, 1) // 3.841458820694124
 */
export function chiSquareQuantile(p: number, df: number, options: TailOption = {}): number {
  checkProbability('chiSquareQuantile', 'p', p);
  checkPositive('chiSquareQuantile', 'df', df);
  return gammaQuantile(p, df / 2, 0.5, options);
}

/**
 * Density of the chi-square distribution.
 *
 * @param x number; the density is 0 below 0
 * @param df degrees of freedom, above 0
 * @param options `log: true` for its natural logarithm
 * @returns density at x
 * @throws RangeError or TypeError naming the argument
 * @source Abramowitz & Stegun (1964) 26.4; see `gammaDensity`
 * @example chiSquareDensity(2, 4) // 0.18393972058572117
 */
export function chiSquareDensity(x: number, df: number, options: LogOption = {}): number {
  checkNumber('chiSquareDensity', 'x', x);
  checkPositive('chiSquareDensity', 'df', df);
  return gammaDensity(x, df / 2, 0.5, options);
}
