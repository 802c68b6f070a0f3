import { checkChoice, checkCounts } from '../numerics/arguments.ts';
import { betaQuantile } from '../numerics/beta.ts';
import { binomialCdf, binomialDensity } from '../numerics/binomial.ts';
import { findIncreasingRoot } from '../numerics/find-root.ts';
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
 * @example wilson(7, 20) // { estimate: 0.35, lower: 0.18119..., upper: 0.56714... }
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

/**
 * Clopper and Pearson's exact interval for one proportion.
 *
 * Answers the same question as `wilson`, with a coverage that is never below its level, whatever the true chance. The
 * price is width: for few trials it covers clearly more than its level, so take `wilson` unless the guarantee is needed.
 *
 * @param successes x, a whole number from 0 to n
 * @param trials n, a whole number of at least 1
 * @param options `level` in (0, 1), 0.95 by default
 * @returns `estimate` x / n with the ends; 0 at x = 0 and 1 at x = n
 * @throws RangeError or TypeError naming the argument
 * @source Clopper & Pearson (1934) Biometrika 26, 404–413; Newcombe (1998) method 5
 * @example clopperPearson(7, 20) // { estimate: 0.35, lower: 0.15390..., upper: 0.59218... }
 */
export function clopperPearson(
  successes: number,
  trials: number,
  { level = 0.95 }: LevelOption = {},
): Interval {
  checkCounts('clopperPearson', successes, trials);
  checkLevel('clopperPearson', level);
  const p = (1 - level) / 2;
  const failures = trials - successes;
  return {
    estimate: successes / trials,
    lower: successes === 0 ? 0 : betaQuantile(p, successes, failures + 1),
    upper: failures === 0 ? 1 : betaQuantile(p, successes + 1, failures, { tail: 'upper' }),
  };
}

/**
 * log of P(X > x) + P(X = x) / 2 less its target, against the logit of p = `start`'s scale, and its slope. `side` turns
 * it to P(X < x) + P(X = x) / 2 against the logit of 1 − p, which rises in the same way.
 */
function midTail(u: number, x: number, n: number, target: number, side: 'lower' | 'upper'): [number, number] {
  const p = 1 / (1 + Math.exp(side === 'lower' ? -u : u));
  const half = binomialDensity(x, n, p) / 2;
  const beyond = side === 'lower' ? binomialCdf(x, n, p, { tail: 'upper' }) : binomialCdf(x - 1, n, p);
  return [Math.log(beyond + half) - target, (half * (x * (1 - p) + (n - x) * p)) / (beyond + half)];
}

/**
 * Mid-p interval for one proportion.
 *
 * Answers the same question as `clopperPearson`, but counts the observed result half in each tail: narrower, with a
 * coverage near its level on average, not guaranteed.
 *
 * @param successes x, a whole number from 0 to n
 * @param trials n, a whole number of at least 1
 * @param options `level` in (0, 1), 0.95 by default
 * @returns `estimate` x / n with the ends; 0 at x = 0 and 1 at x = n
 * @throws RangeError or TypeError naming the argument
 * @source Newcombe (1998) Statistics in Medicine 17, 857–872, method 6
 * @example midP(7, 20) // { estimate: 0.35, lower: 0.16773..., upper: 0.57304... }
 */
export function midP(successes: number, trials: number, { level = 0.95 }: LevelOption = {}): Interval {
  checkCounts('midP', successes, trials);
  checkLevel('midP', level);
  const target = Math.log((1 - level) / 2);
  const centre = Math.log((successes + 0.5) / (trials - successes + 0.5));
  const root = (side: 'lower' | 'upper', start: number) =>
    findIncreasingRoot((u) => midTail(u, successes, trials, target, side), start);
  return {
    estimate: successes / trials,
    lower: successes === 0 ? 0 : 1 / (1 + Math.exp(-root('lower', centre))),
    upper: successes === trials ? 1 : 1 / (1 + Math.exp(root('upper', -centre))),
  };
}

/** Options of `agrestiCoull`: `truncate`, true by default, keeps the ends within 0 to 1. */
export interface AgrestiCoullOption extends LevelOption {
  readonly truncate?: boolean;
}

/**
 * Agresti and Coull's adjusted Wald interval for one proportion.
 *
 * Answers the same question as `wilson` with an interval easy to compute by hand: z²/2 successes and z²/2 failures are
 * added, then the textbook formula. Always holds Wilson's interval within it; not for x = 0 or x = n, where it is wide.
 *
 * @param successes x, a whole number from 0 to n
 * @param trials n, a whole number of at least 1
 * @param options `level` in (0, 1), 0.95 by default; `truncate: false` leaves ends below 0 or above 1 as they are
 * @returns `estimate` x / n (not the adjusted centre) with the ends
 * @throws RangeError or TypeError naming the argument
 * @source Agresti & Coull (1998) American Statistician 52, 119–126; Brown, Cai & DasGupta (2001) Statistical Science 16
 * @example agrestiCoull(7, 20) // { estimate: 0.35, lower: 0.17992..., upper: 0.56841... }
 */
export function agrestiCoull(
  successes: number,
  trials: number,
  { level = 0.95, truncate = true }: AgrestiCoullOption = {},
): Interval {
  checkCounts('agrestiCoull', successes, trials);
  checkLevel('agrestiCoull', level);
  const z = twoSidedZ(level);
  const n = trials + z * z;
  const p = (successes + (z * z) / 2) / n;
  const half = z * Math.sqrt((p * (1 - p)) / n);
  return {
    estimate: successes / trials,
    lower: truncate ? Math.max(0, p - half) : p - half,
    upper: truncate ? Math.min(1, p + half) : p + half,
  };
}

const JEFFREYS_ENDS = ['boundary', 'equal-tailed', 'brown-cai-dasgupta'] as const;

/**
 * Options of `jeffreys`: what happens at the boundary. `boundary` (default) forces 0 at x = 0 and 1 at x = n;
 * `equal-tailed` leaves the quantiles; `brown-cai-dasgupta` also takes Clopper–Pearson's other end at x = 0 and x = n,
 * and 0 at x = 1, 1 at x = n − 1.
 */
export interface JeffreysOption extends LevelOption {
  readonly ends?: (typeof JEFFREYS_ENDS)[number];
}

/**
 * Jeffreys' interval for one proportion.
 *
 * Answers between which values the chance of success lies with the stated probability, starting from Jeffreys' prior
 * beta(1/2, 1/2). Not where something is known beforehand: then use that as the prior.
 *
 * @param successes x, a whole number from 0 to n
 * @param trials n, a whole number of at least 1
 * @param options `level` in (0, 1), 0.95 by default; `ends`, see `JeffreysOption`
 * @returns `estimate` x / n (not the posterior mean) with the ends
 * @throws RangeError or TypeError naming the argument
 * @source Brown, Cai & DasGupta (2001) Statistical Science 16, 101–133, sections 3.1.3 and 4.1.2
 * @example jeffreys(7, 20) // { estimate: 0.35, lower: 0.17227..., upper: 0.56776... }
 */
export function jeffreys(
  successes: number,
  trials: number,
  { level = 0.95, ends = 'boundary' }: JeffreysOption = {},
): Interval {
  checkCounts('jeffreys', successes, trials);
  checkLevel('jeffreys', level);
  checkChoice('jeffreys', 'ends', ends, JEFFREYS_ENDS);
  return {
    estimate: successes / trials,
    lower: jeffreysEnd(successes, trials, level, ends, 'lower'),
    upper: jeffreysEnd(trials - successes, trials, level, ends, 'upper'),
  };
}

/** One end; `count` is what is counted from that end: successes for the lower, failures for the upper. */
function jeffreysEnd(
  count: number,
  trials: number,
  level: number,
  ends: JeffreysOption['ends'],
  side: 'lower' | 'upper',
): number {
  const p = (1 - level) / 2;
  const modified = ends === 'brown-cai-dasgupta';
  // All of one kind: Clopper and Pearson's end, p^(1/n) or 1 − p^(1/n).
  if (modified && count === trials) {
    const logRoot = Math.log(p) / trials;
    return side === 'lower' ? Math.exp(logRoot) : -Math.expm1(logRoot);
  }
  const forced = modified ? 1 : ends === 'boundary' ? 0 : -1;
  if (count <= forced) return side === 'lower' ? 0 : 1;
  const [a, b] = side === 'lower' ? [count, trials - count] : [trials - count, count];
  return betaQuantile(p, a + 0.5, b + 0.5, { tail: side });
}
