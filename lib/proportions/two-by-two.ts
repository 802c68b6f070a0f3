import { checkCounts } from '../numerics/arguments.ts';
import { chiSquareCdf } from '../numerics/gamma.ts';
import { checkLevel, type Estimate, type LevelOption, type PossibleTest } from './interval.ts';
import { twoSidedZ } from './one-sample.ts';

/** A ratio with the standard error of its logarithm; null where the logarithm has none. */
export interface Ratio extends Estimate {
  readonly logSe: number | null;
}

/** exp(log estimate ± z se). */
export function ratioInterval(estimate: number, logSe: number, level: number): Ratio {
  const spread = Math.exp(twoSidedZ(level) * logSe);
  return { estimate, lower: estimate / spread, upper: estimate * spread, logSe };
}

/** A ratio whose logarithm has no standard error: the estimate itself is null where it divides by zero. */
export function ratioWithoutInterval(top: number, bottom: number, because: string): Ratio {
  return { estimate: bottom > 0 ? top / bottom : null, lower: null, upper: null, logSe: null, because };
}

function checkTable(caller: string, x1: number, n1: number, x2: number, n2: number, level = 0.95): void {
  checkCounts(caller, x1, n1, '1');
  checkCounts(caller, x2, n2, '2');
  checkLevel(caller, level);
}

/** Options of `oddsRatio`: `haldane: true` adds one half to each of the four counts. */
export interface OddsRatioOption extends LevelOption {
  readonly haldane?: boolean;
}

/**
 * Odds ratio of two groups with Woolf's interval.
 *
 * Answers by what factor the odds of success of the first group exceed those of the second. Not for a count of 0 among
 * the four, where Woolf's formula has no interval: use `haldane`, or `fisherExact`, whose interval is exact.
 *
 * @param successes1 x1 of the first group, a whole number from 0 to n1
 * @param trials1 n1, a whole number of at least 1
 * @param successes2 x2 of the second group
 * @param trials2 n2
 * @param options `level` in (0, 1), 0.95 by default; `haldane: true` adds one half to each count
 * @returns the sample odds ratio, its ends and `logSe`; with a zero count both ends and `logSe` are null because
 *   `zero-count`, and `estimate` is 0, or null where it would divide by zero
 * @throws RangeError or TypeError naming the argument
 * @source Woolf (1955) Annals of Human Genetics 19, 251–253; Haldane (1956) ibid. 20, 309–311
 * @example oddsRatio(56, 70, 48, 80) // { estimate: 2.66666..., lower: 1.27621..., upper: 5.57201..., logSe: 0.37599... }
 */
export function oddsRatio(
  successes1: number,
  trials1: number,
  successes2: number,
  trials2: number,
  { level = 0.95, haldane = false }: OddsRatioOption = {},
): Ratio {
  checkTable('oddsRatio', successes1, trials1, successes2, trials2, level);
  const half = haldane ? 0.5 : 0;
  const [a, b] = [successes1 + half, trials1 - successes1 + half];
  const [c, d] = [successes2 + half, trials2 - successes2 + half];
  if (Math.min(a, b, c, d) === 0) return ratioWithoutInterval(a * d, b * c, 'zero-count');
  return ratioInterval((a * d) / (b * c), Math.sqrt(1 / a + 1 / b + 1 / c + 1 / d), level);
}

/**
 * Risk ratio of two groups with Katz's interval.
 *
 * Answers by what factor the first chance of success exceeds the second. Easier to say than an odds ratio; not for a
 * group without success, nor for two groups without failure, where the formula has no interval.
 *
 * @param successes1 x1 of the first group, a whole number from 0 to n1
 * @param trials1 n1, a whole number of at least 1
 * @param successes2 x2 of the second group
 * @param trials2 n2
 * @param options `level` in (0, 1), 0.95 by default
 * @returns the ratio of x1/n1 to x2/n2, its ends and `logSe`; without success in a group the ends are null because
 *   `zero-count`, without any failure because `no-failure`; `estimate` is null where it would divide by zero
 * @throws RangeError or TypeError naming the argument
 * @source Katz, Baptista, Azen & Pike (1978) Biometrics 34, 469–474, method C
 * @example riskRatio(56, 70, 48, 80) // { estimate: 1.33333..., lower: 1.07662..., upper: 1.65124..., logSe: 0.10910... }
 */
export function riskRatio(
  successes1: number,
  trials1: number,
  successes2: number,
  trials2: number,
  { level = 0.95 }: LevelOption = {},
): Ratio {
  checkTable('riskRatio', successes1, trials1, successes2, trials2, level);
  const [top, bottom] = [successes1 * trials2, successes2 * trials1];
  if (top === 0 || bottom === 0) return ratioWithoutInterval(top, bottom, 'zero-count');
  const failures = [
    (trials1 - successes1) / trials1 / successes1,
    (trials2 - successes2) / trials2 / successes2,
  ];
  const logSe = Math.sqrt(failures[0]! + failures[1]!);
  if (logSe === 0) return ratioWithoutInterval(top, bottom, 'no-failure');
  return ratioInterval(top / bottom, logSe, level);
}

/** Options of `pearsonChiSquare`: `continuity: true` for Yates's correction. */
export interface ChiSquareOption {
  readonly continuity?: boolean;
}

/**
 * Pearson's chi-square test of a 2 × 2 table.
 *
 * Answers whether two chances of success differ, in large groups. Not where an expected count is below 5: see
 * `fisherExact`.
 *
 * @param successes1 x1 of the first group, a whole number from 0 to n1
 * @param trials1 n1, a whole number of at least 1
 * @param successes2 x2 of the second group
 * @param trials2 n2
 * @param options `continuity: true` for Yates's correction, at most down to a statistic of 0
 * @returns `statistic`, `df` 1, `p`; all null because `no-variation` where no trial, or every one, succeeded
 * @throws RangeError or TypeError naming the argument
 * @source Pearson (1900) Philosophical Magazine 50, 157–175; Yates (1934) Supplement to the JRSS 1, 217–235
 * @example pearsonChiSquare(56, 70, 48, 80) // { statistic: 7.02341..., df: 1, p: 0.00804... }
 */
export function pearsonChiSquare(
  successes1: number,
  trials1: number,
  successes2: number,
  trials2: number,
  { continuity = false }: ChiSquareOption = {},
): PossibleTest {
  checkTable('pearsonChiSquare', successes1, trials1, successes2, trials2);
  const successes = successes1 + successes2;
  const all = trials1 + trials2;
  if (successes === 0 || successes === all) {
    return { statistic: null, df: null, p: null, because: 'no-variation' };
  }
  const cross = Math.abs(successes1 * trials2 - successes2 * trials1);
  const distance = Math.max(0, cross - (continuity ? all / 2 : 0));
  const statistic = (distance / (trials1 * trials2)) * (distance / successes) * (all / (all - successes));
  return { statistic, df: 1, p: chiSquareCdf(statistic, 1, { tail: 'upper' }) };
}
