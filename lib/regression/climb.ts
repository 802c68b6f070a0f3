/** Newton's climb with step halving to the top of a concave objective. */

import { cholesky, solveCholesky } from '../numerics/linear-algebra.ts';
import type { Convergence } from './fit.ts';

/** An objective with its derivatives at one point of p coefficients. */
export interface ClimbPoint {
  readonly gamma: Float64Array;
  readonly objective: number;
  /** Gradient of the objective. */
  readonly score: Float64Array;
  /** Matrix of the step, p × p, positive definite; only its lower triangle is read. */
  readonly curvature: Float64Array;
  /** Its Cholesky factor, where it is known already. */
  readonly curvatureFactor?: Float64Array;
}

/** Where a climb ended, and how. */
export interface ClimbEnd<Point extends ClimbPoint> {
  readonly point: Point;
  readonly convergence: Convergence;
}

/** The point after a step too small to tell in anything but the coefficients. */
export type Nudge<Point extends ClimbPoint> = (point: Point, step: Float64Array) => Point;

/** The objective at a point; null where it cannot be computed. */
export type Evaluate<Point extends ClimbPoint> = (gamma: Float64Array) => Point | null;

/** Leading `free` × `free` block of the step's matrix, factored. */
function leadingFactor({ curvature, curvatureFactor, gamma }: ClimbPoint, free: number): Float64Array | null {
  const p = gamma.length;
  if (curvatureFactor && free === p) return curvatureFactor;
  const block = new Float64Array(free * free);
  for (let j = 0; j < free; j += 1) block.set(curvature.subarray(j * p, j * p + free), j * free);
  return cholesky(block, free, block);
}

/**
 * The step halved until the objective no longer falls; null where no length of it is an improvement, or where the
 * full step is `tiny` and yet leads where nothing can be computed: then the top lies at infinity, and is as good as
 * reached.
 */
function improved<Point extends ClimbPoint>(
  evaluate: Evaluate<Point>,
  point: Point,
  step: Float64Array,
  tiny: boolean,
): Point | null {
  // A sum over a million rows carries rounding of about 1e-13 of itself: less than this is no fall.
  const slack = 1e-12 * (1 + Math.abs(point.objective));
  for (let halvings = 0, length = 1; halvings < 40; halvings += 1, length /= 2) {
    const gamma = point.gamma.slice();
    for (let k = 0; k < step.length; k += 1) gamma[k]! += length * step[k]!;
    const next = evaluate(gamma);
    if (next !== null && next.objective >= point.objective - slack) return next;
    if (next === null && tiny) return null;
  }
  return null;
}

function largest(values: Float64Array, count: number): number {
  let most = 0;
  for (let k = 0; k < count; k += 1) most = Math.max(most, Math.abs(values[k]!));
  return most;
}

// Squared length of the step in standard errors, about twice what the objective still gains. Below the first the
// point is the maximum; below the second it is so where steps shrink so fast that the next would be below the first;
// below the third as soon as rounding stops the step from shrinking; below the fourth a step to where the information
// is singular is one to infinity.
const settledDecrement = 1e-24;
const nearDecrement = 1e-21;
const roundingDecrement = 1e-18;
const tinyDecrement = 1e-9;
// A step this short, after which the point is the maximum as far as can be foreseen, is taken without a look.
const unseenDecrement = 1e-15;
const mostIterations = 500;

/** How a climb ends. */
export interface ClimbOptions<Point extends ClimbPoint> {
  /** Squared length of the step, in standard errors, at which it may end. */
  readonly enough?: number | undefined;
  /** Where given, the last step is not evaluated: it is shorter than 4e-8 standard errors. */
  readonly nudge?: Nudge<Point> | undefined;
}

/**
 * Climbs over the first `free` coefficients, the others held where `start` has them.
 *
 * @param evaluate the objective with its derivatives
 * @param start p coefficients
 * @param free how many of them vary, 0 to p
 * @returns the last point; null where the start itself cannot be evaluated
 */
export function climb<Point extends ClimbPoint>(
  evaluate: Evaluate<Point>,
  start: Float64Array,
  free: number,
  { enough = settledDecrement, nudge }: ClimbOptions<Point> = {},
): ClimbEnd<Point> | null {
  let point = evaluate(start);
  let before = Infinity;
  for (let iteration = 0; point !== null; iteration += 1) {
    const { score } = point;
    let here: Point = point;
    const end = (settled: boolean, reason: string): ClimbEnd<Point> => ({
      point: here,
      convergence: { settled, iterations: iteration, gradient: largest(score, free), reason },
    });
    const factor = leadingFactor(point, free);
    if (factor === null) return end(false, 'singular-information');
    const step = solveCholesky(factor, free, score.subarray(0, free));
    const decrement = step.reduce((sum, value, k) => sum + value * score[k]!, 0);
    if (decrement < enough) return end(true, 'score-is-zero');
    const shrunk = decrement / before;
    if (decrement < roundingDecrement && shrunk > 0.9) return end(true, 'score-is-zero');
    if (decrement < nearDecrement && decrement * shrunk < enough) return end(true, 'score-is-zero');
    if (nudge && decrement < unseenDecrement && decrement * shrunk < nearDecrement) {
      here = nudge(here, step);
      return end(true, 'score-is-zero');
    }
    if (iteration === mostIterations) return end(false, 'too-many-iterations');
    point = improved(evaluate, point, step, decrement < tinyDecrement);
    if (point === null) return end(decrement < roundingDecrement, 'no-uphill-step');
    before = decrement;
  }
  return null;
}
