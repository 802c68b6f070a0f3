/** Predictions at given values of the columns. */

import { checkLevel, type Estimate, type LevelOption, unknown } from '../proportions/interval.ts';
import type { Fit } from './fit.ts';
import { linkInverse } from './response.ts';
import { bilinear } from './standardise.ts';
import { twoSidedQuantile, unsettledBecause } from './terms.ts';

/** A predicted probability; its range is made on the scale of the linear predictor, so it stays between 0 and 1. */
export interface PredictedProbability extends Estimate {
  /** Linear predictor and its standard error; null where the estimate is. */
  readonly linear: number | null;
  readonly se: number | null;
}

/** Values of columns by name; 0 where not named, the intercept 1. */
export type ColumnValues = Readonly<Record<string, number>> | ReadonlyMap<string, number>;

/** The row of a design at given values of its columns. */
export function rowOf(caller: string, { design: { names } }: Fit, values: ColumnValues): Float64Array {
  const row = new Float64Array(names.length);
  if (names[0] === '(Intercept)') row[0] = 1;
  for (const [name, value] of values instanceof Map ? values : Object.entries(values)) {
    const j = names.indexOf(name);
    if (j < 0 || !Number.isFinite(value)) {
      throw new RangeError(
        `${caller}: rows must give finite numbers to columns of the fit (${names.join(', ')}), got ${value} for ${name}`,
      );
    }
    row[j] = value;
  }
  return row;
}

/**
 * Fitted probabilities at given values of the columns, with their ranges.
 *
 * Answers what share of successes the model expects for one kind of flower. At mean values of the columns it is the
 * estimated marginal mean of handbooks; for the share over the flowers of a season see `standardise`. Not to be read
 * past the values that were tried.
 *
 * @param fit a fit; where it has not settled all is null, because `separated` or `not-settled`
 * @param rows one record of column values a prediction
 * @param options `level`, a proportion, 0.95 by default
 * @returns one entry a row: probability from 0 to 1 with its range, made on the scale of the link
 * @throws RangeError when a name is no column of the fit, a value is not finite, or `level` is not between 0 and 1
 * @source McCullagh & Nelder (1989) Generalized Linear Models, section 4.4; Searle, Speed & Milliken (1980) American
 *   Statistician 34, 216–221
 * @example predictAt(fit, [{ stored: 0 }, { stored: 1 }]).map(({ estimate }) => estimate) // [0.74999..., 0.69755...]
 */
export function predictAt(
  fit: Fit,
  rows: readonly ColumnValues[],
  { level = 0.95 }: LevelOption = {},
): readonly PredictedProbability[] {
  checkLevel('predictAt', level);
  const vectors = rows.map((values) => rowOf('predictAt', fit, values));
  const because = unsettledBecause(fit);
  if (because !== null) return vectors.map(() => ({ ...unknown(because), linear: null, se: null }));
  const z = twoSidedQuantile(level);
  return vectors.map((row) => {
    const linear = row.reduce((sum, value, j) => sum + value * fit.coefficients[j]!, 0);
    const se = Math.sqrt(bilinear(row, fit.covariance, row));
    const at = (shift: number): number => linkInverse(fit.link, linear + shift);
    return { estimate: at(0), lower: at(-z * se), upper: at(z * se), linear, se };
  });
}
