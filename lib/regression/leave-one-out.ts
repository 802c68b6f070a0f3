/** Cross-validation: each flower judged by a fit that has not seen it. */

import type { Fit } from './fit.ts';
import { type JoinedRows, joinRows } from './joined-rows.ts';
import { scoringProblem } from './logistic.ts';
import { basisCoefficients } from './orthogonal-basis.ts';
import { type Counts, linkInverse } from './response.ts';
import { maximise, type ScoringProblem } from './scoring.ts';
import { separatingColumns } from './separation.ts';

/** Scores of predictions for rows that were left out; null, with `because`, where a fit without them fails. */
export interface CrossValidation {
  /** Sum over trials of the logarithm of the probability given to what happened. */
  readonly logScore: number | null;
  /** Mean over trials of the squared difference of outcome and probability. */
  readonly brier: number | null;
  /** Probability of a success predicted for each row, the mean over its trials. */
  readonly probabilities: Float64Array | null;
  /** `separated`: a fit without some of the rows is infinite; `row-alone`: some row is the only one to tell a column. */
  readonly because?: string;
}

interface Prepared {
  readonly fit: Fit;
  readonly joined: JoinedRows;
  readonly problem: ScoringProblem;
  readonly start: Float64Array;
}

function prepare(caller: string, fit: Fit): Prepared {
  if (fit.interceptCorrected) {
    throw new RangeError(`${caller}: fit must be as fitted, got one with its intercept corrected`);
  }
  const joined = joinRows(fit.design);
  const problem = scoringProblem(caller, joined, fit.design.names, fit.link, fit.method === 'firth');
  const start = fit.convergence.settled
    ? basisCoefficients(problem.basis, fit.coefficients)
    : new Float64Array(fit.df);
  return { fit, joined, problem, start };
}

/** Whether what is left after taking rows away separates; rows without trials do not count. */
function separatedWithout({ columns }: JoinedRows, { successes, trials }: Counts): boolean {
  const kept = [...trials.keys()].filter((i) => trials[i]! > 0);
  const pick = (values: Float64Array): Float64Array => Float64Array.from(kept, (i) => values[i]!);
  return (
    separatingColumns(columns.map(pick), { successes: pick(successes), trials: pick(trials) }).length > 0
  );
}

function linearPredictors(
  { problem }: Prepared,
  gamma: Float64Array,
  rows: readonly number[],
): readonly number[] {
  const { p, rows: values } = problem.basis;
  return rows.map((row) => {
    let eta = problem.offset[row]!;
    for (let k = 0; k < p; k += 1) eta += values[row * p + k]! * gamma[k]!;
    return eta;
  });
}

/** Probabilities for some joined rows from a fit to the counts that are left; or why there are none. */
function predictWithout(
  prepared: Prepared,
  counts: Counts,
  rows: readonly number[],
): readonly number[] | string {
  const { problem, joined, start, fit } = prepared;
  const end = maximise({ ...problem, counts }, start, problem.basis.p);
  if (end === null) return 'row-alone';
  const etas = linearPredictors(prepared, end.point.gamma, rows);
  if (fit.method === 'maximum-likelihood') {
    const all = linearPredictors(prepared, end.point.gamma, [...joined.successes.keys()]);
    const moderate = end.convergence.settled && all.every((eta) => Math.abs(eta) < 12);
    if (!moderate && separatedWithout(joined, counts)) return 'separated';
  }
  return end.convergence.settled ? etas.map((eta) => linkInverse(fit.link, eta)) : 'row-alone';
}

function failed(because: string): CrossValidation {
  return { logScore: null, brier: null, probabilities: null, because };
}

/** Sums of the scores as rows are judged. */
interface Tally {
  logScore: number;
  squares: number;
}

function judge(tally: Tally, successes: number, failures: number, probability: number): void {
  if (successes > 0) tally.logScore += successes * Math.log(probability);
  if (failures > 0) tally.logScore += failures * Math.log1p(-probability);
  tally.squares += successes * (1 - probability) ** 2 + failures * probability ** 2;
}

/** The probability for a joined row where one of its successes, or failures, is taken away. */
function withoutOne(prepared: Prepared, row: number, success: 0 | 1): number | string {
  const { joined } = prepared;
  const successes = joined.successes.slice();
  const trials = joined.trials.slice();
  successes[row]! -= success;
  trials[row]! -= 1;
  const predicted = predictWithout(prepared, { successes, trials }, [row]);
  return typeof predicted === 'string' ? predicted : predicted[0]!;
}

/**
 * Leave-one-out cross-validation over single trials (flowers).
 *
 * Answers how well the model foretells a flower that it has not seen: log score (nearer 0 is better) and Brier score,
 * to choose between models. Flowers of one morning are not independent, so it flatters a little; `crossValidate`
 * leaves out whole groups. Flowers with equal columns and outcome share one refit, so it is exact and quick.
 *
 * @param fit a fit of `logistic`; it is refitted by its own method and link
 * @returns scores over all trials; null because `separated` or `row-alone` where a refit is not finite
 * @throws RangeError when the fit's intercept was corrected
 * @source Stone (1974) Journal of the Royal Statistical Society B 36, 111–147
 * @example leaveOneOut(fit).logScore // -78.18679...
 */
export function leaveOneOut(fit: Fit): CrossValidation {
  const prepared = prepare('leaveOneOut', fit);
  const { joined } = prepared;
  const tally: Tally = { logScore: 0, squares: 0 };
  const perOutcome: [Float64Array, Float64Array] = [new Float64Array(joined.m), new Float64Array(joined.m)];
  for (let row = 0; row < joined.m; row += 1) {
    const fruits = joined.successes[row]!;
    const counts: [number, number] = [joined.trials[row]! - fruits, fruits];
    for (const success of [0, 1] as const) {
      if (counts[success] === 0) continue;
      const probability = withoutOne(prepared, row, success);
      if (typeof probability === 'string') return failed(probability);
      perOutcome[success][row] = probability;
      judge(tally, success === 1 ? fruits : 0, success === 1 ? 0 : counts[0], probability);
    }
  }
  const { design } = fit;
  const probabilities = Float64Array.from(joined.rowOf, (row, i) => {
    const share = design.successes[i]! / design.trials[i]!;
    return share * perOutcome[1][row]! + (1 - share) * perOutcome[0][row]!;
  });
  return { logScore: tally.logScore, brier: tally.squares / totalOf(joined.trials), probabilities };
}

function totalOf(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0);
}

/** Which rows are left out together. */
export interface FoldsOption {
  /** A label a row; rows of one label are left out together. */
  readonly folds: ArrayLike<string | number>;
}

/**
 * K-fold cross-validation, or by whole groups (mornings, vials, growers).
 *
 * Answers how well the model foretells rows of a fold that it has not seen. Where the rows of the other folds are
 * separated, maximum likelihood would claim certainties: the scores are then null; use Firth's method.
 *
 * @param fit a fit of `logistic`; it is refitted by its own method and link
 * @param options `folds`, one label a row, at least two different ones
 * @returns `logScore`, at most 0, summed over trials; `brier`, from 0 to 1; `probabilities`, n; all null with `because`
 *   where a fold leaves something untold
 * @throws RangeError when `folds` has another length than the rows or one label only
 * @source Stone (1974) Journal of the Royal Statistical Society B 36, 111–147
 * @example crossValidate(fit, { folds: mornings }).brier // 0.22365...
 */
export function crossValidate(fit: Fit, { folds }: FoldsOption): CrossValidation {
  const prepared = prepare('crossValidate', fit);
  const { joined } = prepared;
  const { design } = fit;
  const members = membersOf(folds, design.n);
  const tally: Tally = { logScore: 0, squares: 0 };
  const probabilities = new Float64Array(design.n);
  for (const rows of members) {
    const successes = joined.successes.slice();
    const trials = joined.trials.slice();
    for (const i of rows) {
      successes[joined.rowOf[i]!]! -= design.successes[i]!;
      trials[joined.rowOf[i]!]! -= design.trials[i]!;
    }
    const predicted = predictWithout(
      prepared,
      { successes, trials },
      rows.map((i) => joined.rowOf[i]!),
    );
    if (typeof predicted === 'string') return failed(predicted);
    rows.forEach((i, k) => {
      probabilities[i] = predicted[k]!;
      judge(tally, design.successes[i]!, design.trials[i]! - design.successes[i]!, predicted[k]!);
    });
  }
  return { logScore: tally.logScore, brier: tally.squares / totalOf(design.trials), probabilities };
}

function membersOf(folds: ArrayLike<string | number>, n: number): readonly (readonly number[])[] {
  if (folds.length !== n) {
    throw new RangeError(`crossValidate: folds must have ${n} entries, got ${folds.length}`);
  }
  const members = new Map<string, number[]>();
  for (let i = 0; i < n; i += 1) {
    const label = String(folds[i]);
    const own = members.get(label);
    if (own === undefined) members.set(label, [i]);
    else own.push(i);
  }
  if (members.size < 2) throw new RangeError('crossValidate: folds must have at least two labels, got one');
  return [...members.values()];
}
