/** Checks of a fit's probabilities against the outcomes: calibration, score, explained variation. */

import { checkWhole } from '../numerics/arguments.ts';
import { chiSquareCdf } from '../numerics/gamma.ts';
import type { Fit } from './fit.ts';
import { unsettledBecause } from './terms.ts';

/** Probabilities with the counts that they are held against, one entry a row. */
export interface Prediction {
  readonly successes: ArrayLike<number>;
  /** All 1 where left out. */
  readonly trials?: ArrayLike<number>;
  readonly probabilities: ArrayLike<number>;
}

/** Counts and a number between 0 and 1 (or any score) of each row, checked. */
export interface CheckedPrediction {
  readonly successes: ArrayLike<number>;
  readonly trials: ArrayLike<number>;
  readonly probabilities: ArrayLike<number>;
}

/** Checks counts and `values`, of the same length; every value must be finite, and `rule` may ask for more. */
export function checkRows(
  caller: string,
  name: string,
  values: ArrayLike<number>,
  counts: { readonly successes: ArrayLike<number>; readonly trials: ArrayLike<number> },
): void {
  const { successes, trials } = counts;
  const n = values.length;
  if (n === 0 || successes.length !== n || trials.length !== n) {
    throw new RangeError(
      `${caller}: ${name}, successes and trials must have one entry a row, got ${n}, ${successes.length} and ${trials.length}`,
    );
  }
  for (let i = 0; i < n; i += 1) {
    const [y, m] = [successes[i]!, trials[i]!];
    if (!(Number.isInteger(y) && Number.isInteger(m) && y >= 0 && m >= 1 && y <= m)) {
      throw new RangeError(
        `${caller}: successes must be whole numbers from 0 to trials, got ${y} of ${m} in row ${i + 1}`,
      );
    }
    if (!Number.isFinite(values[i])) {
      throw new RangeError(`${caller}: ${name} must hold finite numbers, got ${values[i]} in row ${i + 1}`);
    }
  }
}

/** The rows of a fit, or of a prediction after its check. */
export function predictionOf(caller: string, source: Fit | Prediction): CheckedPrediction {
  if ('fitted' in source) return { ...source.design, probabilities: source.fitted };
  const { successes, probabilities } = source;
  const trials = source.trials ?? new Float64Array(successes.length).fill(1);
  checkRows(caller, 'probabilities', probabilities, { successes, trials });
  for (let i = 0; i < probabilities.length; i += 1) {
    if (probabilities[i]! < 0 || probabilities[i]! > 1) {
      throw new RangeError(
        `${caller}: probabilities must be numbers from 0 to 1, got ${probabilities[i]} in row ${i + 1}`,
      );
    }
  }
  return { successes, trials, probabilities };
}

/** One group of the Hosmer-Lemeshow table. */
export interface CalibrationGroup {
  readonly trials: number;
  readonly observed: number;
  readonly expected: number;
}

/** The test, with the groups it compares; null, with `because`, where fewer than three groups can be told apart. */
export interface HosmerLemeshow {
  readonly statistic: number | null;
  readonly df: number | null;
  readonly p: number | null;
  readonly because?: string;
  readonly cutPoints: readonly number[];
  readonly groups: readonly CalibrationGroup[];
}

/** Distinct type-7 quantiles of the probabilities, each counted once a trial. */
function cutPointsOf({ probabilities, trials }: CheckedPrediction, groups: number): readonly number[] {
  let total = 0;
  for (let i = 0; i < trials.length; i += 1) total += trials[i]!;
  const each = new Float64Array(total);
  for (let i = 0, at = 0; i < trials.length; at += trials[i]!, i += 1) {
    each.fill(probabilities[i]!, at, at + trials[i]!);
  }
  each.sort();
  const quantiles = Array.from({ length: groups + 1 }, (_, k) => {
    // Whole numbers divided once: a position on an order statistic is hit exactly.
    const at = ((total - 1) * k) / groups;
    const below = each[Math.floor(at)]!;
    const above = each[Math.ceil(at)]!;
    return below === above ? below : below + (at - Math.floor(at)) * (above - below);
  });
  return [...new Set(quantiles)];
}

function groupsOf(rows: CheckedPrediction, cutPoints: readonly number[]): readonly CalibrationGroup[] {
  const groups = cutPoints.slice(1).map(() => ({ trials: 0, observed: 0, expected: 0 }));
  for (let i = 0; i < rows.trials.length; i += 1) {
    const probability = rows.probabilities[i]!;
    const k = Math.max(0, cutPoints.findIndex((cut) => probability <= cut) - 1);
    const group = groups[k]!;
    group.trials += rows.trials[i]!;
    group.observed += rows.successes[i]!;
    group.expected += rows.trials[i]! * probability;
  }
  return groups.filter(({ trials }) => trials > 0);
}

/**
 * Hosmer-Lemeshow test of calibration.
 *
 * Answers whether successes are as many as expected among flowers of low, middling and high fitted probability. Not
 * for few flowers (it finds nothing) nor for very many (it finds anything); the groups are worth more than the p.
 * Groups are cut at type-7 quantiles of the fitted probabilities, right-closed, tied cuts merged; df = groups − 2.
 *
 * @param fit a fit, or probabilities with counts
 * @param options `groups`, how many are asked for, at least 3, 10 by default
 * @returns statistic, df and p, all null because `too-few-groups` (or why the fit has not settled); and the groups
 * @throws RangeError when `groups` is no whole number of at least 3
 * @source Hosmer & Lemeshow (2000) Applied Logistic Regression, section 5.2.2
 * @example hosmerLemeshow(fit, { groups: 5 }).statistic // 0.49880...
 */
export function hosmerLemeshow(
  fit: Fit | Prediction,
  { groups: asked = 10 }: { readonly groups?: number } = {},
): HosmerLemeshow {
  checkWhole('hosmerLemeshow', 'groups', asked, 3);
  const rows = predictionOf('hosmerLemeshow', fit);
  const unsettled = 'fitted' in fit ? unsettledBecause(fit) : null;
  const unknown = { statistic: null, df: null, p: null };
  if (unsettled !== null) return { ...unknown, because: unsettled, cutPoints: [], groups: [] };
  const cutPoints = cutPointsOf(rows, asked);
  const groups = groupsOf(rows, cutPoints.length === 1 ? [cutPoints[0]!, cutPoints[0]!] : cutPoints);
  if (groups.length < 3) return { ...unknown, because: 'too-few-groups', cutPoints, groups };
  const statistic = groups.reduce((sum, { trials, observed, expected }) => {
    const excess = observed - expected;
    return sum + (excess * excess) / (expected * (1 - expected / trials));
  }, 0);
  const df = groups.length - 2;
  return { statistic, df, p: chiSquareCdf(statistic, df, { tail: 'upper' }), cutPoints, groups };
}

export interface BrierScore {
  /** Mean squared difference of outcome and probability, over trials. */
  readonly score: number;
  /** That of the overall rate. */
  readonly reference: number;
  /** 1 − score / reference; null where every outcome is the same. */
  readonly skill: number | null;
}

/**
 * Brier score: the mean squared difference between outcome (0 or 1) and probability.
 *
 * Answers how near the probabilities come to the outcomes; 0 is perfect, 0.25 is what a constant 1/2 gets. On the
 * rows that the fit has seen it flatters: see `leaveOneOut`.
 *
 * @param fit a fit, or probabilities with counts
 * @returns `score`, from 0 to 1; `reference`, that of the overall rate; `skill`, at most 1, null where every outcome is
 *   the same
 * @throws RangeError when lengths, counts or probabilities break their rules
 * @source Brier (1950) Monthly Weather Review 78, 1–3
 * @example brier({ successes: [1, 0], probabilities: [0.8, 0.4] }).score // 0.1
 */
export function brier(fit: Fit | Prediction): BrierScore {
  const { successes, trials, probabilities } = predictionOf('brier', fit);
  let total = 0;
  let fruits = 0;
  let squares = 0;
  for (let i = 0; i < trials.length; i += 1) {
    const [y, m, q] = [successes[i]!, trials[i]!, probabilities[i]!];
    total += m;
    fruits += y;
    squares += y * (1 - q) * (1 - q) + (m - y) * q * q;
  }
  const rate = fruits / total;
  const score = squares / total;
  const reference = rate * (1 - rate);
  return { score, reference, skill: reference > 0 ? 1 - score / reference : null };
}

/** Measures of explained variation; each null where every outcome is the same. */
export interface PseudoRSquared {
  readonly mcFadden: number | null;
  readonly coxSnell: number | null;
  readonly nagelkerke: number | null;
  readonly tjur: number | null;
}

function logLikelihoods({ successes, trials, probabilities }: CheckedPrediction) {
  const sums = { trials: 0, successes: 0, fitted: 0, meanOfSuccesses: 0, meanOfFailures: 0 };
  for (let i = 0; i < trials.length; i += 1) {
    const [y, failures, q] = [successes[i]!, trials[i]! - successes[i]!, probabilities[i]!];
    sums.trials += trials[i]!;
    sums.successes += y;
    sums.meanOfSuccesses += y * q;
    sums.meanOfFailures += failures * q;
    if (y > 0) sums.fitted += y * Math.log(q);
    if (failures > 0) sums.fitted += failures * Math.log1p(-q);
  }
  return sums;
}

/**
 * Pseudo R² of a fit, over single trials.
 *
 * Answers how much of the variation of outcomes the columns explain: McFadden's 1 − logLik / logLik of the overall
 * rate, Cox and Snell's, Nagelkerke's, and Tjur's difference of mean probability between successes and failures. Not
 * to be compared between data sets.
 *
 * @param fit a fit, or probabilities with counts
 * @source McFadden (1974); Cox & Snell (1989); Nagelkerke (1991) Biometrika 78, 691; Tjur (2009) American
 *   Statistician 63, 366
 * @example pseudoRSquared(fit).tjur // 0.12417...
 */
export function pseudoRSquared(fit: Fit | Prediction): PseudoRSquared {
  const sums = logLikelihoods(predictionOf('pseudoRSquared', fit));
  const { trials: n, successes: y } = sums;
  if (y === 0 || y === n) return { mcFadden: null, coxSnell: null, nagelkerke: null, tjur: null };
  const baseline = y * Math.log(y / n) + (n - y) * Math.log((n - y) / n);
  const coxSnell = -Math.expm1((2 * (baseline - sums.fitted)) / n);
  return {
    mcFadden: 1 - sums.fitted / baseline,
    coxSnell,
    nagelkerke: coxSnell / -Math.expm1((2 * baseline) / n),
    tjur: sums.meanOfSuccesses / y - sums.meanOfFailures / (n - y),
  };
}
