/** Where Laplace's approximation is largest: coefficients and standard deviations together. */

import { cholesky, invertCholesky, solveCholesky } from '../numerics/linear-algebra.ts';
import { differenceHessian, minimise } from '../numerics/minimise.ts';
import type { Convergence } from './fit.ts';
import { type LaplaceSurface, laplaceSurface, type MixedModel } from './laplace-gradient.ts';

/** Where to begin: coefficients of a fit without random effects, and their p × p covariance. */
export interface FixedStart {
  readonly coefficients: Float64Array;
  readonly covariance: Float64Array;
}

export interface LaplaceOptimum {
  /** The surface of the factors that kept a variance, last evaluated at the optimum. */
  readonly surface: LaplaceSurface;
  /** p coefficients. */
  readonly coefficients: Float64Array;
  /** Standard deviation of each factor of the model; 0 for those without a variance. */
  readonly sds: Float64Array;
  /** Indices in the model of the factors on the surface. */
  readonly kept: readonly number[];
  /** Covariance of coefficients and kept standard deviations: the inverse of the observed information. */
  readonly covariance: Float64Array;
  /** Laplace's log-likelihood without binomial coefficients. */
  readonly value: number;
  readonly convergence: Convergence;
}

/**
 * A stationary point in whitened coordinates: theta = (gamma, sds) with coefficients = start + root gamma, so that
 * gamma has about unit curvature whatever the units of the columns.
 */
interface Ascent {
  readonly surface: LaplaceSurface;
  readonly theta: Float64Array;
  readonly value: number;
  readonly iterations: number;
  readonly settled: boolean;
}

interface Whitening {
  readonly start: FixedStart;
  /** Cholesky factor of the starting covariance, p × p. */
  readonly root: Float64Array;
  readonly p: number;
}

const startingSd = 0.5;
const secondSd = 1.5;
/** A standard deviation below this may stand for 0: the fit without its factor is compared. */
const nearZero = 0.05;
const sameValue = 1e-8;

/**
 * Maximises Laplace's approximation over coefficients and standard deviations.
 *
 * Quasi-Newton steps first, then Newton's with the observed information. A standard deviation that runs to 0 is set
 * to 0 and its factor left out; since the approximation may have several maxima, those factors get a second chance
 * from a larger start, and the higher maximum counts.
 *
 * @param model fixed columns, none a combination of others, and at least one factor with two levels or more
 * @param start maximum-likelihood fit without random effects
 */
export function laplaceOptimum(model: MixedModel, start: FixedStart): LaplaceOptimum {
  const whitening = whiteningOf(start);
  const everyFactor = model.factors.map((_, g) => g);
  const first = new Float64Array(whitening.p + everyFactor.length).fill(startingSd);
  first.fill(0, 0, whitening.p);
  let best = withoutZeros(model, whitening, everyFactor, first);
  if (best.kept.length < everyFactor.length) {
    const other = withoutZeros(model, whitening, everyFactor, secondStart(best, whitening.p, everyFactor));
    if (other.ascent.value > best.ascent.value + sameValue) best = other;
  }
  return polished(model, whitening, best);
}

function whiteningOf(start: FixedStart): Whitening {
  const p = start.coefficients.length;
  const root = cholesky(start.covariance, p);
  if (root === null) {
    throw new RangeError('laplaceOptimum: start must have a positive definite covariance, got another');
  }
  return { start, root, p };
}

function coefficientsAt({ start, root, p }: Whitening, theta: Float64Array): Float64Array {
  return start.coefficients.map((value, j) => {
    let sum = value;
    for (let k = 0; k <= j; k += 1) sum += root[j * p + k]! * theta[k]!;
    return sum;
  });
}

/** Gradient of the negative log-likelihood in whitened coordinates. */
function descentSlope(surface: LaplaceSurface, whitening: Whitening) {
  const { root, p } = whitening;
  return (theta: Float64Array): { value: number; gradient: Float64Array } => {
    const slope = surface.slope(coefficientsAt(whitening, theta), theta.subarray(p));
    const gradient = new Float64Array(theta.length);
    for (let k = 0; k < p; k += 1) {
      for (let j = k; j < p; j += 1) gradient[k]! -= root[j * p + k]! * slope.byCoefficient[j]!;
    }
    for (let g = 0; g < slope.bySd.length; g += 1) gradient[p + g] = -slope.bySd[g]!;
    return { value: -slope.value, gradient };
  };
}

function ascend(
  model: MixedModel,
  whitening: Whitening,
  kept: readonly number[],
  theta: Float64Array,
): Ascent {
  const surface = laplaceSurface({ ...model, factors: kept.map((g) => model.factors[g]!) });
  const { x, value, iterations, settled } = minimise(descentSlope(surface, whitening), theta, {
    tolerance: 1e-9,
  });
  return { surface, theta: x, value: -value, iterations, settled };
}

interface Reduced {
  readonly ascent: Ascent;
  readonly kept: readonly number[];
}

/** Ascends, then leaves out the factors near 0 as long as that costs nothing. */
function withoutZeros(
  model: MixedModel,
  whitening: Whitening,
  factors: readonly number[],
  theta: Float64Array,
): Reduced {
  let best: Reduced = { ascent: ascend(model, whitening, factors, theta), kept: factors };
  for (;;) {
    const { ascent, kept } = best;
    const sds = ascent.theta.subarray(whitening.p);
    const least = sds.reduce((at, sd, g) => (Math.abs(sd) < Math.abs(sds[at]!) ? g : at), 0);
    if (kept.length === 0 || Math.abs(sds[least]!) > nearZero) return best;
    const fewer = kept.filter((_, g) => g !== least);
    const shorter = ascent.theta.filter((_, k) => k !== whitening.p + least);
    const reduced = { ascent: ascend(model, whitening, fewer, shorter), kept: fewer };
    if (reduced.ascent.value < ascent.value - sameValue) return best;
    best = reduced;
  }
}

function secondStart(best: Reduced, p: number, factors: readonly number[]): Float64Array {
  const theta = new Float64Array(p + factors.length).fill(secondSd);
  theta.set(best.ascent.theta.subarray(0, p));
  best.kept.forEach((g, k) => {
    theta[p + g] = best.ascent.theta[p + k]!;
  });
  return theta;
}

// Steps of the differences, in units of about one standard error; their error is of the order of the square.
const differenceStep = 1e-3;
const mostNewtonSteps = 8;
const settledDecrement = 1e-14;

/** Newton's method from the quasi-Newton end, with the information taken there by differences of the gradient. */
function polished(model: MixedModel, whitening: Whitening, { ascent, kept }: Reduced): LaplaceOptimum {
  const { surface } = ascent;
  const slope = descentSlope(surface, whitening);
  const theta = ascent.theta.slice();
  const size = theta.length;
  const hessian = differenceHessian((x) => slope(x).gradient, theta, differenceStep);
  const factor = cholesky(hessian, size);
  let decrement = Infinity;
  let { value, gradient } = slope(theta);
  for (
    let steps = 0;
    factor !== null && steps < mostNewtonSteps && decrement > settledDecrement;
    steps += 1
  ) {
    const step = solveCholesky(factor, size, gradient);
    decrement = step.reduce((sum, move, k) => sum + move * gradient[k]!, 0);
    for (let k = 0; k < size; k += 1) theta[k]! -= step[k]!;
    ({ value, gradient } = slope(theta));
  }
  const sds = new Float64Array(model.factors.length);
  kept.forEach((g, k) => {
    sds[g] = Math.abs(theta[whitening.p + k]!);
  });
  const settled = factor !== null && decrement < 1e-8;
  return {
    surface,
    coefficients: coefficientsAt(whitening, theta),
    sds,
    kept,
    covariance:
      factor === null ? new Float64Array(0) : unwhitened(whitening, invertCholesky(factor, size), size),
    value: -value,
    convergence: {
      settled,
      iterations: ascent.iterations,
      gradient: gradient.reduce((most, slope) => Math.max(most, Math.abs(slope)), 0),
      reason: settled ? 'gradient-is-zero' : factor === null ? 'no-maximum' : 'gradient-is-not-zero',
    },
  };
}

/** Covariance of (coefficients, sds) from that of (gamma, sds). */
function unwhitened({ root, p }: Whitening, covariance: Float64Array, size: number): Float64Array {
  const transform = new Float64Array(size * size);
  for (let j = 0; j < size; j += 1) {
    if (j >= p) transform[j * size + j] = 1;
    else for (let k = 0; k <= j; k += 1) transform[j * size + k] = root[j * p + k]!;
  }
  return product(transform, transposed(product(transform, covariance, size), size), size);
}

function product(a: Float64Array, b: Float64Array, size: number): Float64Array {
  const c = new Float64Array(size * size);
  for (let i = 0; i < size; i += 1) {
    for (let k = 0; k < size; k += 1) {
      const scale = a[i * size + k]!;
      if (scale !== 0) for (let j = 0; j < size; j += 1) c[i * size + j]! += scale * b[k * size + j]!;
    }
  }
  return c;
}

function transposed(a: Float64Array, size: number): Float64Array {
  return a.map((_, k) => a[(k % size) * size + Math.floor(k / size)]!);
}
