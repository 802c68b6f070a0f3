/** Coordinates in which Laplace's approximation of a mixed model has about unit curvature, and where to begin in them. */

import { cholesky, solveLower } from '../numerics/linear-algebra.ts';
import { conditionalCovariance } from './given-variances.ts';
import { type LaplaceSurface, laplaceSurface, type MixedModel } from './laplace-gradient.ts';
import type { LatentMode } from './latent-mode.ts';

/** Where to begin: coefficients of a fit without random effects, and their p × p covariance. */
export interface FixedStart {
  readonly coefficients: Float64Array;
  readonly covariance: Float64Array;
}

/**
 * Coordinates theta = (gamma, tau) of about unit curvature, whatever the units of the columns and the number of
 * levels: coefficients = start + root gamma, and the standard deviations are tau times a unit of their own.
 */
export interface Whitening {
  readonly start: FixedStart;
  /** Cholesky factor of the covariance of the coefficients with the variances as first guessed, p × p. */
  readonly root: Float64Array;
  readonly p: number;
  /** Unit of each factor of the model. */
  readonly units: Float64Array;
  /** Where the standard deviation of each factor begins. */
  readonly likelySds: Float64Array;
  /** The surface of all factors. */
  readonly surface: LaplaceSurface;
}

const startingSd = 0.5;
/** The ascent begins with no smaller a standard deviation, for towards 0 the surface is flat. */
const leastLikelySd = 0.25;
const mostLikelySd = 1.5;
/** How near to the modes the first look is taken, which only sets where the ascent begins. */
const firstNear = 1e-5;

/**
 * The coordinates of one model, from a first look at the surface.
 *
 * @throws RangeError where the start's covariance is not positive definite
 */
export function whiteningOf(model: MixedModel, start: FixedStart): Whitening {
  const p = start.coefficients.length;
  const fixedRoot = cholesky(start.covariance, p);
  if (fixedRoot === null) {
    throw new RangeError('laplaceOptimum: start must have a positive definite covariance, got another');
  }
  const surface = laplaceSurface(model);
  const sds = new Float64Array(model.factors.length).fill(startingSd);
  const { mode } = surface.slope(start.coefficients, sds, firstNear);
  const root = cholesky(conditionalCovariance(surface, sds, mode), p) ?? fixedRoot;
  const likelySds = new Float64Array(sds.length);
  const units = new Float64Array(sds.length);
  for (let g = 0; g < sds.length; g += 1) {
    const { sd, information } = firstImpression(surface, mode, g);
    likelySds[g] = sd;
    units[g] = Math.min(1, sd / startingSd / Math.sqrt(information));
  }
  return { start, root, p, units, likelySds, surface };
}

/**
 * A likely standard deviation of one factor, and about what the data tell of it, seen from `startingSd` with its levels
 * taken as if they were apart: sd² sum v² / sum (1 − (H⁻¹)_jj), and 2 sum (1 − (H⁻¹)_jj)² / sd². They only set where
 * the ascent begins and the unit of a coordinate.
 *
 * @source Schall (1991) Biometrika 78, 719–727, for the first
 */
function firstImpression(
  { latent, inverse }: LaplaceSurface,
  { point }: LatentMode,
  g: number,
): { readonly sd: number; readonly information: number } {
  const { size } = latent.factors[g]!;
  const inBlock = g === latent.eliminated;
  const first = latent.factorStart[g]!;
  let squares = 0;
  let told = 0;
  let toldSquared = 0;
  for (let a = 0; a < size; a += 1) {
    const effect = inBlock ? point.block[a]! : point.core[first + a]!;
    const left = inBlock ? inverse.diagonal[a]! : inverse.core[(first + a) * (latent.coreSize + 1)]!;
    squares += effect * effect;
    told += 1 - left;
    toldSquared += (1 - left) ** 2;
  }
  const sd = startingSd * Math.sqrt(squares / told);
  return {
    sd: Math.min(Math.max(sd, leastLikelySd), mostLikelySd),
    information: (2 * toldSquared) / (startingSd * startingSd),
  };
}

/** The p coefficients at theta. */
export function coefficientsAt({ start, root, p }: Whitening, theta: Float64Array): Float64Array {
  return start.coefficients.map((value, j) => {
    let sum = value;
    for (let k = 0; k <= j; k += 1) sum += root[j * p + k]! * theta[k]!;
    return sum;
  });
}

/** The standard deviations at theta, of the factors that are kept; of either sign. */
export function sdsAt({ p, units }: Whitening, kept: readonly number[], theta: Float64Array): Float64Array {
  return Float64Array.from(kept, (g, k) => theta[p + k]! * units[g]!);
}

/** Covariance of (coefficients, sds): T C T′, C the inverse information of theta, T the derivative by theta. */
export function unwhitened(
  { root, p, units }: Whitening,
  kept: readonly number[],
  factor: Float64Array,
): Float64Array {
  const size = p + kept.length;
  const transform = new Float64Array(size * size);
  for (let j = 0; j < p; j += 1) transform.set(root.subarray(j * p, (j + 1) * p), j * size);
  kept.forEach((g, k) => {
    transform[(p + k) * (size + 1)] = units[g]!;
  });
  // With the information L L′ this is A′A, A = L⁻¹ T′.
  const columns = Array.from({ length: size }, (_, j) =>
    solveLower(factor, size, transform.slice(j * size, (j + 1) * size)),
  );
  return Float64Array.from({ length: size * size }, (_, place) => {
    const right = columns[place % size]!;
    return columns[Math.floor(place / size)]!.reduce((sum, value, k) => sum + value * right[k]!, 0);
  });
}
