/** Steps towards a mode with the curvature of a mode nearby: each costs a pass over the rows, no factorisation. */

import type { LatentPoint, LatentScales } from './latent-likelihood.ts';
import { density, gradient, type LatentMode, type ModeFinder, solveCurvature } from './latent-mode.ts';

const mostSteps = 16;
/** Each step must shrink the decrement to this part of it, or Newton's method with its own curvature is faster. */
const shrinkage = 0.2;
/** Squared distance to the mode, in standard deviations, at which the finder takes a start for the mode. */
const nearEnough = 5e-19;

/**
 * The point that chord steps reach from the last mode, at other scales or another offset.
 *
 * @param finder the finder that gave `last`, not used since: its curvature must still hold
 * @param scales where the next mode is wanted
 * @param last the mode found before
 * @returns a start for `finder.find`, at least as good as the last mode itself
 * @source Kelley (1995) Iterative Methods for Linear and Nonlinear Equations, section 5.4.1 (the chord method)
 */
export function chordStart(finder: ModeFinder, scales: LatentScales, last: LatentMode): LatentPoint {
  const { model, work } = finder;
  let point = last.point;
  let value = density(model, scales, point, work);
  let before = Infinity;
  for (let steps = 0; steps < mostSteps; steps += 1) {
    const slope = gradient(model, scales, point, work.score);
    const step = solveCurvature(model, last.curvature, slope);
    const decrement = product(slope.core, step.core) + product(slope.block, step.block);
    if (decrement < nearEnough || decrement > shrinkage * before) return point;
    const next = { core: sum(point.core, step.core), block: sum(point.block, step.block) };
    const reached = density(model, scales, next, work);
    if (!(reached >= value - 1e-13 * Math.abs(value))) return point;
    point = next;
    value = reached;
    before = decrement;
  }
  return point;
}

function product(a: Float64Array, b: Float64Array): number {
  let total = 0;
  for (let k = 0; k < a.length; k += 1) total += a[k]! * b[k]!;
  return total;
}

function sum(a: Float64Array, b: Float64Array): Float64Array {
  return a.map((value, k) => value + b[k]!);
}
