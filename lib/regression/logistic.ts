/** Binomial regression by maximum likelihood or with Firth's penalty. */

import { checkChoice } from '../numerics/arguments.ts';
import { invertCholesky, solveLower } from '../numerics/linear-algebra.ts';
import { predictRows, scoreOf, squaredLengths } from './basis-products.ts';
import { checkColumnCount, type Design, type DesignSpec, designOf } from './design.ts';
import type { Fit, FitMethod, Link } from './fit.ts';
import { type JoinedRows, joinRows } from './joined-rows.ts';
import {
  columnCoefficients,
  columnCovariance,
  independentBasis,
  logSquaredDeterminant,
  type OrthogonalBasis,
  orthogonalBasis,
} from './orthogonal-basis.ts';
import {
  emptyResponse,
  logBinomialCoefficients,
  type RowResponse,
  respond,
  saturatedLogLik,
} from './response.ts';
import { maximise, type ScoringEnd, type ScoringProblem } from './scoring.ts';
import { separatingColumns } from './separation.ts';
import { sparseBasis } from './sparse-basis.ts';

/** Options of `logistic`. */
export interface LogisticOptions {
  /** `maximum-likelihood` (default), or `firth`, Jeffreys' penalty, which stays finite under separation. */
  readonly method?: FitMethod;
  /** `logit` (default), `probit`, `cloglog` (complementary log-log). Firth's penalty knows the logit only. */
  readonly link?: Link;
}

function checkOptions(method: FitMethod, link: Link): void {
  checkChoice('logistic', 'method', method, ['maximum-likelihood', 'firth']);
  checkChoice('logistic', 'link', link, ['logit', 'probit', 'cloglog']);
  if (method === 'firth' && link !== 'logit') {
    throw new RangeError(
      `logistic: link must be logit with method firth, since for other links Jeffreys' penalty and the reduction of ` +
        `mean bias are two different methods, got ${link}`,
    );
  }
}

/**
 * Sets up a binomial problem on the joined rows, on an orthogonal basis of the columns, or a sparse one where they are
 * many and mostly zeros.
 *
 * @param order indices of the columns in the order wanted; their own where left out
 * @throws RangeError naming the columns where one is a linear combination of others
 */
export function scoringProblem(
  caller: string,
  joined: JoinedRows,
  names: readonly string[],
  link: Link,
  penalised: boolean,
  order: readonly number[] = [...names.keys()],
): ScoringProblem {
  const basis =
    sparseBasis(joined.sources, joined.trials, order) ??
    independentBasis(
      caller,
      order.map((j) => names[j]!),
      order.map((j) => joined.columns[j]!),
      joined.trials,
    );
  return { basis, counts: joined, offset: joined.offset, link, penalised };
}

/**
 * Names of the columns that are linear combinations of columns before them, in order: what to leave out of a design
 * before it can be fitted. Empty where the design has full rank.
 */
export function collinearColumns(spec: DesignSpec): readonly string[] {
  const design = designOf(spec, 'collinearColumns');
  const joined = joinRows(design);
  const kept = [...design.names.keys()];
  const dropped: string[] = [];
  for (;;) {
    const columns = kept.map((j) => joined.columns[j]!);
    const basis = orthogonalBasis(columns, joined.trials);
    if (!('column' in basis)) return dropped;
    dropped.push(design.names[kept.splice(basis.column, 1)[0]!]!);
  }
}

/**
 * Whether a settled fit of the logit proves by itself that the maximum-likelihood estimate exists: the loss is
 * self-concordant, so a score this small over this much curvature leaves a minimum nearby. With nu the length of the
 * score and r the longest row, both under the information at the point, nu r up to 1/2 is enough.
 *
 * @source Bach (2010) Electronic Journal of Statistics 4, 384–414, proposition 2, in coordinates where the information
 *   is the identity
 */
function provesOverlap(
  { basis, link, penalised }: ScoringProblem,
  { convergence, point }: ScoringEnd,
  response: RowResponse,
): boolean {
  if (!convergence.settled || link !== 'logit') return false;
  // Where the score is zero to rounding, r alone could spoil it, and r² is at most 1 over the least weight.
  if (!penalised) return response.mean.every((mean) => mean * (1 - mean) > 1e-10);
  const score = scoreOf(basis, response.score);
  solveLower(point.factor, basis.p, score);
  const squaredScore = score.reduce((sum, value) => sum + value * value, 0);
  return (point.longest ?? longestRow(basis, point.factor)) * squaredScore <= 0.25;
}

function longestRow(basis: OrthogonalBasis, factor: Float64Array): number {
  const lengths = new Float64Array(basis.m);
  squaredLengths(basis, factor, lengths);
  return lengths.reduce((most, length) => Math.max(most, length), 0);
}

/** Means and scores of the joined rows at some coefficients, and the log-likelihood without binomial coefficients. */
function responseAt(
  { basis, offset, counts, link }: ScoringProblem,
  gamma: Float64Array,
): { readonly response: RowResponse; readonly kernel: number } {
  const response = emptyResponse(basis.m);
  const eta = new Float64Array(basis.m);
  predictRows(basis, offset, gamma, eta);
  return { response, kernel: respond(link, eta, counts, response) };
}

/** The value of its joined row for each row; a loop, since a million calls would cost more than the fit. */
function spread(values: Float64Array, rowOf: Int32Array): Float64Array {
  const all = new Float64Array(rowOf.length);
  for (let i = 0; i < all.length; i += 1) all[i] = values[rowOf[i]!]!;
  return all;
}

function separatingNames(design: Design, joined: JoinedRows): readonly string[] {
  const names = separatingColumns(joined.columns, joined).map((j) => design.names[j]!);
  // The intercept goes along with nearly every direction: it is named only where it stands alone.
  return names.length > 1 ? names.filter((name) => name !== '(Intercept)') : names;
}

function assemble(
  design: Design,
  joined: JoinedRows,
  problem: ScoringProblem,
  end: ScoringEnd,
  method: FitMethod,
): Fit {
  const { basis, link } = problem;
  const { point, convergence } = end;
  const { response, kernel } = responseAt(problem, point.gamma);
  const separatedBy = provesOverlap(problem, end, response) ? [] : separatingNames(design, joined);
  const separated = separatedBy.length > 0;
  const infinite = separated && method === 'maximum-likelihood';
  const coefficients = columnCoefficients(basis, point.gamma);
  const covariance = columnCovariance(basis, invertCholesky(point.factor, basis.p));
  return {
    method,
    link,
    design,
    terms: design.names.map((term, j) => ({
      term,
      estimate: coefficients[j]!,
      se: Math.sqrt(covariance[j * basis.p + j]!),
    })),
    coefficients,
    covariance,
    fitted: spread(response.mean, joined.rowOf),
    logLik: kernel + logBinomialCoefficients(design),
    penalisedLogLik: method === 'firth' ? point.objective + 0.5 * logSquaredDeterminant(basis) : null,
    deviance: 2 * (saturatedLogLik(design) - kernel),
    df: basis.p,
    separated,
    separatedBy,
    convergence: infinite ? { ...convergence, settled: false, reason: 'separated' } : convergence,
  };
}

/**
 * Logistic regression, and its siblings with the probit and the complementary log-log link.
 *
 * Answers how the odds of a success change with the columns, the others held. Not for rows that share a parent or a
 * morning (see `mixedLogistic`, `clusterRobust`), nor for matched sets (`conditionalLogistic`).
 *
 * Rows with equal columns are joined before the fit; the log-likelihood (with the binomial coefficients) and the
 * deviance are those of the rows as given. Standard errors come from the inverse Fisher information at the estimate,
 * for Firth's method too. Where the columns separate successes from failures, a constant outcome among them,
 * maximum likelihood is infinite: `separated` is true, `separatedBy` names the columns, `convergence.settled` is
 * false, the coefficients are those of the last step and must not be shown, and `logLik` is the supremum to about
 * 1e-9. Firth's estimates stay finite and settle.
 *
 * @param spec n rows of successes and trials, p columns, an offset; see `DesignSpec`
 * @param options `method` and `link`
 * @returns a finished fit; intervals, tests and predictions are functions of it
 * @throws RangeError when counts, lengths or values break the rules of `DesignSpec`, when there is no column, more
 *   columns than rows, a column that is a linear combination of others (it is named), or a link that Firth's method
 *   does not have
 * @source McCullagh & Nelder (1989) Generalized Linear Models, chapter 4; Firth (1993) Biometrika 80, 27–38;
 *   Heinze & Schemper (2002) Statistics in Medicine 21, 2409–2419
 * @example logistic({ successes: [2, 5, 8], trials: [10, 10, 10], columns: { dose: [0, 1, 2] } }).coefficients // [-1.38629..., 1.38629...]
 */
export function logistic(spec: DesignSpec, options: LogisticOptions = {}): Fit {
  const { method = 'maximum-likelihood', link = 'logit' } = options;
  checkOptions(method, link);
  return fitDesign(designOf(spec, 'logistic'), method, link);
}

/** `logistic` on a design that is checked already; of use to functions that fit variations of one design. */
export function fitDesign(design: Design, method: FitMethod, link: Link, caller = 'logistic'): Fit {
  const p = design.names.length;
  checkColumnCount(caller, design);
  const joined = joinRows(design);
  const problem = scoringProblem(caller, joined, design.names, link, method === 'firth');
  const end = maximise(problem, new Float64Array(p), p);
  if (end === null) {
    throw new RangeError(
      `${caller}: offset must leave some information about the columns, got one that does not`,
    );
  }
  return assemble(design, joined, problem, end, method);
}
