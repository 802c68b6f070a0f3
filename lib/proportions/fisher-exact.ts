import { checkChoice, checkCounts } from '../numerics/arguments.ts';
import { firstWhole } from '../numerics/binomial.ts';
import { findIncreasingRoot } from '../numerics/find-root.ts';
import {
  logProbability,
  logShare,
  type Margins,
  marginsOf,
  modeOf,
  momentsAt,
  tailAt,
} from './fixed-margins.ts';
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

/** What is seen of a table: the count x1 and the margins. */
interface Seen {
  readonly x1: number;
  readonly margins: Margins;
}

function tailP({ x1, margins }: Seen, alternative: 'less' | 'greater', midP: FisherOption['midP']): number {
  const sum = alternative === 'less' ? tailAt(x1, margins, 'lower') : tailAt(x1 - 1, margins, 'upper');
  return midP === 'none' ? sum : sum - Math.exp(logProbability(x1, margins)) / 2;
}

/** The last x on the left of the mode, and the first on its right, that are no more probable than the one seen. */
function rarerEnds({ x1, margins }: Seen, bar: number): [left: number, right: number] {
  const { least, most } = margins;
  const mode = modeOf(margins, 0);
  const isRarer = (x: number) => logProbability(x, margins) <= bar;
  const left = x1 <= mode ? x1 : firstWhole(least, mode, (x) => x === mode || !isRarer(x)) - 1;
  const right = x1 > mode ? x1 : firstWhole(mode, most + 1, (x) => x > mode && (x > most || isRarer(x)));
  // A tie of the two most probable tables: the mode is seen, or its equal.
  return [left === mode - 1 && isRarer(mode) ? mode : left, right];
}

/** Sum of the tables from x on, one by one in a direction, as long as they are as probable as the one seen. */
function equalFrom(start: number, step: 1 | -1, { x1, margins }: Seen): number {
  const own = logProbability(x1, margins);
  let sum = 0;
  for (let x = start; x >= margins.least && x <= margins.most; x += step) {
    const term = logProbability(x, margins);
    if (Math.abs(term - own) > EQUALLY_PROBABLE) break;
    sum += Math.exp(term);
  }
  return sum;
}

/** Sum over the tables no more probable than the observed one. */
function noMoreProbable(seen: Seen, midP: FisherOption['midP']): number {
  const { x1, margins } = seen;
  const own = logProbability(x1, margins);
  const [left, right] = rarerEnds(seen, own + EQUALLY_PROBABLE);
  const sum = left >= right - 1 ? 1 : tailAt(left, margins, 'lower') + tailAt(right - 1, margins, 'upper');
  const equal = () => equalFrom(left, -1, seen) + equalFrom(right, 1, seen);
  const half = midP === 'ties' ? equal() / 2 : midP === 'observed' ? Math.exp(own) / 2 : 0;
  return Math.min(1, sum) - half;
}

function pValue(seen: Seen, alternative: string, twoSided: string, midP: FisherOption['midP']): number {
  if (alternative === 'less' || alternative === 'greater') return tailP(seen, alternative, midP);
  if (twoSided === 'no-more-probable') return noMoreProbable(seen, midP);
  return Math.min(1, 2 * Math.min(tailP(seen, 'less', midP), tailP(seen, 'greater', midP)));
}

/** Conditional maximum-likelihood odds ratio with its exact (or mid-p) interval. */
function conditionalOddsRatio({ x1, margins }: Seen, level: number, midP: boolean): Estimate {
  const { n1, n2, successes, least, most } = margins;
  if (least === most) return unknown('no-information');
  const target = Math.log((1 - level) / 2);
  const x2 = successes - x1;
  // The sample's own log odds ratio, each count with one half added, is near all three roots.
  const start = Math.log(((x1 + 0.5) / (n1 - x1 + 0.5)) * ((n2 - x2 + 0.5) / (x2 + 0.5)));
  const own = midP ? 0.5 : 1;
  const weight = (sign: number) => (x: number) => (x === x1 ? own : sign * (x - x1) > 0 ? 1 : 0);
  const end = (sign: number) =>
    Math.exp(
      findIncreasingRoot((eta) => {
        const [value, slope] = logShare(margins, eta, weight(sign));
        return [sign * (value - target), sign * slope];
      }, start),
    );
  const lower = x1 === least ? 0 : end(1);
  if (x1 === most) return { estimate: null, lower, upper: null, because: 'unbounded' };
  const mean = (eta: number): [number, number] => {
    const [value, slope] = momentsAt(margins, eta);
    return [value - x1, slope];
  };
  return { estimate: x1 === least ? 0 : Math.exp(findIncreasingRoot(mean, start)), lower, upper: end(-1) };
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
  const seen = { x1: successes1, margins: marginsOf(trials1, trials2, successes1 + successes2) };
  return {
    statistic: successes1,
    df: null,
    p: pValue(seen, alternative, twoSided, midP),
    oddsRatio: conditionalOddsRatio(seen, level, midP !== 'none'),
  };
}
