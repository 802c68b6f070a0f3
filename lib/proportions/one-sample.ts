import { checkCounts } from '../numerics/arguments.ts';
import { normalQuantile } from '../numerics/normal.ts';
import { checkLevel, type Interval, type LevelOption } from './interval.ts';

/** Options of `wilson` and `newcombe`: `continuity` adds half a success against the data; false by default. */
export interface ContinuityOption extends LevelOption {
  readonly continuity?: boolean;
}

/** The z that leaves (1 − level) / 2 in each tail. */
export function twoSidedZ(level: number): number {
  return normalQuantile((1 - level) / 2, { tail: 'upper' });
}

/**
 * The roots p of (x − n p)² = z² n p (1 − p), 0 < x < n. The upper root adds what the lower one would subtract; the
 * lower one comes from their product x² / (n (n + z²)), so that 7 of a billion keeps its digits.
 */
function scoreRoots(x: number, n: number, z: number): { lower: number; upper: number } {
  const spread = z * Math.sqrt((z * z) / 4 + x * ((n - x) / n));
  const upper = (x + (z * z) / 2 + spread) / (n + z * z);
  return { lower: (x * (x / n)) / ((n + z * z) * upper), upper };
}

/**
 * Wilson's score interval for one proportion.
 *
 * Answers between which values the chance of success lies, given a count: the values that a score test would not
 * reject. The workhorse: close to its level on average even for few trials, never outside 0 to 1, never of width 0.
 * Not for trials that depend on each other (flowers of one morning), and not where the level is a guarantee that must
 * never be missed: see `clopperPearson`.
 *
 * @param successes x, a whole number from 0 to n
 * @param trials n, a whole number of at least 1
 * @param options `level` in (0, 1), 0.95 by default; `continuity: true` for Newcombe's method 4, with 0 and 1 forced at
 *   x = 0 and x = n (R's prop.test drops the correction at x = n/2, this one never does)
 * @returns `estimate` x / n with the ends; `lower` is exactly 0 at x = 0, `upper` exactly 1 at x = n
 * @throws RangeError or TypeError naming the argument
 * @source Wilson (1927) JASA 22, 209–212; Newcombe (1998) Statistics in Medicine 17, 857–872, methods 3 and 4
 * @example wilson(7, 20) // { estimate: 0.35, lower: 0.1811918..., upper: 0.5671457... }
 */
export function wilson(
  successes: number,
  trials: number,
  { level = 0.95, continuity = false }: ContinuityOption = {},
): Interval {
  checkCounts('wilson', successes, trials);
  checkLevel('wilson', level);
  const z = twoSidedZ(level);
  const shift = continuity ? 0.5 : 0;
  return {
    estimate: successes / trials,
    lower: successes === 0 ? 0 : scoreRoots(successes - shift, trials, z).lower,
    upper: successes === trials ? 1 : scoreRoots(successes + shift, trials, z).upper,
  };
}
