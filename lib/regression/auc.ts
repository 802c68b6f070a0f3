/** Discrimination: the area under the receiver operating characteristic curve. */

import { checkLevel, type Estimate, type LevelOption, unknown } from '../proportions/interval.ts';
import { checkRows } from './diagnostics.ts';
import type { Fit } from './fit.ts';
import { twoSidedQuantile } from './terms.ts';

/** Any number by which successes should stand above failures, one a row. */
export interface ScoredRows {
  readonly successes: ArrayLike<number>;
  /** All 1 where left out. */
  readonly trials?: ArrayLike<number>;
  readonly scores: ArrayLike<number>;
}

/** The area, with its standard error by DeLong's method. */
export interface Auc extends Estimate {
  readonly se: number | null;
}

/** For every row, the share of failures below its score and that of successes above, ties counting half. */
function placements(scores: ArrayLike<number>, successes: ArrayLike<number>, trials: ArrayLike<number>) {
  const order = Array.from({ length: scores.length }, (_, i) => i).sort((a, b) => scores[a]! - scores[b]!);
  const below = new Float64Array(scores.length);
  const above = new Float64Array(scores.length);
  let failuresBefore = 0;
  let successesBefore = 0;
  for (let from = 0; from < order.length; ) {
    let to = from;
    let fruits = 0;
    let failures = 0;
    while (to < order.length && scores[order[to]!] === scores[order[from]!]) {
      fruits += successes[order[to]!]!;
      failures += trials[order[to]!]! - successes[order[to]!]!;
      to += 1;
    }
    for (let k = from; k < to; k += 1) {
      below[order[k]!] = failuresBefore + failures / 2;
      above[order[k]!] = successesBefore + fruits / 2;
    }
    failuresBefore += failures;
    successesBefore += fruits;
    from = to;
  }
  const [n1, n0] = [successesBefore, failuresBefore];
  return { n1, n0, below: below.map((value) => value / n0), above: above.map((value) => 1 - value / n1) };
}

/**
 * Area under the ROC curve, with DeLong's standard error.
 *
 * Answers how often a success has the higher score when one success and one failure are drawn; ties count half. 0.5
 * is no better than chance. It says nothing of calibration, and on the rows that a fit has seen it flatters. The range
 * is estimate ± z · se and may pass 1; with one success or one failure there is no standard error.
 *
 * @param source a fit, or scores with counts
 * @param options `level`, a proportion, 0.95 by default
 * @returns the area; null because `one-outcome` where all outcomes are the same
 * @throws RangeError when lengths, counts, scores or `level` break their rules
 * @source DeLong, DeLong & Clarke-Pearson (1988) Biometrics 44, 837–845
 * @example auc({ successes: [0, 1, 1], scores: [0.2, 0.3, 0.9] }).estimate // 1
 */
export function auc(source: Fit | ScoredRows, { level = 0.95 }: LevelOption = {}): Auc {
  checkLevel('auc', level);
  const { successes, trials, scores } = rowsOf(source);
  const { n1, n0, below, above } = placements(scores, successes, trials);
  if (n1 === 0 || n0 === 0) return { ...unknown('one-outcome'), se: null };
  let estimate = 0;
  for (let i = 0; i < scores.length; i += 1) estimate += (successes[i]! * below[i]!) / n1;
  if (n1 === 1 || n0 === 1) return { estimate, se: null, lower: null, upper: null };
  let ofSuccesses = 0;
  let ofFailures = 0;
  for (let i = 0; i < scores.length; i += 1) {
    ofSuccesses += successes[i]! * (below[i]! - estimate) ** 2;
    ofFailures += (trials[i]! - successes[i]!) * (above[i]! - estimate) ** 2;
  }
  const se = Math.sqrt(ofSuccesses / (n1 - 1) / n1 + ofFailures / (n0 - 1) / n0);
  const z = twoSidedQuantile(level);
  return { estimate, se, lower: estimate - z * se, upper: estimate + z * se };
}

function rowsOf(source: Fit | ScoredRows) {
  if ('fitted' in source) {
    const { successes, trials } = source.design;
    return { successes, trials, scores: source.fitted };
  }
  const trials = source.trials ?? new Float64Array(source.successes.length).fill(1);
  const { successes, scores } = source;
  checkRows('auc', 'scores', scores, { successes, trials });
  return { successes, trials, scores };
}
