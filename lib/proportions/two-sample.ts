import { checkChoice, checkCounts } from '../numerics/arguments.ts';
import { findRoot } from '../numerics/find-root.ts';
import { checkLevel, type Interval, type LevelOption } from './interval.ts';
import { type ContinuityOption, twoSidedZ, wilson } from './one-sample.ts';

/**
 * Newcombe's hybrid score interval for the difference of two independent proportions.
 *
 * Answers by how much the first chance of success exceeds the second. Good at any size, 0 and n included. Not for
 * matched counts (the same pair of plants in both groups): see `mantelHaenszel`.
 *
 * @param successes1 x1 of the first group, a whole number from 0 to n1
 * @param trials1 n1, a whole number of at least 1
 * @param successes2 x2 of the second group
 * @param trials2 n2
 * @param options `level` in (0, 1), 0.95 by default; `continuity: true` for method 11 (Wilson limits with correction)
 * @returns `estimate` x1/n1 − x2/n2 with the ends, within −1 to 1
 * @throws RangeError or TypeError naming the argument
 * @source Newcombe (1998) Statistics in Medicine 17, 873–890, methods 10 and 11
 * @example newcombe(56, 70, 48, 80) // { estimate: 0.20000..., lower: 0.05243..., upper: 0.33387... }
 */
export function newcombe(
  successes1: number,
  trials1: number,
  successes2: number,
  trials2: number,
  { level = 0.95, continuity = false }: ContinuityOption = {},
): Interval {
  checkCounts('newcombe', successes1, trials1, '1');
  checkCounts('newcombe', successes2, trials2, '2');
  checkLevel('newcombe', level);
  const first = wilson(successes1, trials1, { level, continuity });
  const second = wilson(successes2, trials2, { level, continuity });
  const estimate = first.estimate - second.estimate;
  const below = Math.hypot(first.estimate - first.lower, second.upper - second.estimate);
  const above = Math.hypot(first.upper - first.estimate, second.estimate - second.lower);
  return { estimate, lower: estimate - below, upper: estimate + above };
}

/** Options of `miettinenNurminen`: `variance: 'mee'` leaves out the factor N / (N − 1). */
export interface ScoreOption extends LevelOption {
  readonly variance?: 'miettinen-nurminen' | 'mee';
}

interface Counts {
  readonly x1: number;
  readonly n1: number;
  readonly x2: number;
  readonly n2: number;
}

/** Derivative of a binomial log-likelihood in p; a count of zero leaves its pole out. */
function score(x: number, n: number, p: number): number {
  return (x > 0 ? x / p : 0) - (x < n ? (n - x) / (1 - p) : 0);
}

/**
 * The likeliest p2 when p1 = p2 + d. The score falls in p2, so a bracketed root is safe where the closed form of the
 * cubic loses half of its digits; at an end of the bracket the likeliest p2 may lie on the boundary.
 */
function restrictedP2({ x1, n1, x2, n2 }: Counts, d: number): number {
  const lower = Math.max(0, -d);
  const upper = Math.min(1, 1 - d);
  const slope = (p: number) => score(x1, n1, Math.min(1, Math.max(0, p + d))) + score(x2, n2, p);
  if (!(slope(lower) > 0)) return lower;
  if (!(slope(upper) < 0)) return upper;
  return findRoot(slope, lower, upper);
}

/** Score statistic of the hypothesis p1 − p2 = d; it falls in d, from Infinity to −Infinity. */
function scoreZ(counts: Counts, d: number, factor: number): number {
  const { x1, n1, x2, n2 } = counts;
  const distance = x1 / n1 - x2 / n2 - d;
  if (distance === 0) return 0;
  const p2 = restrictedP2(counts, d);
  const p1 = Math.min(1, Math.max(0, p2 + d));
  return distance / Math.sqrt(factor * ((p1 * (1 - p1)) / n1 + (p2 * (1 - p2)) / n2));
}

/**
 * Miettinen and Nurminen's score interval for the difference of two independent proportions.
 *
 * Answers the same question as `newcombe`: the differences that a score test with the restricted maximum-likelihood
 * variance would not reject. A little wider than Newcombe's for small groups; usual in trials.
 *
 * @param successes1 x1 of the first group, a whole number from 0 to n1
 * @param trials1 n1, a whole number of at least 1
 * @param successes2 x2 of the second group
 * @param trials2 n2
 * @param options `level` in (0, 1), 0.95 by default; `variance: 'mee'` for Mee's interval, without N / (N − 1)
 * @returns `estimate` x1/n1 − x2/n2 with the ends, within −1 to 1; at −1 and 1 the limit of the inverted test
 * @throws RangeError or TypeError naming the argument
 * @source Miettinen & Nurminen (1985) Statistics in Medicine 4, 213–226; Mee (1984) Biometrics 40, 1175–1176
 * @example miettinenNurminen(56, 70, 48, 80) // { estimate: 0.20000..., lower: 0.05282..., upper: 0.33817... }
 */
export function miettinenNurminen(
  successes1: number,
  trials1: number,
  successes2: number,
  trials2: number,
  { level = 0.95, variance = 'miettinen-nurminen' }: ScoreOption = {},
): Interval {
  checkCounts('miettinenNurminen', successes1, trials1, '1');
  checkCounts('miettinenNurminen', successes2, trials2, '2');
  checkLevel('miettinenNurminen', level);
  checkChoice('miettinenNurminen', 'variance', variance, ['miettinen-nurminen', 'mee']);
  const counts = { x1: successes1, n1: trials1, x2: successes2, n2: trials2 };
  const all = trials1 + trials2;
  const factor = variance === 'mee' ? 1 : all / (all - 1);
  const z = twoSidedZ(level);
  const estimate = successes1 / trials1 - successes2 / trials2;
  const end = (limit: number, sign: number) =>
    estimate === limit ? limit : findRoot((d) => scoreZ(counts, d, factor) + sign * z, estimate, limit);
  return { estimate, lower: end(-1, -1), upper: end(1, 1) };
}
