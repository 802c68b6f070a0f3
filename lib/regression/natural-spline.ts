/** Natural cubic splines: a smooth curve of a column, straight outside its boundary knots. */

import { checkFinite } from '../numerics/arguments.ts';

/** Where the pieces of a natural spline meet. */
export interface SplineKnots {
  /** Inner knots, increasing, strictly between the boundary knots; none for a straight line. */
  readonly knots: readonly number[];
  /** The two boundary knots, outside which the curve is straight; the least and the largest value where left out. */
  readonly boundary?: readonly [number, number];
}

const order = 4;

/**
 * B-spline i of order k at x, or its derivative: the recursion of Cox and de Boor. Intervals are closed on the left,
 * the last one on both sides.
 */
function bSpline(knots: readonly number[], i: number, k: number, x: number, derivative: number): number {
  if (k === 1) {
    const last = knots.at(-1)!;
    return x >= knots[i]! && (x < knots[i + 1]! || (x === last && knots[i + 1] === last && knots[i]! < last))
      ? 1
      : 0;
  }
  const left = knots[i + k - 1]! - knots[i]!;
  const right = knots[i + k]! - knots[i + 1]!;
  const part = (width: number, index: number, factor: number): number =>
    width === 0 ? 0 : (factor / width) * bSpline(knots, index, k - 1, x, Math.max(0, derivative - 1));
  if (derivative > 0) return part(left, i, k - 1) - part(right, i + 1, k - 1);
  return part(left, i, x - knots[i]!) + part(right, i + 1, knots[i + k]! - x);
}

/** All B-splines but the first at x: the first is what an intercept stands for. */
function bSplines(knots: readonly number[], x: number, derivative: number): Float64Array {
  return Float64Array.from({ length: knots.length - order - 1 }, (_, i) =>
    bSpline(knots, i + 1, order, x, derivative),
  );
}

/** The Householder vector that turns entries from `from` on into a multiple of the unit vector. */
function reflector(values: Float64Array, from: number): Float64Array {
  const vector = values.map((value, i) => (i < from ? 0 : value));
  const length = Math.hypot(...vector);
  const signed = vector[from]! < 0 ? -length : length;
  const scaled = vector.map((value) => value / signed);
  scaled[from]! += 1;
  return scaled;
}

function reflect(vector: Float64Array, from: number, values: Float64Array): void {
  let along = 0;
  for (let i = from; i < values.length; i += 1) along += vector[i]! * values[i]!;
  for (let i = from; i < values.length; i += 1) values[i]! -= (along / vector[from]!) * vector[i]!;
}

/** Two reflections after which the last entries are the splines whose second derivative is 0 at both boundaries. */
function reflectors(knots: readonly number[], [low, high]: readonly [number, number]): Float64Array[] {
  const first = reflector(bSplines(knots, low, 2), 0);
  const other = bSplines(knots, high, 2);
  reflect(first, 0, other);
  return [first, reflector(other, 1)];
}

function extremes(values: ArrayLike<number>): readonly [number, number] {
  let [low, high] = [Infinity, -Infinity];
  for (let i = 0; i < values.length; i += 1) {
    low = Math.min(low, values[i]!);
    high = Math.max(high, values[i]!);
  }
  return [low, high];
}

/** The knots with their boundary, checked. */
export function fullKnots(
  caller: string,
  name: string,
  values: ArrayLike<number>,
  { knots, boundary = extremes(values) }: SplineKnots,
): Required<SplineKnots> {
  const [low, high] = boundary;
  if (!(Number.isFinite(low) && Number.isFinite(high) && low < high)) {
    throw new RangeError(
      `${caller}: boundary of ${name} must be two finite numbers in increasing order, got ${low} and ${high}`,
    );
  }
  knots.forEach((knot, i) => {
    if (!(knot > (knots[i - 1] ?? low) && knot < high)) {
      throw new RangeError(
        `${caller}: knots of ${name} must increase strictly between ${low} and ${high}, got ${knots.join(', ')}`,
      );
    }
  });
  return { knots, boundary };
}

/**
 * Natural cubic spline basis.
 *
 * Answers with columns whose combinations are all the smooth curves that are cubic between the knots and straight
 * outside the boundary knots, the constant left to the intercept: for the age of pollen where neither days nor
 * log(1 + days) need be its scale. Not for few distinct values: each knot costs a coefficient. Curves read past the
 * boundary knots are straight lines by assumption.
 *
 * @param values n finite numbers
 * @param spline `knots`, k inner knots, increasing; `boundary`, two numbers around them, the extremes of `values`
 *   where left out (state them where the basis is to be made again for other values)
 * @returns k + 1 columns of n numbers, those of R's `splines::ns(values, knots, Boundary.knots)`
 * @throws RangeError when a value is not finite, the knots do not increase or the boundary does not enclose them
 * @source de Boor (1978) A Practical Guide to Splines, chapter X; Hastie, Tibshirani & Friedman (2009) The Elements of
 *   Statistical Learning, section 5.2.1
 * @example naturalSpline([0, 30, 90, 365], { knots: [60], boundary: [0, 365] }).length // 2
 */
export function naturalSpline(values: ArrayLike<number>, spline: SplineKnots): readonly Float64Array[] {
  for (let i = 0; i < values.length; i += 1) checkFinite('naturalSpline', `value ${i + 1}`, values[i]!);
  const { knots, boundary } = fullKnots('naturalSpline', 'the spline', values, spline);
  const [low, high] = boundary;
  const all = [low, low, low, low, ...knots, high, high, high, high];
  const turns = reflectors(all, boundary);
  const columns = Array.from({ length: knots.length + 1 }, () => new Float64Array(values.length));
  for (let i = 0; i < values.length; i += 1) {
    const inside = Math.min(high, Math.max(low, values[i]!));
    const basis = bSplines(all, inside, 0);
    const beyond = values[i]! - inside;
    if (beyond !== 0) {
      const slopes = bSplines(all, inside, 1);
      for (let k = 0; k < basis.length; k += 1) basis[k]! += beyond * slopes[k]!;
    }
    turns.forEach((vector, from) => {
      reflect(vector, from, basis);
    });
    columns.forEach((column, k) => {
      column[i] = basis[k + 2]!;
    });
  }
  return columns;
}
