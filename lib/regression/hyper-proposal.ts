/** Where to look in hyperparameter space: a normal proposal around the mode of the marginal posterior. */

import { cholesky, solveUpper } from '../numerics/linear-algebra.ts';
import { minimise } from '../numerics/minimise.ts';
import { normalQuantile } from '../numerics/normal.ts';
import type { RandomStream } from '../numerics/random.ts';

/** A normal proposal: centre, and the Cholesky factor of its precision (d × d). */
export interface HyperProposal {
  readonly centre: Float64Array;
  readonly precision: Float64Array;
}

/** One hyperparameter point with the log density of the proposal there. */
export interface HyperPoint {
  readonly u: Float64Array;
  readonly logDensity: number;
}

/** A little wider than the normal approximation, so that no part of the posterior is out of reach. */
const WIDENING = 1.2;
const DIFFERENCE = 0.05;

/**
 * Finds the mode of a log density over d hyperparameters, each standard normal beforehand, and its curvature.
 *
 * Finite differences are enough: the proposal only has to be near, every draw is weighted afterwards.
 *
 * @param logPosterior log marginal posterior at a point, up to a constant
 */
export function hyperProposal(
  logPosterior: (u: Float64Array) => number,
  d: number,
  start?: Float64Array,
): HyperProposal {
  const slope = (u: Float64Array): { value: number; gradient: Float64Array } => {
    const value = -logPosterior(u);
    const gradient = Float64Array.from(u, (_, k) => {
      const at = u.slice();
      at[k]! += DIFFERENCE;
      return (-logPosterior(at) - value) / DIFFERENCE;
    });
    return { value, gradient };
  };
  const { x: centre } = minimise(slope, start ?? new Float64Array(d), {
    tolerance: 0.01,
    maxIterations: 25,
    maxStep: 1,
  });
  return { centre, precision: precisionFactor(logPosterior, centre, d) };
}

/** Cholesky factor of minus the second differences, pulled towards the prior's identity until it exists. */
function precisionFactor(
  logPosterior: (u: Float64Array) => number,
  centre: Float64Array,
  d: number,
): Float64Array {
  const h = 0.3;
  const middle = logPosterior(centre);
  const at = (i: number, a: number, j: number, b: number): number => {
    const u = centre.slice();
    u[i]! += a;
    u[j]! += b;
    return logPosterior(u);
  };
  const curvature = new Float64Array(d * d);
  const above = Float64Array.from({ length: d }, (_, i) => at(i, h, i, 0));
  for (let i = 0; i < d; i += 1) {
    const below = at(i, -h, i, 0);
    curvature[i * d + i] = Math.max(0.25, -(above[i]! - 2 * middle + below) / (h * h));
    for (let j = 0; j < i; j += 1) {
      const mixed = -(at(i, h, j, h) - above[i]! - above[j]! + middle) / (h * h);
      curvature[i * d + j] = mixed;
      curvature[j * d + i] = mixed;
    }
  }
  for (let shrink = 1; ; shrink *= 0.5) {
    const trial = curvature.map((v, k) => (Math.floor(k / d) === k % d ? v : v * shrink));
    const factor = cholesky(trial, d);
    if (factor !== null) return factor;
  }
}

/** The first primes: a Kronecker sequence with their square roots fills the cube evenly. */
const PRIMES = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37];

/**
 * Points of the proposal: a randomly shifted Kronecker sequence (Richtmyer 1951) brought to the normal.
 *
 * @param count number of points
 */
export function hyperPoints(proposal: HyperProposal, count: number, random: RandomStream): HyperPoint[] {
  const d = proposal.centre.length;
  const shift = Float64Array.from({ length: d }, random.uniform);
  let logDet = 0;
  for (let k = 0; k < d; k += 1) logDet += Math.log(proposal.precision[k * d + k]!) - Math.log(WIDENING);
  return Array.from({ length: count }, (_, i) => {
    let square = 0;
    const z = Float64Array.from(shift, (s, k) => {
      const u = (s + (i + 1) * Math.sqrt(PRIMES[k]!)) % 1;
      const value = normalQuantile(Math.min(Math.max(u, 1e-9), 1 - 1e-9));
      square += value * value;
      return value * WIDENING;
    });
    const u = solveUpper(proposal.precision, d, z).map((step, k) => proposal.centre[k]! + step);
    return { u, logDensity: logDet - square / 2 };
  });
}
