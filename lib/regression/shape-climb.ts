/** Maximum likelihood of coefficients together with one shape parameter that all rows share. */

import { cholesky, invertCholesky } from '../numerics/linear-algebra.ts';
import { type ClimbEnd, type ClimbPoint, climb } from './climb.ts';
import { columnCovariance, type OrthogonalBasis } from './orthogonal-basis.ts';

/** One row's log-likelihood, with derivatives by its linear predictor (eta) and by the logarithm of the shape. */
export interface RowSlopes {
  value: number;
  eta: number;
  etaEta: number;
  shape: number;
  etaShape: number;
  shapeShape: number;
}

/** Writes the log-likelihood of row i, up to a constant, and its derivatives. */
export type RowLikelihood = (i: number, eta: number, logShape: number, slopes: RowSlopes) => void;

/** Rows on an orthogonal basis of p columns. */
export interface ShapeModel {
  readonly basis: OrthogonalBasis;
  readonly offset: Float64Array;
  readonly row: RowLikelihood;
  /** Whether the shape is estimated; its logarithm then stands behind the p coefficients. */
  readonly shaped: boolean;
}

/** The log-likelihood at one point. */
export interface ShapePoint extends ClimbPoint {
  /** Matrix of second derivatives with its sign turned: observed information, row by row. */
  readonly information: Float64Array;
}

/** Values of one row that take no part in the sums stay as they are here. */
export function noSlopes(): RowSlopes {
  return { value: 0, eta: 0, etaEta: 0, shape: 0, etaShape: 0, shapeShape: 0 };
}

/** Linear predictors of all rows. */
export function rowPredictors({ basis, offset }: ShapeModel, gamma: Float64Array): Float64Array {
  const { p, rows } = basis;
  return offset.map((start, i) => {
    let eta = start;
    for (let k = 0; k < p; k += 1) eta += rows[i * p + k]! * gamma[k]!;
    return eta;
  });
}

/** Adds one row, whose basis values start at `at`, to the score and to the lower triangle of the information. */
function addRow(
  { basis: { p, rows }, shaped }: ShapeModel,
  at: number,
  slopes: RowSlopes,
  score: Float64Array,
  information: Float64Array,
): void {
  const size = score.length;
  for (let j = 0; j < p; j += 1) {
    const x = rows[at + j]!;
    score[j]! += slopes.eta * x;
    for (let k = 0; k <= j; k += 1) information[j * size + k]! -= slopes.etaEta * x * rows[at + k]!;
    if (shaped) information[p * size + j]! -= slopes.etaShape * x;
  }
  if (!shaped) return;
  score[p]! += slopes.shape;
  information[p * size + p]! -= slopes.shapeShape;
}

/** The information where it is positive definite, else with as much added to its diagonal as it takes. */
function steepened(information: Float64Array, size: number): Float64Array | null {
  if (cholesky(information, size) !== null) return information;
  let largest = 0;
  for (let j = 0; j < size; j += 1) largest = Math.max(largest, Math.abs(information[j * size + j]!));
  for (let part = 1e-3; part < 1e4; part *= 4) {
    const curvature = information.slice();
    for (let j = 0; j < size; j += 1) curvature[j * size + j]! += part * largest;
    if (cholesky(curvature, size) !== null) return curvature;
  }
  return null;
}

/** The log-likelihood and its derivatives; null where they cannot be computed. */
function evaluate(model: ShapeModel, gamma: Float64Array): ShapePoint | null {
  const { p } = model.basis;
  const size = gamma.length;
  const logShape = model.shaped ? gamma[p]! : 0;
  const score = new Float64Array(size);
  const information = new Float64Array(size * size);
  const slopes = noSlopes();
  let objective = 0;
  rowPredictors(model, gamma).forEach((eta, i) => {
    model.row(i, eta, logShape, slopes);
    objective += slopes.value;
    addRow(model, i * p, slopes, score, information);
  });
  if (!Number.isFinite(objective) || !information.every(Number.isFinite)) return null;
  const curvature = steepened(information, size);
  return curvature === null ? null : { gamma, objective, score, information, curvature };
}

/**
 * Climbs to a maximum of the log-likelihood by Newton's method; where the likelihood is not concave, with a steeper
 * curvature in place of its own.
 *
 * @param start p coefficients of the basis, and the logarithm of the shape where it is estimated
 * @returns the last point; null where even the start cannot be evaluated
 * @source Nocedal & Wright (2006) Numerical Optimization, section 3.4 (modified Newton)
 */
export function climbShape(model: ShapeModel, start: Float64Array): ClimbEnd<ShapePoint> | null {
  return climb((gamma) => evaluate(model, gamma), start, start.length);
}

/** The model without overdispersion: the limit of an infinite shape. */
export interface Limit {
  /** Its p coefficients. */
  readonly gamma: Float64Array;
  readonly objective: number;
  /** Whether the likelihood rises where the shape comes back from infinity. */
  readonly leaves: boolean;
}

/** A shape that is near enough to infinity to do better than the limit, where the likelihood rises on leaving it. */
function firstShape(model: ShapeModel, { gamma, objective }: Limit, logShape: number): number {
  for (let larger = logShape; larger < logShape + 40; larger += 0.7) {
    const point = evaluate(model, Float64Array.of(...gamma, larger));
    if (point !== null && point.objective > objective) return larger;
  }
  return logShape;
}

/**
 * Climbs from the coefficients of the limit to a maximum with a finite shape.
 *
 * The climb starts above the limit wherever the likelihood rises on leaving it, so that it cannot end there.
 *
 * @param logShape a guess
 * @returns the last point; null where nothing does better than the limit
 */
export function climbFromLimit(
  model: ShapeModel,
  limit: Limit,
  logShape: number,
): ClimbEnd<ShapePoint> | null {
  const from = limit.leaves ? firstShape(model, limit, logShape) : logShape;
  const end = climbShape(model, Float64Array.of(...limit.gamma, from));
  const rounding = 1e-11 * (1 + Math.abs(limit.objective));
  return end !== null && end.point.objective > limit.objective + rounding ? end : null;
}

/**
 * Covariance from the observed information, for the columns' coefficients and the logarithm of the shape (last).
 *
 * @returns size × size, row by row; null where the information is not positive definite
 */
export function observedCovariance(
  { basis, shaped }: ShapeModel,
  { information, gamma }: ShapePoint,
): Float64Array | null {
  const factor = cholesky(information, gamma.length);
  if (factor === null) return null;
  const inverse = invertCholesky(factor, gamma.length);
  return columnCovariance(shaped ? withShape(basis) : basis, inverse);
}

/** The basis with the shape as one more column, which stands for itself. */
function withShape({ p, triangle }: OrthogonalBasis): Pick<OrthogonalBasis, 'p' | 'triangle'> {
  const larger = new Float64Array((p + 1) * (p + 1));
  for (let j = 0; j < p; j += 1) larger.set(triangle.subarray(j * p, (j + 1) * p), j * (p + 1));
  larger[larger.length - 1] = 1;
  return { p: p + 1, triangle: larger };
}
