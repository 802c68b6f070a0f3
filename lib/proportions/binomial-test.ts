import { checkChoice, checkCounts, checkInside, checkProbability } from '../numerics/arguments.ts';
import { binomialCdf, binomialDensity } from '../numerics/binomial.ts';
import { EQUALLY_PROBABLE } from './fisher-exact.ts';
import { checkLevel, type LevelOption, type Test } from './interval.ts';

const ALTERNATIVES = ['two-sided', 'less', 'greater'] as const;

/** Option of `binomialTest`: `greater` is a true chance above the one named. */
export interface BinomialTestOption {
  readonly alternative?: (typeof ALTERNATIVES)[number];
}

/** log probabilities of 0 to n successes. */
function logTermsOf(trials: number, p: number): number[] {
  return Array.from({ length: trials + 1 }, (_, x) => binomialDensity(x, trials, p, { log: true }));
}

/** Two-sided p of each count: the sum of all counts no more probable. */
function twoSidedOf(logTerms: readonly number[], successes: number): number {
  const own = logTerms[successes]! + EQUALLY_PROBABLE;
  let sum = 0;
  for (const term of logTerms) if (term <= own) sum += Math.exp(term);
  return Math.min(1, sum);
}

/**
 * Exact binomial test of one proportion.
 *
 * Answers whether a count agrees with a chance of success named beforehand. Not for comparing two counts: see
 * `fisherExact`.
 *
 * @param successes x, a whole number from 0 to n
 * @param trials n, a whole number of at least 1
 * @param probability the chance in question, between 0 and 1
 * @param options `alternative`, `two-sided` by default: all counts no more probable than the one seen
 * @returns `statistic` x, `df` null, `p`
 * @throws RangeError or TypeError naming the argument
 * @source Conover (1999) Practical Nonparametric Statistics, 3.1; two-sided rule as in R's binom.test
 * @example binomialTest(16, 20, 0.5).p // 0.01181...
 */
export function binomialTest(
  successes: number,
  trials: number,
  probability: number,
  { alternative = 'two-sided' }: BinomialTestOption = {},
): Test {
  checkCounts('binomialTest', successes, trials);
  checkInside('binomialTest', 'probability', probability);
  checkChoice('binomialTest', 'alternative', alternative, ALTERNATIVES);
  const p = {
    less: () => binomialCdf(successes, trials, probability),
    greater: () => binomialCdf(successes - 1, trials, probability, { tail: 'upper' }),
    'two-sided': () => twoSidedOf(logTermsOf(trials, probability), successes),
  }[alternative]();
  return { statistic: successes, df: null, p };
}

/**
 * Power of the exact two-sided binomial test.
 *
 * Answers how often n trials will tell a true chance from the one in question.
 *
 * @param probability the true chance, from 0 to 1
 * @param trials n, a whole number of at least 1
 * @param hypothesis the chance in question, between 0 and 1
 * @param options `level`, 0.95 by default: the test rejects at p ≤ 1 − level
 * @returns probability of a rejection
 * @throws RangeError or TypeError naming the argument
 * @source the definition, by enumeration
 * @example powerOneProportion(0.8, 20, 0.5) // 0.80420...
 */
export function powerOneProportion(
  probability: number,
  trials: number,
  hypothesis: number,
  { level = 0.95 }: LevelOption = {},
): number {
  checkProbability('powerOneProportion', 'probability', probability);
  checkCounts('powerOneProportion', 0, trials);
  checkInside('powerOneProportion', 'hypothesis', hypothesis);
  checkLevel('powerOneProportion', level);
  const logTerms = logTermsOf(trials, hypothesis);
  let power = 0;
  for (let x = 0; x <= trials; x += 1) {
    if (twoSidedOf(logTerms, x) <= 1 - level) power += binomialDensity(x, trials, probability);
  }
  return Math.min(1, power);
}
