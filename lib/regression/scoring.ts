/** The one scoring loop: maximum likelihood, or Firth's penalty as an adjustment of the score. */

import { cholesky, logDeterminant } from '../numerics/linear-algebra.ts';
import { addProducts, predictRows, scoreOf, squaredLengths } from './basis-products.ts';
import { type ClimbEnd, type ClimbPoint, climb } from './climb.ts';
import type { Link } from './fit.ts';
import type { OrthogonalBasis } from './orthogonal-basis.ts';
import { type Counts, emptyResponse, type RowResponse, respond } from './response.ts';

/** What is maximised: a binomial response on an orthogonal basis, with Jeffreys' penalty or without. */
export interface ScoringProblem {
  readonly basis: OrthogonalBasis;
  readonly counts: Counts;
  readonly offset: Float64Array;
  readonly link: Link;
  readonly penalised: boolean;
  /** Squared length of the step, in standard errors, at which the climb may end; `climb`'s own where left out. */
  readonly enough?: number;
}

/** The objective at one point: the kernel, plus half the log determinant of the information where penalised. */
export interface ScoringPoint extends ClimbPoint {
  /** Log-likelihood without the binomial coefficients; where penalised, to 1e-8 at the end of a climb. */
  readonly kernel: number;
  /** Cholesky factor of the Fisher information of all coefficients. */
  readonly factor: Float64Array;
  /** Largest q′ I⁻¹ q of a row q of the basis; where penalised only. */
  readonly longest?: number;
}

/** Where the scoring ended, and how. */
export type ScoringEnd = ClimbEnd<ScoringPoint>;

/** Scratch space that every evaluation of one problem shares. */
interface Scratch {
  readonly eta: Float64Array;
  readonly response: RowResponse;
}

/**
 * Firth's adjustment: each row gains h/2 successes and h/2 failures, h its leverage. Overwrites `weight` and `score`
 * of the response by what is to be added; returns the largest leverage and the largest squared length.
 */
function leverageAdjustment(
  basis: OrthogonalBasis,
  factor: Float64Array,
  response: RowResponse,
): { readonly largest: number; readonly longest: number } {
  const { mean, weight, score } = response;
  squaredLengths(basis, factor, score);
  let largest = 0;
  let longest = 0;
  for (let i = 0; i < basis.m; i += 1) {
    if (score[i]! > longest) longest = score[i]!;
    const leverage = weight[i]! * score[i]!;
    if (leverage > largest) largest = leverage;
    score[i] = leverage * (0.5 - mean[i]!);
    weight[i] = leverage * mean[i]! * (1 - mean[i]!);
  }
  return { largest, longest };
}

// With leverages below this the information alone gives steps as good as with the leverages' part in it.
const smallLeverage = 0.05;

function allZero(values: Float64Array): boolean {
  for (let i = 0; i < values.length; i += 1) if (values[i] !== 0) return false;
  return true;
}

/**
 * The objective where every mean is 1/2: Firth's adjustment is zero there, and the weights a quarter of the trials,
 * under which an orthonormal basis has a quarter of the identity for its information. Null elsewhere.
 */
function evaluateAtZero(
  { basis, counts, offset, link, penalised }: ScoringProblem,
  gamma: Float64Array,
  { response }: Scratch,
): ScoringPoint | null {
  const { p, m, entries } = basis;
  if (link !== 'logit' || 'start' in entries || !allZero(gamma) || !allZero(offset)) {
    return null;
  }
  let kernel = 0;
  for (let i = 0; i < m; i += 1) {
    response.score[i] = counts.successes[i]! - counts.trials[i]! / 2;
    kernel -= counts.trials[i]! * Math.LN2;
  }
  const information = new Float64Array(p * p);
  const factor = new Float64Array(p * p);
  for (let k = 0; k < p; k += 1) {
    information[k * (p + 1)] = 0.25;
    factor[k * (p + 1)] = 0.5;
  }
  const score = scoreOf(basis, response.score);
  const objective = penalised ? kernel + 0.5 * logDeterminant(factor, p) : kernel;
  return { gamma, kernel, objective, score, factor, curvature: information, curvatureFactor: factor };
}

/** The objective with its derivatives; null where the information is singular to working precision. */
function evaluate(problem: ScoringProblem, gamma: Float64Array, scratch: Scratch): ScoringPoint | null {
  const { basis, counts, link, penalised } = problem;
  const { p } = basis;
  const { eta, response } = scratch;
  predictRows(basis, problem.offset, gamma, eta);
  const kernel = respond(link, eta, counts, response);
  const information = new Float64Array(p * p);
  const score = new Float64Array(p);
  addProducts(basis, response, information, score);
  const factor = Number.isFinite(kernel) ? cholesky(information, p) : null;
  if (factor === null) return null;
  if (!penalised) {
    const curvature = { curvature: information, curvatureFactor: factor };
    return { gamma, kernel, objective: kernel, score, factor, ...curvature };
  }
  const objective = kernel + 0.5 * logDeterminant(factor, p);
  const { largest, longest } = leverageAdjustment(basis, factor, response);
  const found = { gamma, kernel, objective, score, factor, longest };
  if (largest < smallLeverage) {
    const added = scoreOf(basis, response.score);
    for (let k = 0; k < p; k += 1) score[k]! += added[k]!;
    return { ...found, curvature: information, curvatureFactor: factor };
  }
  addProducts(basis, response, information, score);
  return { ...found, curvature: information };
}

/**
 * Maximises the objective over the first `free` coefficients of the basis, the others held where `start` has them.
 *
 * Fisher scoring with step halving (the logit's Newton steps). Under Firth's penalty the step uses the information
 * augmented by the leverages where these are not small, which is exact on saturated designs; the penalty always takes the determinant over all
 * columns.
 *
 * @param problem the response on its basis
 * @param start p coefficients
 * @param free how many of them vary, 0 to p
 * @returns the last point; null where even the start has a singular information
 * @source Heinze & Schemper (2002) Statistics in Medicine 21, 2409–2419, section 2
 */
export function maximise(problem: ScoringProblem, start: Float64Array, free: number): ScoringEnd | null {
  const { m } = problem.basis;
  const scratch = { eta: new Float64Array(m), response: emptyResponse(m) };
  return climb(
    (gamma) => evaluateAtZero(problem, gamma, scratch) ?? evaluate(problem, gamma, scratch),
    start,
    free,
    { enough: problem.enough, nudge: problem.penalised ? nudged : undefined },
  );
}

/** Steps under the penalty shrink by a constant factor, so that one more evaluation only confirms the last. */
function nudged(point: ScoringPoint, step: Float64Array): ScoringPoint {
  const gamma = point.gamma.slice();
  for (let k = 0; k < step.length; k += 1) gamma[k]! += step[k]!;
  return { ...point, gamma };
}
