import { checkNumber, checkPositive, checkProbability } from './arguments.ts';
import { findIncreasingRoot } from './find-root.ts';
import { type LogOption, normalQuantile, type Tail, type TailOption } from './normal.ts';
import { digamma, shareDeviance, stirlingError, trigamma } from './special-functions.ts';

const TINY = 1e-300;
const CLOSE = 5e-16;
const MOST_TERMS = 10_000_000;
const LOG_TWO_PI = 1.8378770664093453;

/** log of x^a y^b / B(a, b), y = 1 − x, by Loader's saddle-point form. */
function logKernel(x: number, y: number, a: number, b: number): number {
  const n = a + b;
  const errors = stirlingError(n) - stirlingError(a) - stirlingError(b);
  return errors - shareDeviance(a, b, x, y) + 0.5 * (Math.log(a) + Math.log(b / n) - LOG_TWO_PI);
}

/** What a (x − mean) comes to, a − (a + b) x, from the smaller of x and y = 1 − x. */
function distance(x: number, y: number, a: number, b: number): number {
  return x < y ? a - (a + b) * x : (a + b) * y - b;
}

/**
 * Continued fraction of the incomplete beta function over x^a y^b / B(a, b), by Lentz's method.
 *
 * The form of DiDonato & Morris works with `distance`, so that it keeps its digits at x near 1 and large a (Student's t).
 *
 * @source DiDonato & Morris (1992) ACM Transactions on Mathematical Software 18, 360–373, equation 9
 */
function continuedFraction(x: number, y: number, a: number, b: number): number {
  const lambda = distance(x, y, a, b);
  let d = (a + 1) / (a * (lambda + 1)) || TINY;
  let c = 1 / TINY;
  let h = d;
  let delta = 0;
  for (let n = 1; n < MOST_TERMS && Math.abs(delta - 1) > CLOSE; n += 1) {
    const at = a + (2 * n - 1);
    const shrink = (n * (b - n) * x) / at;
    const numerator = (((a + (n - 1)) * (a + b + (n - 1))) / at) * x * shrink;
    const denominator = n + shrink + ((a + n) / (at + 2)) * (lambda + 1 + n * (1 + y));
    d = 1 / (denominator + numerator * d || TINY);
    c = denominator + numerator / c || TINY;
    delta = d * c;
    h *= delta;
  }
  return h;
}

/** Both tails at a point, and their slope. */
export interface BetaTails {
  readonly lower: number;
  readonly upper: number;
  /** x (1 − x) times the density: the slope of a tail in the logit of x. */
  readonly slope: number;
}

/** Both tails of a beta variable at x; y = 1 − x is given apart, so that neither loses digits near 0 or 1. */
export function betaTails(x: number, y: number, a: number, b: number): BetaTails {
  const slope = Math.exp(logKernel(x, y, a, b));
  if (distance(x, y, a, b) > x - y) {
    const lower = Math.min(1, slope * continuedFraction(x, y, a, b));
    return { lower, upper: 1 - lower, slope };
  }
  const upper = Math.min(1, slope * continuedFraction(y, x, b, a));
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
 * @param shape1 number above 0; the mean is shape1 / (shape1 + shape2)
 * @param shape2 number above 0
 * @param options `log: true` for its natural logarithm
 * @returns density at x; Infinity at an end where its shape is below 1
 * @throws RangeError or TypeError naming the argument
 * @source Loader (2000) Fast and accurate computation of binomial probabilities
 * @example betaDensity(0.3, 2, 5) // 2.1609
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
 * @param shape1 number above 0
 * @param shape2 number above 0
 * @param options `tail`, `lower` by default
 * @returns probability, to about 1e-12 relatively for shapes of at least 0.01
 * @throws RangeError or TypeError naming the argument
 * @source DiDonato & Morris (1992) ACM Transactions on Mathematical Software 18, 360–373; prefactor of Loader (2000)
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

/** log of a B(a, b), by which x^a is divided in the lower tail at the smallest x. */
export function logEdge(a: number, b: number): number {
  const n = a + b;
  const logRest = a < b ? Math.log1p(-a / n) : Math.log(b / n);
  const errors = stirlingError(a) + stirlingError(b) - stirlingError(n);
  return (
    errors + 0.5 * (LOG_TWO_PI + Math.log(a) + Math.log(n) - Math.log(b)) + a * Math.log(a / n) + b * logRest
  );
}

/** Where x b is below this, the lower tail is x^a / (a B(a, b)) to the last digit (Abramowitz & Stegun 1964, 26.5.4). */
export const EDGE = 1e-18;

/** log of the quantile where that lies at the edge 0, even below the smallest double; else null. */
function edgeQuantile(logP: number, a: number, b: number): number | null {
  const logX = (logP + logEdge(a, b)) / a;
  return logX < Math.log(EDGE) - Math.log1p(b) ? logX : null;
}

/**
 * Logit of the quantile, which keeps x and 1 − x both exact; 0 < p < 1.
 *
 * The logit of a beta variable has a log-concave density, so the logarithm of either tail is concave in it and
 * Newton's method needs no luck. It starts from the exact mean and variance of the logit.
 */
export function logitQuantile(p: number, a: number, b: number, tail: Tail): number {
  const small = p <= 0.5 ? p : 1 - p;
  const side = p <= 0.5 === (tail === 'lower') ? 'lower' : 'upper';
  const sign = side === 'lower' ? 1 : -1;
  const target = Math.log(small);
  const edge = side === 'lower' ? edgeQuantile(target, a, b) : edgeQuantile(target, b, a);
  if (edge !== null) return sign * edge;
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
 * @param shape1 number above 0
 * @param shape2 number above 0
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
