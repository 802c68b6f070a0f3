/** Where Laplace's approximation is largest: coefficients and standard deviations together. */

import { cholesky, solveCholesky } from '../numerics/linear-algebra.ts';
import { differenceHessian, minimise, type Slope } from '../numerics/minimise.ts';
import type { Convergence } from './fit.ts';
import { type LaplaceSurface, laplaceSurface, type MixedModel, roughMode } from './laplace-gradient.ts';
import {
  coefficientsAt,
  type FixedStart,
  sdsAt,
  unwhitened,
  type Whitening,
  whiteningOf,
} from './whitening.ts';

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

/** Where quasi-Newton steps ended, in whitened coordinates theta (see `Whitening`). */
interface Ascent {
  readonly surface: LaplaceSurface;
  /** Indices in the model of the factors on the surface. */
  readonly kept: readonly number[];
  readonly theta: Float64Array;
  readonly value: number;
  readonly iterations: number;
}

/** A standard deviation below this may stand for 0: the fit without its factor is compared. */
const nearZero = 0.05;
/** Ascents end where a step would gain 1e-7: a difference below this is none. */
const sameValue = 2e-7;
/** Where a standard deviation that came out as 0 begins a second time. */
const secondSd = 1.5;

/**
 * Maximises Laplace's approximation over coefficients and standard deviations.
 *
 * Quasi-Newton steps first, then Newton's with the observed information. A standard deviation that runs to 0 is set
 * to 0 and its factor left out; since the approximation may have several maxima, those factors get a second chance
 * from a larger start, and the higher maximum counts.
 *
 * @param model fixed columns, none a combination of others, and any number of factors with two levels or more
 * @param start maximum-likelihood fit without random effects
 */
export function laplaceOptimum(model: MixedModel, start: FixedStart): LaplaceOptimum {
  const whitening = whiteningOf(model, start);
  const everyFactor = model.factors.map((_, g) => g);
  const first = new Float64Array(whitening.p + everyFactor.length);
  everyFactor.forEach((g) => {
    first[whitening.p + g] = whitening.likelySds[g]! / whitening.units[g]!;
  });
  let best = withoutZeros(model, whitening, everyFactor, first);
  if (best.kept.length < everyFactor.length) {
    const other = withoutZeros(model, whitening, everyFactor, secondStart(best, whitening));
    if (other.value > best.value + sameValue) best = other;
  }
  return polished(model, whitening, best);
}

/** The negative log-likelihood with its gradient in whitened coordinates; `near` as in `LaplaceSurface`. */
function descent(
  surface: LaplaceSurface,
  whitening: Whitening,
  kept: readonly number[],
  near?: number,
): Slope {
  const { root, p, units } = whitening;
  return (theta) => {
    const slope = surface.slope(coefficientsAt(whitening, theta), sdsAt(whitening, kept, theta), near);
    const gradient = new Float64Array(theta.length);
    for (let k = 0; k < p; k += 1) {
      for (let j = k; j < p; j += 1) gradient[k]! -= root[j * p + k]! * slope.byCoefficient[j]!;
    }
    kept.forEach((g, k) => {
      gradient[p + k] = -units[g]! * slope.bySd[k]!;
    });
    return { value: -slope.value, gradient };
  };
}

function ascend(
  model: MixedModel,
  whitening: Whitening,
  kept: readonly number[],
  theta: Float64Array,
): Ascent {
  const surface =
    kept.length === model.factors.length
      ? whitening.surface
      : laplaceSurface({ ...model, factors: kept.map((g) => model.factors[g]!) });
  const rough = descent(surface, whitening, kept, roughMode);
  const { x, value, iterations } = minimise(rough, theta, { tolerance: 1e-7 });
  return { surface, kept, theta: x, value: -value, iterations };
}

/** Ascends, then leaves out the factors near 0 as long as that costs nothing: all at once, else the least of them. */
function withoutZeros(
  model: MixedModel,
  whitening: Whitening,
  factors: readonly number[],
  theta: Float64Array,
): Ascent {
  let best = ascend(model, whitening, factors, theta);
  for (;;) {
    const sds = sdsAt(whitening, best.kept, best.theta).map(Math.abs);
    const near = [...sds.keys()].filter((k) => sds[k]! < nearZero);
    if (near.length === 0) return best;
    const least = near.filter((k) => sds[k] === Math.min(...sds));
    const reduced =
      cheaper(model, whitening, best, near) ??
      (least.length < near.length ? cheaper(model, whitening, best, least) : null);
    if (reduced === null) return best;
    best = reduced;
  }
}

/** The ascent without some of its factors; null where that costs likelihood. */
function cheaper(
  model: MixedModel,
  whitening: Whitening,
  { kept, theta, value }: Ascent,
  without: readonly number[],
): Ascent | null {
  const fewer = kept.filter((_, k) => !without.includes(k));
  const shorter = theta.filter((_, k) => !without.includes(k - whitening.p));
  const reduced = ascend(model, whitening, fewer, shorter);
  return reduced.value < value - sameValue ? null : reduced;
}

/** The end of an ascent, with a large standard deviation where it was 0. */
function secondStart(best: Ascent, { p, units }: Whitening): Float64Array {
  const theta = new Float64Array(p + units.length);
  theta.set(best.theta.subarray(0, p));
  units.forEach((unit, g) => {
    const k = best.kept.indexOf(g);
    theta[p + g] = k < 0 ? secondSd / unit : best.theta[p + k]!;
  });
  return theta;
}

/** Steps of the differences, in units of about one standard error; their error is of the order of the square. */
const differenceStep = 1e-3;
const mostNewtonSteps = 8;
/** Squared distance to the optimum in standard errors: what is aimed at, and what is let pass. */
const aim = 1e-14;
const enough = 1e-8;

/** Newton's method from the quasi-Newton end, with the information taken there by differences of the gradient. */
function polished(model: MixedModel, whitening: Whitening, ascent: Ascent): LaplaceOptimum {
  const { surface, kept } = ascent;
  const slope = descent(surface, whitening, kept);
  const theta = ascent.theta.slice();
  const size = theta.length;
  const hessian = differenceHessian((x) => slope(x).gradient, theta, differenceStep);
  const factor = cholesky(hessian, size);
  let decrement = Infinity;
  let { value, gradient } = slope(theta);
  for (let steps = 0; factor !== null && steps < mostNewtonSteps; steps += 1) {
    const step = solveCholesky(factor, size, gradient);
    decrement = step.reduce((sum, move, k) => sum + move * gradient[k]!, 0);
    if (decrement <= aim) break;
    for (let k = 0; k < size; k += 1) theta[k]! -= step[k]!;
    ({ value, gradient } = slope(theta));
  }
  const sds = new Float64Array(model.factors.length);
  sdsAt(whitening, kept, theta).forEach((sd, k) => {
    sds[kept[k]!] = Math.abs(sd);
  });
  return {
    surface,
    coefficients: coefficientsAt(whitening, theta),
    sds,
    kept,
    covariance: factor === null ? new Float64Array(size * size) : unwhitened(whitening, kept, factor),
    value: -value,
    convergence: convergenceOf(ascent, factor !== null, decrement, gradient),
  };
}

function convergenceOf(
  { iterations }: Ascent,
  maximum: boolean,
  decrement: number,
  gradient: Float64Array,
): Convergence {
  const settled = maximum && decrement < enough;
  const reason = settled ? 'gradient-is-zero' : maximum ? 'gradient-is-not-zero' : 'no-maximum';
  const largest = gradient.reduce((most, slope) => Math.max(most, Math.abs(slope)), 0);
  return { settled, iterations, gradient: largest, reason };
}
