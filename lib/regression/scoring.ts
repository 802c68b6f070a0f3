/** The one scoring loop: maximum likelihood, or Firth's penalty as an adjustment of the score. */

import { cholesky, logDeterminant, solveLower } from '../numerics/linear-algebra.ts';
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
  /** Log-likelihood without the binomial coefficients. */
  readonly kernel: number;
  /** Cholesky factor of the Fisher information of all coefficients. */
  readonly factor: Float64Array;
}

/** Where the scoring ended, and how. */
export type ScoringEnd = ClimbEnd<ScoringPoint>;

/** Scratch space that every evaluation of one problem shares. */
interface Scratch {
  readonly eta: Float64Array;
  readonly response: RowResponse;
}

function linearPredictor({ basis, offset }: ScoringProblem, gamma: Float64Array, eta: Float64Array): void {
  const { m, p, rows } = basis;
  for (let i = 0, at = 0; i < m; i += 1, at += p) {
    let sum = offset[i]!;
    for (let k = 0; k < p; k += 1) sum += rows[at + k]! * gamma[k]!;
    eta[i] = sum;
  }
}

/** Adds the weighted cross products of the rows to the lower triangle of `matrix`, and the scores to `score`. */
function accumulate(
  { m, p, rows }: OrthogonalBasis,
  weight: Float64Array,
  rowScore: Float64Array,
  matrix: Float64Array,
  score: Float64Array,
): void {
  for (let i = 0, at = 0; i < m; i += 1, at += p) {
    const w = weight[i]!;
    const s = rowScore[i]!;
    for (let j = 0; j < p; j += 1) {
      const x = rows[at + j]!;
      if (x === 0) continue;
      score[j]! += s * x;
      const wx = w * x;
      const row = j * p;
      for (let k = 0; k <= j; k += 1) matrix[row + k]! += wx * rows[at + k]!;
    }
  }
}

/**
 * Firth's adjustment: each row gains h/2 successes and h/2 failures, h its leverage. Overwrites `weight` and `score`
 * of the response by what is to be added.
 */
function leverageAdjustment(basis: OrthogonalBasis, factor: Float64Array, response: RowResponse): void {
  const { m, p, rows } = basis;
  const row = new Float64Array(p);
  for (let i = 0, at = 0; i < m; i += 1, at += p) {
    for (let k = 0; k < p; k += 1) row[k] = rows[at + k]!;
    solveLower(factor, p, row);
    let length = 0;
    for (let k = 0; k < p; k += 1) length += row[k]! * row[k]!;
    const leverage = response.weight[i]! * length;
    const mean = response.mean[i]!;
    response.score[i] = leverage * (0.5 - mean);
    response.weight[i] = leverage * mean * (1 - mean);
  }
}

/** The objective with its derivatives; null where the information is singular to working precision. */
function evaluate(problem: ScoringProblem, gamma: Float64Array, scratch: Scratch): ScoringPoint | null {
  const { basis, counts, link, penalised } = problem;
  const { p } = basis;
  const { eta, response } = scratch;
  linearPredictor(problem, gamma, eta);
  const kernel = respond(link, eta, counts, response);
  const information = new Float64Array(p * p);
  const score = new Float64Array(p);
  accumulate(basis, response.weight, response.score, information, score);
  const factor = Number.isFinite(kernel) ? cholesky(information, p) : null;
  if (factor === null) return null;
  if (!penalised) return { gamma, kernel, objective: kernel, score, factor, curvature: information };
  leverageAdjustment(basis, factor, response);
  accumulate(basis, response.weight, response.score, information, score);
  const objective = kernel + 0.5 * logDeterminant(factor, p);
  return { gamma, kernel, objective, score, factor, curvature: information };
}

/**
 * Maximises the objective over the first `free` coefficients of the basis, the others held where `start` has them.
 *
 * Fisher scoring with step halving (the logit's Newton steps). Under Firth's penalty the step uses the information
 * augmented by the leverages, which is exact on saturated designs; the penalty always takes the determinant over all
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
  return climb((gamma) => evaluate(problem, gamma, scratch), start, free, problem.enough);
}
