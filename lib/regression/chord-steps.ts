/** Steps towards a mode with the curvature of a mode nearby: each costs a pass over the rows, no factorisation. */

import { emptyPoint, type LatentPoint, type LatentScales } from './latent-likelihood.ts';
import { density, type LatentMode, type ModeFinder, newtonStep } from './latent-mode.ts';

const mostSteps = 16;
/** Each step must shrink the decrement to this part of it, or Newton's method with its own curvature is faster. */
const shrinkage = 0.2;

/** Where chord steps ended. */
export interface ChordEnd {
  readonly point: LatentPoint;
  /** The density there, where the finder's work holds it; else undefined. */
  readonly value: number | undefined;
}

/**
 * The point that chord steps reach from the last mode, at other scales or another offset.
 *
 * @param finder the finder that gave `last`, not used since: its curvature must still hold
 * @param scales where the next mode is wanted
 * @param last the mode found before
 * @param near squared distance to the mode, in standard deviations, that is near enough
 * @returns a start for `finder.find`, at least as good as the last mode itself
 * @source Kelley (1995) Iterative Methods for Linear and Nonlinear Equations, section 5.4.1 (the chord method)
 */
export function chordStart(
  finder: ModeFinder,
  scales: LatentScales,
  last: LatentMode,
  near: number,
): ChordEnd {
  const { model, work } = finder;
  const { step } = work;
  let point = last.point;
  let next = emptyPoint(model);
  let value = density(model, scales, point, work);
  let before = Infinity;
  for (let steps = 0; steps < mostSteps; steps += 1) {
    const decrement = newtonStep(model, scales, point, work, last.curvature);
    if (decrement < near || decrement > shrinkage * before) break;
    add(point.core, step.core, next.core);
    add(point.block, step.block, next.block);
    const reached = density(model, scales, next, work);
    if (!(reached >= value - 1e-13 * Math.abs(value))) return { point, value: undefined };
    // The last mode's own point is not written over.
    const room = steps === 0 ? emptyPoint(model) : point;
    point = next;
    next = room;
    value = reached;
    before = decrement;
  }
  return { point, value };
}

function add(a: Float64Array, b: Float64Array, target: Float64Array): void {
  for (let k = 0; k < a.length; k += 1) target[k] = a[k]! + b[k]!;
}
