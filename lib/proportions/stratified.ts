import { checkWhole } from '../numerics/arguments.ts';
import { chiSquareCdf } from '../numerics/gamma.ts';
import { checkLevel, type Estimate, type LevelOption, type PossibleTest, unknown } from './interval.ts';
import { twoSidedZ } from './one-sample.ts';
import { type Ratio, ratioInterval, ratioWithoutInterval } from './two-by-two.ts';

/** A 2 × 2 table [[a, b], [c, d]]: a row is a group, the first column counts the event. */
export type Table = readonly [readonly [number, number], readonly [number, number]];

/** One table with its margins: n1 and n2 of the groups, m1 of the event, m2 of the rest, n of all. */
interface Stratum {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly n1: number;
  readonly n2: number;
  readonly m1: number;
  readonly m2: number;
  readonly n: number;
}

function strataOf(caller: string, tables: readonly Table[]): Stratum[] {
  if (!Array.isArray(tables) || tables.length === 0) {
    throw new RangeError(`${caller}: tables must hold at least one 2 × 2 table, got ${String(tables)}`);
  }
  const strata = tables.map((table, i) => stratumOf(caller, table, i));
  return strata.filter((stratum) => stratum.n > 0);
}

function stratumOf(caller: string, table: Table, i: number): Stratum {
  if (!Array.isArray(table) || table.length !== 2 || table.some((row) => row?.length !== 2)) {
    throw new RangeError(`${caller}: tables[${i}] must be [[a, b], [c, d]], got ${JSON.stringify(table)}`);
  }
  const [[a, b], [c, d]] = table;
  for (const [name, count] of Object.entries({ a, b, c, d }))
    checkWhole(caller, `${name} of tables[${i}]`, count);
  return { a, b, c, d, n1: a + b, n2: c + d, m1: a + c, m2: b + d, n: a + b + c + d };
}

function total(strata: readonly Stratum[], term: (stratum: Stratum) => number): number {
  let sum = 0;
  for (const stratum of strata) sum += term(stratum);
  return sum;
}

/** What Mantel and Haenszel's weights give over all strata. */
export interface MantelHaenszel {
  /** Common odds ratio; `logSe` by Robins, Breslow and Greenland. */
  readonly oddsRatio: Ratio;
  /** Common difference of the two chances; interval by Sato. */
  readonly riskDifference: Estimate;
  /** Common risk ratio; `logSe` by Greenland and Robins. */
  readonly riskRatio: Ratio;
  /** Cochran–Mantel–Haenszel test that no stratum has a difference, 1 df. */
  readonly test: PossibleTest;
  /** The same with half a count taken off the distance. */
  readonly continuityTest: PossibleTest;
  /** Strata that say something: both groups and both outcomes are there. */
  readonly strataUsed: number;
}

/**
 * Mantel and Haenszel's common odds ratio, risk difference and risk ratio over strata, and the Cochran–Mantel–Haenszel
 * test.
 *
 * Answers how two groups differ, like for like: within strata (pairs of plants, say) only, then averaged. Right for many
 * tiny strata and for few large ones. Not where the difference itself changes between strata: see `breslowDay`.
 *
 * @param tables list of [[a, b], [c, d]], whole numbers of at least 0; a row is a group, the first column the event. A
 *   stratum without one of the groups adds nothing; one with a single outcome adds nothing to odds ratio and test
 * @param options `level` in (0, 1), 0.95 by default
 * @returns see `MantelHaenszel`. Where no stratum has both groups all estimates are null because `no-strata`; where none
 *   has both outcomes too, odds ratio and test are null because `no-informative-strata`; an odds or risk ratio that
 *   divides by zero is null, and one that is zero has no ends, because `zero-count`
 * @throws RangeError or TypeError naming the argument
 * @source Mantel & Haenszel (1959) JNCI 22, 719–748; Robins, Breslow & Greenland (1986) Biometrics 42, 311–323; Greenland
 *   & Robins (1985) Biometrics 41, 55–68; Sato (1989) Biometrics 45, 1323–1324
 * @example mantelHaenszel([[[3, 3], [0, 6]], [[6, 0], [2, 4]], [[5, 1], [6, 0]]]).oddsRatio.estimate // 7
 */
export function mantelHaenszel(tables: readonly Table[], { level = 0.95 }: LevelOption = {}): MantelHaenszel {
  const strata = strataOf('mantelHaenszel', tables);
  checkLevel('mantelHaenszel', level);
  const informative = strata.filter(({ n1, n2, m1, m2 }) => n1 * n2 * m1 * m2 > 0);
  const both = strata.filter(({ n1, n2 }) => n1 * n2 > 0);
  return {
    oddsRatio: commonOddsRatio(informative, level),
    riskDifference: commonRiskDifference(both, level),
    riskRatio: commonRiskRatio(both, level),
    test: cochranMantelHaenszel(informative, 0),
    continuityTest: cochranMantelHaenszel(informative, 0.5),
    strataUsed: informative.length,
  };
}

/** Numerator and denominator of the common odds ratio, Σ a d / n and Σ b c / n. */
function oddsParts(strata: readonly Stratum[]): [r: number, s: number] {
  return [total(strata, ({ a, d, n }) => (a * d) / n), total(strata, ({ b, c, n }) => (b * c) / n)];
}

function commonOddsRatio(strata: readonly Stratum[], level: number): Ratio {
  if (strata.length === 0) return { ...unknown('no-informative-strata'), logSe: null };
  const [r, s] = oddsParts(strata);
  if (r === 0 || s === 0) return ratioWithoutInterval(r, s, 'zero-count');
  const pr = total(strata, ({ a, d, n }) => (((a + d) / n) * a * d) / n);
  const mixed = total(strata, ({ a, b, c, d, n }) => (((a + d) / n) * b * c + ((b + c) / n) * a * d) / n);
  const qs = total(strata, ({ b, c, n }) => (((b + c) / n) * b * c) / n);
  const variance = pr / (2 * r * r) + mixed / (2 * r * s) + qs / (2 * s * s);
  return ratioInterval(r / s, Math.sqrt(variance), level);
}

function commonRiskDifference(strata: readonly Stratum[], level: number): Estimate {
  if (strata.length === 0) return unknown('no-strata');
  const weight = total(strata, ({ n1, n2, n }) => (n1 * n2) / n);
  const estimate = total(strata, ({ a, c, n1, n2, n }) => (a * n2 - c * n1) / n) / weight;
  const p = total(
    strata,
    ({ a, c, n1, n2, n }) => (n1 * n1 * c - n2 * n2 * a + (n1 * n2 * (n2 - n1)) / 2) / n / n,
  );
  const q = total(strata, ({ a, b, c, d, n }) => (a * d + c * b) / (2 * n));
  const variance = (estimate * p + q) / weight / weight;
  // Sato's variance is 0 only where every trial of each group ended alike; then it says nothing.
  if (!(variance > 0)) return { estimate, lower: null, upper: null, because: 'no-variation' };
  const half = twoSidedZ(level) * Math.sqrt(variance);
  return { estimate, lower: Math.max(-1, estimate - half), upper: Math.min(1, estimate + half) };
}

function commonRiskRatio(strata: readonly Stratum[], level: number): Ratio {
  if (strata.length === 0) return { ...unknown('no-strata'), logSe: null };
  const top = total(strata, ({ a, n2, n }) => (a * n2) / n);
  const bottom = total(strata, ({ c, n1, n }) => (c * n1) / n);
  if (top === 0 || bottom === 0) return ratioWithoutInterval(top, bottom, 'zero-count');
  const spread = total(strata, ({ a, c, m1, n1, n2, n }) => (m1 * n1 * n2 - a * c * n) / n / n);
  if (!(spread > 0)) return ratioWithoutInterval(top, bottom, 'no-failure');
  return ratioInterval(top / bottom, Math.sqrt(spread / (top * bottom)), level);
}

/** (|Σ (a − E a)| − continuity)² / Σ var a, given all margins; the correction never passes 0. */
function cochranMantelHaenszel(strata: readonly Stratum[], continuity: number): PossibleTest {
  const variance = total(strata, ({ n1, n2, m1, m2, n }) => (((n1 * n2) / n) * ((m1 * m2) / n)) / (n - 1));
  if (strata.length === 0) return { statistic: null, df: null, p: null, because: 'no-informative-strata' };
  const distance = total(strata, ({ a, n1, m1, n }) => a - (n1 * m1) / n);
  const statistic = Math.max(0, Math.abs(distance) - continuity) ** 2 / variance;
  return { statistic, df: 1, p: chiSquareCdf(statistic, 1, { tail: 'upper' }) };
}

/** Option of `breslowDay`: `tarone`, true by default, corrects for the estimated common odds ratio. */
export interface BreslowDayOption {
  readonly tarone?: boolean;
}

/** Breslow and Day's test, with the number of strata that took part. */
export interface BreslowDay extends PossibleTest {
  readonly strataUsed: number;
}

/**
 * Breslow and Day's test of homogeneity of odds ratios.
 *
 * Answers whether the odds ratio is the same in all strata. Not for many tiny strata (pairs of a few flowers), where its
 * chi-square is no good: then fit the interaction as a random effect.
 *
 * @param tables list of [[a, b], [c, d]], whole numbers of at least 0; strata with a zero margin say nothing
 * @param options `tarone: false` leaves Tarone's correction out
 * @returns `statistic`, `df` (strata used less 1), `p`, `strataUsed`; all but the last null because `too-few-strata`
 *   below two, or `zero-count` where the common odds ratio is 0 or divides by zero
 * @throws RangeError or TypeError naming the argument
 * @source Breslow & Day (1980) Statistical Methods in Cancer Research 1, equation 4.30; Tarone (1985) Biometrika 72, 91–95
 * @example breslowDay([[[3, 3], [0, 6]], [[6, 0], [2, 4]], [[5, 1], [6, 0]]]) // { statistic: 8.35831..., df: 2, p: 0.01531..., strataUsed: 3 }
 */
export function breslowDay(tables: readonly Table[], { tarone = true }: BreslowDayOption = {}): BreslowDay {
  const strata = strataOf('breslowDay', tables).filter(({ n1, n2, m1, m2 }) => n1 * n2 * m1 * m2 > 0);
  const strataUsed = strata.length;
  const nothing = { statistic: null, df: null, p: null, strataUsed };
  if (strataUsed < 2) return { ...nothing, because: 'too-few-strata' };
  const [r, s] = oddsParts(strata);
  if (r === 0 || s === 0) return { ...nothing, because: 'zero-count' };
  let [statistic, distance, variance] = [0, 0, 0];
  for (const stratum of strata) {
    const { distance: ownDistance, variance: own } = againstCommon(stratum, r / s);
    statistic += ownDistance ** 2 / own;
    distance += ownDistance;
    variance += own;
  }
  if (tarone) statistic -= distance ** 2 / variance;
  const df = strataUsed - 1;
  return { statistic, df, p: chiSquareCdf(statistic, df, { tail: 'upper' }), strataUsed };
}

/** How far a stands from its expectation at the odds ratio psi, and the variance there. */
function againstCommon(
  { a, b, c, d, n1, n2, m1, m2 }: Stratum,
  psi: number,
): { readonly distance: number; readonly variance: number } {
  const cells = [
    { distance: a, expected: expectedCount(n1, m1, n2, psi) },
    { distance: -b, expected: -expectedCount(n1, m2, n2, 1 / psi) },
    { distance: -c, expected: -expectedCount(n2, m1, n1, 1 / psi) },
    { distance: d, expected: expectedCount(n2, m2, n1, psi) },
  ];
  const variance = 1 / cells.reduce((sum, { expected }) => sum + 1 / Math.abs(expected), 0);
  // All four are equally far off: the smallest count says it with the most digits.
  cells.sort((x, y) => Math.abs(x.expected) - Math.abs(y.expected));
  return { distance: cells[0]!.distance - cells[0]!.expected, variance };
}

/** The count where a row of `row` and a column of `column` meet at the odds ratio psi: a root of a quadratic. */
function expectedCount(row: number, column: number, otherRow: number, psi: number): number {
  const b = otherRow - column + psi * (row + column);
  const root = Math.sqrt(Math.max(0, b * b - 4 * (psi - 1) * psi * row * column));
  // The stable form of the smaller root, which also holds at psi = 1.
  return (2 * psi * row * column) / (b + root);
}
