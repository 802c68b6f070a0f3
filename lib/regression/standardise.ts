/** Marginal standardisation: what the fitted probability would be over the same rows, were columns set to values. */

import { checkChoice } from '../numerics/arguments.ts';
import { checkLevel, type Estimate, type LevelOption, unknown } from '../proportions/interval.ts';
import { type Curve, curveOf, type EffectsInAverage } from './effects-in-average.ts';
import type { Fit } from './fit.ts';
import type { MixedFit } from './mixed-logistic.ts';
import { linkInverse } from './response.ts';
import { twoSidedP, twoSidedQuantile, unsettledBecause } from './terms.ts';

/** Values of columns in one scenario: one number for all rows, or one a row (an interaction's column, say). */
export type Setting = number | ArrayLike<number>;

/** One scenario; columns that it does not name stay as they are. */
export type Scenario = Readonly<Record<string, Setting>> | ReadonlyMap<string, Setting>;

export interface StandardiseOptions extends LevelOption {
  /** The scenarios; differences and ratios are against the first. */
  readonly set: readonly Scenario[];
  /** Weight of each row in the average; its trials where left out. 0 leaves a row out. */
  readonly weights?: ArrayLike<number>;
  /** Random effects of a mixed fit: conditional `modes` (default), `zero` or `averaged`; others have none. */
  readonly effects?: EffectsInAverage;
}

/** An estimate with its delta-method standard error. */
export interface Standardised extends Estimate {
  readonly se: number | null;
}

/** Scenario `scenario` against the first. */
export interface StandardisedContrast {
  readonly scenario: number;
  /** Probability minus that of the first scenario. */
  readonly difference: Standardised & { readonly p: number | null };
  /** Probability divided by that of the first scenario; its `se` is that of the logarithm. */
  readonly ratio: Standardised;
  /** Marginal log odds ratio. */
  readonly logOddsRatio: Standardised;
}

export interface Standardisation {
  /** One a scenario; ranges are made on the logit scale, so they stay between 0 and 1. */
  readonly probabilities: readonly Standardised[];
  /** One a scenario after the first. */
  readonly contrasts: readonly StandardisedContrast[];
  /** Covariance of the probabilities, k × k row by row; null where the fit has not settled. */
  readonly covariance: Float64Array | null;
}

/** A mean probability and its gradient by the coefficients. */
interface Mean {
  readonly value: number;
  readonly gradient: Float64Array;
}

function settingsOf(scenario: Scenario): ReadonlyMap<string, Setting> {
  return scenario instanceof Map ? scenario : new Map(Object.entries(scenario));
}

/** The design's columns with those of a scenario in their place. */
function scenarioColumns({ design }: Fit | MixedFit, scenario: Scenario): readonly Float64Array[] {
  const columns = [...design.columns];
  for (const [name, setting] of settingsOf(scenario)) {
    const j = design.names.indexOf(name);
    if (j < 0) {
      throw new RangeError(
        `standardise: set must name columns of the fit (${design.names.join(', ')}), got ${name}`,
      );
    }
    const values =
      typeof setting === 'number' ? new Float64Array(design.n).fill(setting) : Float64Array.from(setting);
    if (values.length !== design.n || !values.every(Number.isFinite)) {
      throw new RangeError(
        `standardise: set must give ${name} one finite number, or ${design.n} of them, got ${String(setting)}`,
      );
    }
    columns[j] = values;
  }
  return columns;
}

function checkWeights({ design }: Fit | MixedFit, weights: ArrayLike<number>): number {
  if (weights.length !== design.n) {
    throw new RangeError(`standardise: weights must have ${design.n} entries, got ${weights.length}`);
  }
  let total = 0;
  for (let i = 0; i < design.n; i += 1) {
    if (!(weights[i]! >= 0 && Number.isFinite(weights[i]))) {
      throw new RangeError(
        `standardise: weights must be numbers of at least 0, got ${weights[i]} in row ${i + 1}`,
      );
    }
    total += weights[i]!;
  }
  if (total === 0) throw new RangeError('standardise: weights must have a sum above 0, got 0');
  return total;
}

function meanProbability(
  { design, coefficients }: Fit | MixedFit,
  { probability, slope, offset }: Curve,
  columns: readonly Float64Array[],
  weights: ArrayLike<number>,
  total: number,
): Mean {
  const p = columns.length;
  const gradient = new Float64Array(p);
  let sum = 0;
  for (let i = 0; i < design.n; i += 1) {
    const share = weights[i]! / total;
    if (share === 0) continue;
    let eta = offset[i]!;
    for (let j = 0; j < p; j += 1) eta += columns[j]![i]! * coefficients[j]!;
    sum += share * probability(eta);
    const slopeHere = share * slope(eta);
    for (let j = 0; j < p; j += 1) gradient[j]! += slopeHere * columns[j]![i]!;
  }
  return { value: sum, gradient };
}

/** a′ V b for the p × p covariance V. */
export function bilinear(a: Float64Array, covariance: Float64Array, b: Float64Array): number {
  const p = a.length;
  let sum = 0;
  for (let j = 0; j < p; j += 1) {
    let inner = 0;
    for (let k = 0; k < p; k += 1) inner += covariance[j * p + k]! * b[k]!;
    sum += a[j]! * inner;
  }
  return sum;
}

function around(estimate: number, se: number, z: number): Standardised {
  return { estimate, se, lower: estimate - z * se, upper: estimate + z * se };
}

function probabilityRange(mean: number, se: number, z: number): Standardised {
  const logit = Math.log(mean / (1 - mean));
  const reach = (z * se) / (mean * (1 - mean));
  return {
    estimate: mean,
    se,
    lower: linkInverse('logit', logit - reach),
    upper: linkInverse('logit', logit + reach),
  };
}

function contrastOf(
  scenario: number,
  first: Mean,
  other: Mean,
  covariance: Float64Array,
  z: number,
): StandardisedContrast {
  const seOf = (scaleOther: number, scaleFirst: number): number => {
    const direction = other.gradient.map((value, j) => scaleOther * value - scaleFirst * first.gradient[j]!);
    return Math.sqrt(Math.max(0, bilinear(direction, covariance, direction)));
  };
  const [a, b] = [other.value, first.value];
  const se = seOf(1, 1);
  const seLogRatio = seOf(1 / a, 1 / b);
  const ratio = a / b;
  const difference = around(a - b, se, z);
  return {
    scenario,
    difference: { ...difference, p: se > 0 ? twoSidedP((a - b) / se) : null },
    ratio: {
      estimate: ratio,
      se: seLogRatio,
      lower: ratio * Math.exp(-z * seLogRatio),
      upper: ratio * Math.exp(z * seLogRatio),
    },
    logOddsRatio: around(
      Math.log(a / (1 - a)) - Math.log(b / (1 - b)),
      seOf(1 / (a * (1 - a)), 1 / (b * (1 - b))),
      z,
    ),
  };
}

function unknownStandardisation(count: number, because: string): Standardisation {
  const nothing = { ...unknown(because), se: null };
  const contrasts = Array.from({ length: count - 1 }, (_, k) => ({
    scenario: k + 1,
    difference: { ...nothing, p: null },
    ratio: nothing,
    logOddsRatio: nothing,
  }));
  return { probabilities: Array.from({ length: count }, () => nothing), contrasts, covariance: null };
}

/**
 * Marginal standardisation (g-computation).
 *
 * Answers what share of successes the model expects over the rows of the fit if some columns were the same in all of
 * them, the others as observed; and how scenarios differ. Not a like-for-like comparison where pairs chose their
 * storage: it is only as good as the columns of the model.
 *
 * Standard errors by the delta method from the full covariance of the coefficients, the rows held fixed. The range of
 * a difference is estimate ± z · se and may pass 1; that of a ratio is made on the log scale.
 *
 * In a mixed fit plants keep their conditional modes, held fixed like the variances, unless `effects` says otherwise.
 *
 * @param fit a fit of `logistic` or `mixedLogistic`; where it has not settled every estimate is null, because `separated` or `not-settled`
 * @param options `set`, scenarios; `weights`, n numbers of at least 0; `effects` of a mixed fit; `level`
 * @returns `probabilities`, one a scenario, from 0 to 1; `contrasts` with the first scenario, one a later one;
 *   `covariance` of the k probabilities, k × k
 * @throws RangeError when `set` is empty or names a column that the fit does not have, when values or weights have
 *   another length than the rows or are not finite, or `level` is not between 0 and 1
 * @source Lane & Nelder (1982) Biometrics 38, 613–621; delta method as in Oehlert (1992) American Statistician 46, 27
 * @example standardise(fit, { set: [{ stored: 0 }, { stored: 1 }] }).probabilities.map(({ estimate }) => estimate) // [0.58278..., 0.52418...]
 */
export function standardise(fit: Fit | MixedFit, options: StandardiseOptions): Standardisation {
  const { set, level = 0.95, weights = fit.design.trials, effects = 'modes' } = options;
  checkChoice('standardise', 'effects', effects, ['modes', 'zero', 'averaged']);
  checkLevel('standardise', level);
  if (set.length === 0) throw new RangeError('standardise: set must hold at least one scenario, got none');
  const total = checkWeights(fit, weights);
  const scenarios = set.map((scenario) => scenarioColumns(fit, scenario));
  const because = unsettledBecause(fit);
  if (because !== null) return unknownStandardisation(set.length, because);
  const curve = curveOf(fit, effects);
  const means = scenarios.map((columns) => meanProbability(fit, curve, columns, weights, total));
  const z = twoSidedQuantile(level);
  const covariance = Float64Array.from(
    means.flatMap((a) => means.map((b) => bilinear(a.gradient, fit.covariance, b.gradient))),
  );
  return {
    probabilities: means.map(({ value }, k) =>
      probabilityRange(value, Math.sqrt(covariance[k * means.length + k]!), z),
    ),
    contrasts: means.slice(1).map((mean, k) => contrastOf(k + 1, means[0]!, mean, fit.covariance, z)),
    covariance,
  };
}
