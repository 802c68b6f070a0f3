import { checkChoice, checkProbability, checkWhole } from '../numerics/arguments.ts';
import { binomialDensity } from '../numerics/binomial.ts';
import { hypergeometricDensity } from '../numerics/hypergeometric.ts';
import { normalCdf, normalQuantile } from '../numerics/normal.ts';
import { EQUALLY_PROBABLE } from './fisher-exact.ts';
import { checkLevel, type LevelOption } from './interval.ts';

export const POWER_METHODS = ['normal', 'normal-both-tails', 'fisher', 'pooled-z'] as const;
export const SIDES = ['two-sided', 'one-sided'] as const;

/** Options of `powerTwoProportions`. */
export interface PowerOption extends LevelOption {
  /** `one-sided` looks for the difference in its true direction only. */
  readonly alternative?: (typeof SIDES)[number];
  /**
   * `normal` (default): the approximation of handbooks, without the far tail; `normal-both-tails`: with it; `fisher`,
   * `pooled-z`: all tables enumerated, two-sided, rejected by Fisher's exact test or by the uncorrected z test.
   */
  readonly method?: (typeof POWER_METHODS)[number];
}

/** The z that the statistic must pass; level is two-sided unless one side is asked for. */
export function criticalZ(level: number, alternative: string): number {
  return normalQuantile(alternative === 'two-sided' ? (1 - level) / 2 : 1 - level, { tail: 'upper' });
}

/** Normal approximation with groups of n1 and n2 trials, not necessarily whole. */
export function normalPower(
  p1: number,
  n1: number,
  p2: number,
  n2: number,
  z: number,
  bothTails: boolean,
): number {
  const pooled = (n1 * p1 + n2 * p2) / (n1 + n2);
  const bar = z * Math.sqrt(pooled * (1 - pooled) * (1 / n1 + 1 / n2));
  const se = Math.sqrt((p1 * (1 - p1)) / n1 + (p2 * (1 - p2)) / n2);
  const distance = Math.abs(p1 - p2);
  // Without any variation the outcome is certain.
  if (se === 0) return distance > bar ? 1 : 0;
  return normalCdf((distance - bar) / se) + (bothTails ? normalCdf((-distance - bar) / se) : 0);
}

/** Probabilities of the counts x1 from `least` on, given x1 + x2 = m and equal chances: by ratios from the likeliest. */
function conditionalTerms(m: number, n1: number, n2: number, least: number, most: number): Float64Array {
  const terms = new Float64Array(most - least + 1);
  const mode = Math.min(most, Math.max(least, Math.floor(((n1 + 1) * (m + 1)) / (n1 + n2 + 2))));
  terms[mode - least] = hypergeometricDensity(mode, n1, n2, m);
  const ratio = (x: number) => ((n1 - x) / (x + 1)) * ((m - x) / (n2 - m + x + 1));
  for (let x = mode; x < most; x += 1) terms[x + 1 - least] = terms[x - least]! * ratio(x);
  for (let x = mode; x > least; x -= 1) terms[x - 1 - least] = terms[x - least]! / ratio(x - 1);
  return terms;
}

/** The counts x1, `from` to `to`, that a test keeps, given x1 + x2 = m; it rejects those outside. */
interface Kept {
  readonly from: number;
  readonly to: number;
}

/** Fisher's two-sided test: counts are taken away from both ends, the rarer first, until alpha is used up. */
function keptByFisher(m: number, n1: number, n2: number, alpha: number): Kept {
  const least = Math.max(0, m - n2);
  const terms = conditionalTerms(m, n1, n2, least, Math.min(n1, m));
  let [from, to, sum] = [0, terms.length - 1, 0];
  while (from <= to) {
    const [left, right] = [terms[from]!, terms[to]!];
    // Two equally probable counts go together or not at all.
    const both = from < to && Math.abs(left - right) <= EQUALLY_PROBABLE * left;
    sum += both ? left + right : Math.min(left, right);
    if (sum > alpha) break;
    if (both || left <= right) from += 1;
    if (both || left > right) to -= 1;
  }
  return { from: least + from, to: least + to };
}

/** The z test with pooled variance, without correction; a margin without variation is kept whole. */
function keptByPooledZ(m: number, n1: number, n2: number, z: number): Kept {
  const [least, most] = [Math.max(0, m - n2), Math.min(n1, m)];
  const all = n1 + n2;
  const bar = z * Math.sqrt((m / all) * ((all - m) / all) * (1 / n1 + 1 / n2));
  const rejects = (x1: number) => bar > 0 && Math.abs(x1 / n1 - (m - x1) / n2) >= bar;
  let [from, to] = [least, most];
  while (from <= to && rejects(from)) from += 1;
  while (to >= from && rejects(to)) to -= 1;
  return { from, to };
}

function termsOf(n: number, p: number): Float64Array {
  return Float64Array.from({ length: n + 1 }, (_, x) => binomialDensity(x, n, p));
}

/** Probability of all tables that the test rejects. */
export function exactPower(
  p1: number,
  n1: number,
  p2: number,
  n2: number,
  level: number,
  method: 'fisher' | 'pooled-z',
): number {
  const [terms1, terms2] = [termsOf(n1, p1), termsOf(n2, p2)];
  const z = criticalZ(level, 'two-sided');
  let power = 0;
  for (let m = 0; m <= n1 + n2; m += 1) {
    const kept = method === 'fisher' ? keptByFisher(m, n1, n2, 1 - level) : keptByPooledZ(m, n1, n2, z);
    for (let x1 = Math.max(0, m - n2); x1 < kept.from; x1 += 1) power += terms1[x1]! * terms2[m - x1]!;
    for (let x1 = kept.to + 1; x1 <= Math.min(n1, m); x1 += 1) power += terms1[x1]! * terms2[m - x1]!;
  }
  return Math.min(1, power);
}

/**
 * Power of a comparison of two proportions.
 *
 * Answers how often a difference will be found with groups of n1 and n2 trials, when the chances are p1 and p2. With
 * p1 = p2 the exact methods give the true error of the test. Not for trials that depend on each other.
 *
 * @param p1 chance of success in the first group, 0 to 1
 * @param trials1 its size, a whole number of at least 1
 * @param p2 chance of success in the second
 * @param trials2 its size
 * @param options `level`, 0.95 by default: the test rejects at p ≤ 1 − level; `alternative` and `method`, see
 *   `PowerOption`; the exact methods are two-sided
 * @returns probability of a rejection
 * @throws RangeError or TypeError naming the argument
 * @source Fleiss, Levin & Paik (2003) Statistical Methods for Rates and Proportions, 4.3; as R's power.prop.test
 * @example powerTwoProportions(0.5, 50, 0.75, 50) // 0.74016...
 */
export function powerTwoProportions(
  p1: number,
  trials1: number,
  p2: number,
  trials2: number,
  { level = 0.95, alternative = 'two-sided', method = 'normal' }: PowerOption = {},
): number {
  checkProbability('powerTwoProportions', 'p1', p1);
  checkWhole('powerTwoProportions', 'trials1', trials1, 1);
  checkProbability('powerTwoProportions', 'p2', p2);
  checkWhole('powerTwoProportions', 'trials2', trials2, 1);
  checkLevel('powerTwoProportions', level);
  checkChoice('powerTwoProportions', 'alternative', alternative, SIDES);
  checkChoice('powerTwoProportions', 'method', method, POWER_METHODS);
  if (method === 'fisher' || method === 'pooled-z') {
    if (alternative !== 'two-sided') {
      throw new RangeError(
        `powerTwoProportions: alternative must be two-sided for method ${method}, got ${alternative}`,
      );
    }
    return exactPower(p1, trials1, p2, trials2, level, method);
  }
  const z = criticalZ(level, alternative);
  return normalPower(p1, trials1, p2, trials2, z, method === 'normal-both-tails');
}
