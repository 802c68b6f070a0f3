/** Differences between predictions of one fit, with p-values that know how many were looked at. */

import { checkChoice } from '../numerics/arguments.ts';
import { normalRangeTail } from '../numerics/normal-range.ts';
import { checkLevel, type Estimate, type LevelOption, unknown } from '../proportions/interval.ts';
import type { Fit } from './fit.ts';
import { type ColumnValues, rowOf } from './predict-at.ts';
import { linkInverse, linkSlope } from './response.ts';
import { bilinear } from './standardise.ts';
import { twoSidedP, twoSidedQuantile, unsettledBecause } from './terms.ts';

export type Adjustment = 'none' | 'bonferroni' | 'holm' | 'tukey';

/** Options of `compareAt`. */
export interface CompareOptions extends LevelOption {
  /** `linear` (default), differences of the linear predictor, log odds ratios with the logit; `probability`. */
  readonly scale?: 'linear' | 'probability';
  /** How p-values are adjusted for the number of differences: `none` (default), `bonferroni`, `holm`, `tukey`. */
  readonly adjust?: Adjustment;
}

/** Prediction `second` minus prediction `first`, indices of `rows`. */
export interface Comparison extends Estimate {
  readonly first: number;
  readonly second: number;
  readonly se: number | null;
  /** Two-sided, of no difference, adjusted as asked. */
  readonly p: number | null;
}

/** A value and its gradient by the coefficients. */
interface Predicted {
  readonly value: number;
  readonly gradient: Float64Array;
}

function predicted(
  { coefficients, link }: Fit,
  row: Float64Array,
  scale: 'linear' | 'probability',
): Predicted {
  const eta = row.reduce((sum, value, j) => sum + value * coefficients[j]!, 0);
  if (scale === 'linear') return { value: eta, gradient: row };
  const slope = linkSlope(link, eta);
  return { value: linkInverse(link, eta), gradient: row.map((value) => value * slope) };
}

/** Holm's step-down values: the smallest p times all, the next times one fewer, never decreasing. */
function holm(ps: readonly number[]): readonly number[] {
  const order = [...ps.keys()].sort((a, b) => ps[a]! - ps[b]!);
  const adjusted = [...ps];
  let most = 0;
  order.forEach((k, rank) => {
    most = Math.max(most, Math.min(1, (ps.length - rank) * ps[k]!));
    adjusted[k] = most;
  });
  return adjusted;
}

/**
 * Adjusted p-values of a list of two-sided normal statistics.
 *
 * @param zs statistics, one a difference
 * @param count number of predictions that were compared, for Tukey's range
 * @param adjust the method
 */
export function adjustedP(zs: readonly number[], count: number, adjust: Adjustment): readonly number[] {
  const ps = zs.map(twoSidedP);
  if (adjust === 'holm') return holm(ps);
  if (adjust === 'bonferroni') return ps.map((p) => Math.min(1, p * ps.length));
  return adjust === 'tukey' ? zs.map((z) => normalRangeTail(Math.abs(z) * Math.SQRT2, count)) : ps;
}

function pairsOf(count: number): readonly (readonly [number, number])[] {
  const all = Array.from({ length: count }, (_, k) => k);
  return all.flatMap((first) => all.slice(first + 1).map((second) => [first, second] as const));
}

/**
 * All differences between fitted values at given values of the columns.
 *
 * Answers which storage methods (or plants, or ages) differ in the model, each against each. With mean values of the
 * other columns these are the contrasts of estimated marginal means: an indicator of a factor that is averaged has the
 * value 1 / levels for equal weights, its mean over the rows for proportional ones. Not for a search among many plants:
 * pool them (`mixedLogistic`).
 *
 * Ranges are estimate ± z · se, each on its own, whatever `adjust` says. Tukey's p-values treat the differences as those
 * of equally precise independent means; for others they are approximate.
 *
 * @param fit a fit; where it has not settled all is null, because `separated` or `not-settled`
 * @param rows at least two records of column values; columns not named are 0, the intercept 1
 * @param options `scale`, `adjust`, `level`
 * @returns one comparison a pair of rows, (0, 1), (0, 2), …, (1, 2), …
 * @throws RangeError when there are fewer than two rows, a name is no column of the fit, a value is not finite, or an
 *   option is none of its choices
 * @source Searle, Speed & Milliken (1980) American Statistician 34, 216–221; Holm (1979) Scandinavian Journal of
 *   Statistics 6, 65–70; Kramer (1956) Biometrics 12, 307–310
 * @example compareAt(fit, [{}, { stored: 1 }, { stored: 1, ageDays: 80 }], { adjust: 'holm' }).map(({ p }) => p) // [0.69583..., 0.00060..., 0.07470...]
 */
export function compareAt(
  fit: Fit,
  rows: readonly ColumnValues[],
  { scale = 'linear', adjust = 'none', level = 0.95 }: CompareOptions = {},
): readonly Comparison[] {
  checkLevel('compareAt', level);
  checkChoice('compareAt', 'scale', scale, ['linear', 'probability']);
  checkChoice('compareAt', 'adjust', adjust, ['none', 'bonferroni', 'holm', 'tukey']);
  if (rows.length < 2) throw new RangeError(`compareAt: rows must hold at least two, got ${rows.length}`);
  const vectors = rows.map((values) => rowOf('compareAt', fit, values));
  const pairs = pairsOf(rows.length);
  const because = unsettledBecause(fit);
  if (because !== null) {
    return pairs.map(([first, second]) => ({ first, second, ...unknown(because), se: null, p: null }));
  }
  const values = vectors.map((row) => predicted(fit, row, scale));
  const z = twoSidedQuantile(level);
  const differences = pairs.map(([first, second]) => {
    const [from, to] = [values[first]!, values[second]!];
    const direction = to.gradient.map((value, j) => value - from.gradient[j]!);
    const se = Math.sqrt(Math.max(0, bilinear(direction, fit.covariance, direction)));
    return { first, second, estimate: to.value - from.value, se };
  });
  // Equal rows differ by nothing for certain: there is no test of that.
  const ps = adjustedP(
    differences.map(({ estimate, se }) => (se > 0 ? estimate / se : 0)),
    rows.length,
    adjust,
  );
  return differences.map(({ first, second, estimate, se }, k) => ({
    first,
    second,
    estimate,
    lower: estimate - z * se,
    upper: estimate + z * se,
    se,
    p: se > 0 ? ps[k]! : null,
  }));
}
