import { checkFinite, checkPositive } from './arguments.ts';

const MOST_STEPS = 300;

/** Newton's method is done in ten steps where it does any good; after these, bisection is surer. */
const NEWTON_STEPS = 40;

/** Option of `findRoot`: `tolerance` is the width of the last bracket, relative to the root. */
export interface FindRootOptions {
  readonly tolerance?: number;
}

/**
 * Root of a continuous function of one variable in a bracket, by Chandrupatla's method.
 *
 * Answers where `f` crosses zero between `lower` and `upper`. Inverse quadratic interpolation where the last three
 * points allow it, else bisection: never slower than about three times bisection. Not for a root that only touches
 * zero, nor for several roots (one of them is returned).
 *
 * @param f continuous function; infinite values are allowed, they only steer the bisection
 * @param lower an end of the bracket
 * @param upper the other, where `f` has the opposite sign (or is zero)
 * @param options `tolerance`, relative to the root (default and least: 2^−52)
 * @returns the root
 * @throws RangeError when the ends are not finite, or `f` has the same sign at both or is not a number there
 * @source Chandrupatla (1997) Advances in Engineering Software 28, 145–149
 * @example findRoot((x) => x * x - 2, 0, 2) // 1.41421356...
 */
export function findRoot(
  f: (x: number) => number,
  lower: number,
  upper: number,
  options: FindRootOptions = {},
): number {
  const { tolerance = Number.EPSILON } = options;
  checkFinite('findRoot', 'lower', lower);
  checkFinite('findRoot', 'upper', upper);
  checkPositive('findRoot', 'tolerance', tolerance);
  let [a, b, c] = [upper, lower, upper];
  let [fa, fb, fc] = [f(upper), f(lower), 0];
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (!(fa > 0 !== fb > 0) || Number.isNaN(fa) || Number.isNaN(fb)) {
    throw new RangeError(
      `findRoot: f must have opposite signs at lower and upper, got ${fb} at ${lower} and ${fa} at ${upper}`,
    );
  }
  let t = 0.5;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const x = a + t * (b - a);
    const fx = f(x);
    if (fx > 0 === fa > 0) [c, fc] = [a, fa];
    else [c, b, fc, fb] = [b, a, fb, fa];
    [a, fa] = [x, fx];
    const best = Math.abs(fa) < Math.abs(fb) ? a : b;
    const width = Math.max(tolerance, Number.EPSILON) * Math.abs(best) + Number.MIN_VALUE;
    const least = width / Math.abs(b - a);
    if (fx === 0) return x;
    if (least > 0.5) return best;
    t = Math.min(1 - least, Math.max(least, interpolated(a, b, c, fa, fb, fc)));
  }
  return Math.abs(fa) < Math.abs(fb) ? a : b;
}

/** Where between a and b the inverse parabola through three points crosses zero; the middle where it may not. */
function interpolated(a: number, b: number, c: number, fa: number, fb: number, fc: number): number {
  const xi = (a - b) / (c - b);
  const phi = (fa - fb) / (fc - fb);
  if (!(phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi)) return 0.5;
  return (fa / (fb - fa)) * (fc / (fb - fc)) + ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb));
}

/**
 * Root of an increasing function whose derivative is known, by Newton's method kept inside a bracket.
 *
 * Answers where `f` crosses zero when no bracket is known beforehand. A Newton step that leaves the bracket is replaced
 * by its middle; while the bracket is still open on that side, a step is limited, and the limit doubled. `f` may return -Infinity or
 * Infinity (a tail that underflows).
 *
 * @param f increasing function; returns its value and its slope at x
 * @param start first guess, a finite number
 * @returns the root, to about 4e-16 · (1 + |root|)
 * @throws RangeError when `start` is not finite
 * @source Press et al. (2007) Numerical Recipes, section 9.4 (rtsafe)
 * @example findIncreasingRoot((x) => [Math.exp(x) - 3, Math.exp(x)], 0) // 1.09861228...
 */
export function findIncreasingRoot(
  f: (x: number) => readonly [value: number, slope: number],
  start: number,
): number {
  checkFinite('findIncreasingRoot', 'start', start);
  let lower = -Infinity;
  let upper = Infinity;
  let x = start;
  let reach = 8;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const [value, slope] = f(x);
    if (value === 0) return x;
    if (value > 0) upper = x;
    else lower = x;
    let next = step < NEWTON_STEPS ? x - value / slope : Number.NaN;
    const close = 4e-16 * (1 + Math.abs(x));
    if (Math.abs(next - x) <= close) return next;
    if (upper - lower <= close) return x;
    const open = value > 0 ? lower === -Infinity : upper === Infinity;
    if (open && !(Math.abs(next - x) <= reach)) {
      next = value > 0 ? x - reach : x + reach;
      reach *= 2;
    } else if (!(next > lower && next < upper)) {
      next = lower + (upper - lower) / 2;
    }
    x = next;
  }
  return x;
}
