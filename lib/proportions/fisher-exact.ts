import { checkChoice, checkCounts } from '../numerics/arguments.ts';
import { findIncreasingRoot } from '../numerics/find-root.ts';
import { hypergeometricDensity } from '../numerics/hypergeometric.ts';
import { checkLevel, type Estimate, type LevelOption, type Test, unknown } from './interval.ts';

/**
 * Two tables count as equally probable when their probabilities agree to this factor: rounding, not closeness. (R's
 * fisher.test allows 1e-7.)
 */
export const EQUALLY_PROBABLE = 1e-10;

const ALTERNATIVES = ['two-sided', 'less', 'greater'] as const;
const TWO_SIDED = ['no-more-probable', 'twice-smaller-tail'] as const;
const MID_P = ['none', 'observed', 'ties'] as const;

/** Options of `fisherExact`. */
export interface FisherOption extends LevelOption {
  /** `greater`: the first chance of success exceeds the second. */
  readonly alternative?: (typeof ALTERNATIVES)[number];
  /** What two-sided means: all tables no more probable than the one seen (default), or twice the smaller tail. */
  readonly twoSided?: (typeof TWO_SIDED)[number];
  /** Mid-p: half of the observed table's probability is left out, or half of all those equally probable (`ties`). */
  readonly midP?: (typeof MID_P)[number];
}

/** A test with the conditional odds ratio of its table. `statistic` is the count x1, `df` null: the test is exact. */
export interface FisherExact extends Test {
  readonly oddsRatio: Estimate;
}

/** The tables with the margins of the one seen: counts x from `least` on, their log probability at odds ratio 1. */
interface Support {
  readonly least: number;
  readonly most: number;
  readonly observed: number;
  readonly logTerms: Float64Array;
}

function supportOf(x1: number, n1: number, x2: number, n2: number): Support {
  const least = Math.max(0, x1 + x2 - n2);
  const most = Math.min(n1, x1 + x2);
  const logTerms = Float64Array.from({ length: most - least + 1 }, (_, i) =>
    hypergeometricDensity(least + i, n1, n2, x1 + x2, { log: true }),
  );
  return { least, most, observed: x1, logTerms };
}

/** Sum of the probabilities of the tables from index `from` to `to`. */
function sumOf(terms: Float64Array, from: number, to: number): number {
  let sum = 0;
  for (let i = from; i <= to; i += 1) sum += Math.exp(terms[i]!);
  return Math.min(1, sum);
}

function tailP(support: Support, alternative: 'less' | 'greater', midP: FisherOption['midP']): number {
  const { least, observed, logTerms } = support;
  const at = observed - least;
  const sum = alternative === 'less' ? sumOf(logTerms, 0, at) : sumOf(logTerms, at, logTerms.length - 1);
  return midP === 'none' ? sum : sum - Math.exp(logTerms[at]!) / 2;
}

/** Sum over the tables no more probable than the observed one. */
function noMoreProbable({ least, observed, logTerms }: Support, midP: FisherOption['midP']): number {
  const own = logTerms[observed - least]!;
  let rarer = 0;
  let equal = 0;
  for (const term of logTerms) {
    if (Math.abs(term - own) <= EQUALLY_PROBABLE) equal += Math.exp(term);
    else if (term < own) rarer += Math.exp(term);
  }
  const half = midP === 'ties' ? equal / 2 : midP === 'observed' ? Math.exp(own) / 2 : 0;
  return Math.min(1, rarer + equal - half);
}

function pValue(support: Support, alternative: string, twoSided: string, midP: FisherOption['midP']): number {
  if (alternative === 'less' || alternative === 'greater') return tailP(support, alternative, midP);
  if (twoSided === 'no-more-probable') return noMoreProbable(support, midP);
  return Math.min(1, 2 * Math.min(tailP(support, 'less', midP), tailP(support, 'greater', midP)));
}

/**
 * Weighted sum of the tables at log odds ratio eta: its logarithm over the sum of all, and its slope in eta, which is the
 * difference of the two means of x.
 */
function logShare(support: Support, eta: number, weight: (x: number) => number): [number, number] {
  const { least, logTerms } = support;
  let largest = -Infinity;
  logTerms.forEach((term, i) => {
    largest = Math.max(largest, term + (least + i) * eta);
  });
  let [all, allX, part, partX] = [0, 0, 0, 0];
  logTerms.forEach((term, i) => {
    const x = least + i;
    const value = Math.exp(term + x * eta - largest);
    all += value;
    allX += value * x;
    part += weight(x) * value;
    partX += weight(x) * value * x;
  });
  return [Math.log(part / all), partX / part - allX / all];
}

/** Mean and variance of x at log odds ratio eta. */
function moments(support: Support, eta: number): [mean: number, variance: number] {
  const { least } = support;
  const [logMean, slope] = logShare(support, eta, (x) => x - least);
  const above = Math.exp(logMean);
  return [least + above, above * slope];
}

/** Conditional maximum-likelihood odds ratio with its exact (or mid-p) interval. */
function conditionalOddsRatio(support: Support, level: number, midP: boolean): Estimate {
  const { least, most, observed } = support;
  if (least === most) return unknown('no-information');
  const target = Math.log((1 - level) / 2);
  const own = midP ? 0.5 : 1;
  const weight = (sign: number) => (x: number) => (x === observed ? own : sign * (x - observed) > 0 ? 1 : 0);
  const end = (sign: number) =>
    Math.exp(
      findIncreasingRoot((eta) => {
        const [value, slope] = logShare(support, eta, weight(sign));
        return [sign * (value - target), sign * slope];
      }, 0),
    );
  const lower = observed === least ? 0 : end(1);
  if (observed === most) return { estimate: null, lower, upper: null, because: 'unbounded' };
  const mean = (eta: number): [number, number] => {
    const [value, slope] = moments(support, eta);
    return [value - observed, slope];
  };
  return { estimate: observed === least ? 0 : Math.exp(findIncreasingRoot(mean, 0)), lower, upper: end(-1) };
}

/**
 * Fisher's exact test of a 2 × 2 table, with the conditional odds ratio.
 *
 * Answers whether two chances of success differ, given both margins; no approximation, however small the counts. It is
 * cautious: its true error is often half of its nominal one; mid-p mends that. Not for matched counts.
 *
 * @param successes1 x1 of the first group, a whole number from 0 to n1
 * @param trials1 n1, a whole number of at least 1
 * @param successes2 x2 of the second group
 * @param trials2 n2
 * @param options `alternative`, `twoSided` and `midP`, see `FisherOption`; `level` of the odds ratio's interval
 * @returns `p`; `statistic` x1; `df` null; `oddsRatio` by conditional maximum likelihood with the interval of two equal
 *   tails (mid-p where asked for). Where x1 is the largest count its margins allow, `estimate` and `upper` are null;
 *   where the margins allow one table only, all is null because `no-information`
 * @throws RangeError or TypeError naming the argument
 * @source Fisher (1935) Journal of the Royal Statistical Society 98, 39–82; Agresti (2013) Categorical Data Analysis, 3.5
 *   and 16.6; two-sided rule as in R's fisher.test
 * @example fisherExact(3, 4, 1, 4).p // 0.48571...
 */
export function fisherExact(
  successes1: number,
  trials1: number,
  successes2: number,
  trials2: number,
  {
    alternative = 'two-sided',
    twoSided = 'no-more-probable',
    midP = 'none',
    level = 0.95,
  }: FisherOption = {},
): FisherExact {
  checkCounts('fisherExact', successes1, trials1, '1');
  checkCounts('fisherExact', successes2, trials2, '2');
  checkChoice('fisherExact', 'alternative', alternative, ALTERNATIVES);
  checkChoice('fisherExact', 'twoSided', twoSided, TWO_SIDED);
  checkChoice('fisherExact', 'midP', midP, MID_P);
  checkLevel('fisherExact', level);
  const support = supportOf(successes1, trials1, successes2, trials2);
  return {
    statistic: successes1,
    df: null,
    p: pValue(support, alternative, twoSided, midP),
    oddsRatio: conditionalOddsRatio(support, level, midP !== 'none'),
  };
}
