/** What the regressions of counts share: from the Poisson limit to a fit with overdispersion. */

import { chiSquareCdf } from '../numerics/gamma.ts';
import { logGamma } from '../numerics/special-functions.ts';
import type { PossibleTest } from '../proportions/interval.ts';
import type { ClimbEnd } from './climb.ts';
import type { CountDesign } from './count-design.ts';
import type { CountLikelihood } from './count-rows.ts';
import type { Convergence } from './fit.ts';
import { columnCoefficients, independentBasis } from './orthogonal-basis.ts';
import { separatingColumns } from './separation.ts';
import {
  climbFromLimit,
  climbShape,
  observedCovariance,
  rowPredictors,
  type ShapeModel,
  type ShapePoint,
} from './shape-climb.ts';
import type { FittedTerms } from './terms.ts';

/** A finished fit. Where `convergence.settled` is false its numbers are null, and `convergence.reason` says why. */
export interface CountFit extends FittedTerms {
  readonly design: CountDesign;
  /** p coefficients of the logarithm of the mean, in the order of `design.names`. */
  readonly coefficients: Float64Array | null;
  /** p × p covariance of the coefficients, row by row. */
  readonly covariance: Float64Array | null;
  /** Expected count of each row; for zero-truncated counts, given that it is not zero. */
  readonly fitted: Float64Array | null;
  /** Log-likelihood with all its constants, as R's `logLik`. */
  readonly logLik: number | null;
  /** Parameters estimated, a finite theta among them. */
  readonly df: number;
  /** Columns along which a mean runs to zero, so that maximum likelihood is infinite. */
  readonly separatedBy: readonly string[];
}

/** A shape parameter. Where the data are at its limit it is null, and `because` names the limit. */
export interface ShapeEstimate {
  readonly estimate: number | null;
  /** From the observed information of coefficients and shape together. */
  readonly se: number | null;
  /** Standard error of its logarithm, on which ranges should be made. */
  readonly logSe: number | null;
  readonly because?: string;
}

/** A family of counts with its limit of no overdispersion. */
export interface CountFamily {
  /** 0, or 1 for zero-truncated counts: the count to which all probability goes as the mean goes to zero. */
  readonly smallest: number;
  readonly poisson: CountLikelihood;
  readonly overdispersed: CountLikelihood;
  /** Slope of a row's log-likelihood by 1 / theta at the Poisson limit. */
  readonly leaving: (count: number, mu: number) => number;
}

/** A climb and what was climbed. */
export interface CountClimb {
  readonly model: ShapeModel;
  readonly end: ClimbEnd<ShapePoint>;
}

/** The climb without overdispersion; `separatedBy` names the columns along which it never ends. */
export interface PoissonClimb extends CountClimb {
  readonly separatedBy: readonly string[];
}

function modelOf(
  design: CountDesign,
  row: CountLikelihood,
  basis: ShapeModel['basis'],
  shaped: boolean,
): ShapeModel {
  const { counts, offset } = design;
  return {
    basis,
    offset,
    shaped,
    row: (i, eta, logShape, slopes) => row(counts[i]!, eta, logShape, slopes),
  };
}

/** Coefficients of the least squares fit to the logarithms of the counts. */
function logCountStart(
  { counts, offset }: CountDesign,
  { basis: { p, rows } }: ShapeModel,
  smallest: number,
) {
  const start = new Float64Array(p);
  counts.forEach((count, i) => {
    const target = Math.log(count + 0.5 - smallest) - offset[i]!;
    for (let k = 0; k < p; k += 1) start[k]! += rows[i * p + k]! * target;
  });
  return start;
}

/** A mean this small in a row of the smallest count may be on its way to zero. */
const smallMean = -20;

/** Names of the columns along which means run to zero while no row of a larger count changes. */
function separatingNames(design: CountDesign, { model, end }: CountClimb, smallest: number): string[] {
  const { counts, columns, names } = design;
  const eta = rowPredictors(model, end.point.gamma);
  // Settled with no such row vanishing: the score could not be so small on the way to infinity.
  if (end.convergence.settled && counts.every((count, i) => count > smallest || eta[i]! > smallMean))
    return [];
  // A row of the smallest count may only fall, as a row of failures; another must not move, as one with both outcomes.
  const successes = counts.map((count) => (count > smallest ? 1 : 0));
  const found = separatingColumns(columns, { successes, trials: successes.map((value) => value + 1) });
  const separating = found.map((j) => names[j]!);
  return separating.length > 1 ? separating.filter((name) => name !== '(Intercept)') : separating;
}

/** theta of the moments, 1 / theta = Σ ((y − mu)² − y) / Σ mu², kept within bounds. */
function momentTheta({ counts }: CountDesign, mu: Float64Array): number {
  let excess = 0;
  let squares = 0;
  counts.forEach((count, i) => {
    excess += (count - mu[i]!) ** 2 - count;
    squares += mu[i]! ** 2;
  });
  return Math.min(1e3, Math.max(1e-2, excess > 0 ? squares / excess : 1));
}

/**
 * Fits the family without overdispersion.
 *
 * @throws RangeError naming the columns where one is a linear combination of others
 */
export function climbPoisson(caller: string, design: CountDesign, family: CountFamily): PoissonClimb {
  const ones = new Float64Array(design.n).fill(1);
  const basis = independentBasis(caller, design.names, design.columns, ones);
  const model = modelOf(design, family.poisson, basis, false);
  const start = logCountStart(design, model, family.smallest);
  const end = climbShape(model, start) ?? climbShape(model, new Float64Array(basis.p));
  if (end === null) {
    throw new RangeError(
      `${caller}: exposure must leave expected counts that are numbers, got one that does not`,
    );
  }
  return { model, end, separatedBy: separatingNames(design, { model, end }, family.smallest) };
}

/** Fits the family with overdispersion from its limit; null where nothing does better than the limit. */
export function climbOverdispersed(
  design: CountDesign,
  family: CountFamily,
  poisson: PoissonClimb,
): CountClimb | null {
  const { gamma, objective } = poisson.end.point;
  const model = modelOf(design, family.overdispersed, poisson.model.basis, true);
  const mu = rowPredictors(poisson.model, gamma).map(Math.exp);
  let rise = 0;
  for (let i = 0; i < design.n; i += 1) rise += family.leaving(design.counts[i]!, mu[i]!);
  const limit = { gamma, objective, leaves: rise > 0 };
  const end = climbFromLimit(model, limit, Math.log(momentTheta(design, mu)));
  return end === null ? null : { model, end };
}

/** The constants that the rows leave out, −Σ log count!. */
export function logFactorials({ counts }: CountDesign): number {
  return counts.reduce((sum, count) => sum - logGamma(count + 1), 0);
}

/** The fit where there is no estimate: all numbers null, because of `reason`. */
export function countWithoutFit(
  design: CountDesign,
  separatedBy: readonly string[],
  df: number,
  convergence: Convergence,
): CountFit {
  return {
    design,
    terms: design.names.map((term) => ({ term, estimate: null, se: null })),
    coefficients: null,
    covariance: null,
    fitted: null,
    logLik: null,
    df,
    separatedBy,
    convergence:
      separatedBy.length > 0 ? { ...convergence, settled: false, reason: 'separated' } : convergence,
  };
}

/**
 * The fit at the end of a climb.
 *
 * @param covariance of the columns' coefficients, size × size, of which the leading p × p are the fit's; null where the
 *   information is not positive definite
 * @param expected expected count of a row from its mean
 */
export function countFitAt(
  design: CountDesign,
  { model, end: { point, convergence } }: CountClimb,
  covariance: Float64Array | null,
  expected: (mu: number) => number,
): CountFit {
  const { p } = model.basis;
  const df = point.gamma.length;
  if (!convergence.settled) return countWithoutFit(design, [], df, convergence);
  if (covariance === null) {
    return countWithoutFit(design, [], df, {
      ...convergence,
      settled: false,
      reason: 'singular-information',
    });
  }
  const size = Math.sqrt(covariance.length);
  const coefficients = columnCoefficients(model.basis, point.gamma.slice(0, p));
  return {
    design,
    terms: design.names.map((term, j) => ({
      term,
      estimate: coefficients[j]!,
      se: Math.sqrt(covariance[j * size + j]!),
    })),
    coefficients,
    covariance: leadingBlock(covariance, size, p),
    fitted: rowPredictors(model, point.gamma).map((eta) => expected(Math.exp(eta))),
    logLik: point.objective + logFactorials(design),
    df,
    separatedBy: [],
    convergence,
  };
}

/** The first p rows and columns of a size × size matrix. */
export function leadingBlock(matrix: Float64Array, size: number, p: number): Float64Array {
  return Float64Array.from({ length: p * p }, (_, k) => matrix[Math.floor(k / p) * size + (k % p)]!);
}

/** The shape at the end of a climb, from the joint covariance, whose last place is that of its logarithm. */
export function shapeAt({ gamma }: ShapePoint, covariance: Float64Array): ShapeEstimate {
  const estimate = Math.exp(gamma.at(-1)!);
  const logSe = Math.sqrt(covariance.at(-1)!);
  return { estimate, se: estimate * logSe, logSe };
}

/** A shape that the data cannot give. */
export function shapeUnknown(because: string): ShapeEstimate {
  return { estimate: null, se: null, logSe: null, because };
}

/** Likelihood-ratio test of no overdispersion, whose hypothesis lies on the edge: half a chi-square with 1 df. */
export function overdispersionTest(logLik: number, limitLogLik: number): PossibleTest {
  const statistic = Math.max(0, 2 * (logLik - limitLogLik));
  return {
    statistic,
    df: 1,
    p: statistic === 0 ? 1 : chiSquareCdf(statistic, 1, { tail: 'upper' }) / 2,
  };
}

/** Observed covariance at the end of a climb. */
export function covarianceAt({ model, end }: CountClimb): Float64Array | null {
  return observedCovariance(model, end.point);
}
