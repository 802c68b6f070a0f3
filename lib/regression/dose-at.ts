/** The value of a column at which the fitted probability is p: an age, a dose. */

import { checkInside } from '../numerics/arguments.ts';
import { checkLevel, type Estimate, type LevelOption, unknown } from '../proportions/interval.ts';
import type { Fit } from './fit.ts';
import { type JoinedRows, joinRows } from './joined-rows.ts';
import { basisCoefficients, columnCoefficients, orthogonalBasis } from './orthogonal-basis.ts';
import { crossing, type Profile, profileEnd } from './profile.ts';
import { linkFunction } from './response.ts';
import { maximise, type ScoringProblem } from './scoring.ts';
import { bilinear } from './standardise.ts';
import { twoSidedQuantile, unsettledBecause } from './terms.ts';

export interface DoseOptions extends LevelOption {
  /** Name of the column whose value is sought. */
  readonly column: string;
  /** Values of the other columns; 0 where not named, the intercept 1. */
  readonly at?: Readonly<Record<string, number>> | ReadonlyMap<string, number>;
}

/** A range whose ends may be open. */
export interface OpenRange {
  readonly lower: number | null;
  readonly upper: number | null;
}

/** The dose: `lower` and `upper` are the profile-likelihood range; an end without a bound is null. */
export interface Dose extends Estimate {
  /** Delta-method standard error. */
  readonly se: number | null;
  /** estimate ± z · se. */
  readonly delta: OpenRange;
  /** Fieller's range; `g` is (z · se(slope) / slope)², at 1 or above which one or both ends are open. */
  readonly fieller: OpenRange & { readonly g: number | null };
}

/** The line c·beta + slope · x at which the probability is sought. */
interface Line {
  /** Index of the column sought. */
  readonly column: number;
  /** Values of the columns, 0 at `column`. */
  readonly constant: Float64Array;
  /** linkFunction(p). */
  readonly target: number;
}

function lineOf({ design, link }: Fit, p: number, { column, at = {} }: DoseOptions): Line {
  const { names } = design;
  const indexOf = (name: string, option: string): number => {
    const j = names.indexOf(name);
    if (j >= 0) return j;
    throw new RangeError(`doseAt: ${option} must name columns of the fit (${names.join(', ')}), got ${name}`);
  };
  const constant = new Float64Array(names.length);
  if (names[0] === '(Intercept)') constant[0] = 1;
  for (const [name, value] of at instanceof Map ? at : Object.entries(at)) {
    if (!Number.isFinite(value)) {
      throw new RangeError(`doseAt: at must hold finite numbers, got ${value} for ${name}`);
    }
    constant[indexOf(name, 'at')] = value;
  }
  const sought = indexOf(column, 'column');
  constant[sought] = 0;
  return { column: sought, constant, target: linkFunction(link, p) };
}

/** Estimate and the covariance of numerator (target - c·beta) and slope. */
interface Quotient {
  readonly numerator: number;
  readonly slope: number;
  readonly numeratorVariance: number;
  readonly slopeVariance: number;
  readonly covariance: number;
}

function quotientOf(fit: Fit, { column, constant, target }: Line): Quotient {
  const { coefficients, covariance } = fit;
  const unit = new Float64Array(constant.length);
  unit[column] = 1;
  return {
    numerator: constant.reduce((left, value, j) => left - value * coefficients[j]!, target),
    slope: coefficients[column]!,
    numeratorVariance: bilinear(constant, covariance, constant),
    slopeVariance: bilinear(unit, covariance, unit),
    covariance: -bilinear(constant, covariance, unit),
  };
}

function deltaError({ numerator, slope, ...v }: Quotient): number {
  const x = numerator / slope;
  return Math.sqrt(v.numeratorVariance - 2 * x * v.covariance + x * x * v.slopeVariance) / Math.abs(slope);
}

/** The x with (numerator - x slope)² ≤ z² Var(numerator - x slope), as far as they are connected to the estimate. */
function fiellerRange(q: Quotient, z: number): Dose['fieller'] {
  const z2 = z * z;
  const g = (z2 * q.slopeVariance) / (q.slope * q.slope);
  const a = q.slope * q.slope - z2 * q.slopeVariance;
  const b = q.numerator * q.slope - z2 * q.covariance;
  const c = q.numerator * q.numerator - z2 * q.numeratorVariance;
  const discriminant = b * b - a * c;
  if (a === 0 || discriminant < 0) return { lower: null, upper: null, g };
  const roots = [(b - Math.sqrt(discriminant)) / a, (b + Math.sqrt(discriminant)) / a].sort((x, y) => x - y);
  if (a > 0) return { lower: roots[0]!, upper: roots[1]!, g };
  // The range runs through infinity: all x but those between the roots.
  const estimate = q.numerator / q.slope;
  return estimate >= roots[1]! ? { lower: roots[1]!, upper: null, g } : { lower: null, upper: roots[0]!, g };
}

/**
 * The columns recombined so that the last coefficient is (c·beta + slope x) / c_k, with the fit's coefficients in them;
 * null for an x so far away that the recombined columns can no longer be told apart.
 */
function recombined(
  fit: Fit,
  joined: JoinedRows,
  { column, constant }: Line,
  order: readonly number[],
  x: number,
) {
  const held = order.at(-1)!;
  const pivot = joined.columns[held]!;
  const shifts = order.map((j) => (j === held ? 0 : (j === column ? x : constant[j]!) / constant[held]!));
  const columns = order.map((j, k) => {
    const values = joined.columns[j]!;
    return shifts[k] === 0 ? values : values.map((value, i) => value - shifts[k]! * pivot[i]!);
  });
  const start = order.map((j) => fit.coefficients[j]!);
  start[order.length - 1] = shifts.reduce((sum, shift, k) => sum + shift * start[k]!, start.at(-1)!);
  const basis = orthogonalBasis(columns, joined.trials);
  if ('column' in basis) return null;
  const penalised = fit.method === 'firth';
  const problem: ScoringProblem = { basis, counts: joined, offset: joined.offset, link: fit.link, penalised };
  return { problem, gamma: basisCoefficients(basis, start) };
}

/**
 * The profile of the dose. With the dose held at x the coefficients obey c·beta + slope x = target; the columns are
 * recombined, with determinant 1, so that this sum over c_k is the last coefficient, and is held. By Lagrange's rule
 * the profile's slope is minus the slope of the line times the score of that coefficient over c_k.
 */
function doseProfile(fit: Fit, line: Line): Profile {
  const joined = joinRows(fit.design);
  const { constant, target } = line;
  const held = constant.reduce(
    (best, value, j) => (Math.abs(value) > Math.abs(constant[best]!) ? j : best),
    0,
  );
  const order = [...constant.keys()].filter((j) => j !== held).concat(held);
  const p = order.length;
  const share = constant[held]!;
  const whole = recombined(fit, joined, line, order, 0);
  const top = whole === null ? null : maximise(whole.problem, whole.gamma, p);
  const highest = top?.point.objective ?? Number.NEGATIVE_INFINITY;
  let warm: Float64Array | null = null;
  return (x) => {
    const there = recombined(fit, joined, line, order, x);
    if (there === null) return null;
    const { problem, gamma } = there;
    const { basis } = problem;
    const scale = basis.triangle[p * p - 1]!;
    const start = Float64Array.from(warm ?? gamma).fill((target / share) * scale, p - 1);
    const end = maximise(problem, start, p - 1);
    if (end === null) return null;
    warm = end.point.gamma;
    const root = Math.sqrt(Math.max(0, 2 * (highest - end.point.objective)));
    const slope = columnCoefficients(basis, end.point.gamma)[order.indexOf(line.column)]!;
    return { root, slope: (slope * end.point.score[p - 1]! * scale) / (share * root) };
  };
}

/**
 * The end of the dose's range on the side of `step`. The profile need not rise steadily: past the dose that is known
 * best (the `centre`) it falls again towards that of a slope of 0, so the centre is tried before steps go beyond it.
 */
function doseEnd(profile: Profile, estimate: number, centre: number, step: number, z: number): number | null {
  if ((centre - estimate) * step <= 0) return profileEnd(profile, estimate, step, z);
  const atCentre = profile(centre);
  if (atCentre !== null && atCentre.root >= z) return crossing(profile, [estimate, centre], z);
  return profileEnd(profile, centre, step, z);
}

/**
 * The dose, or age, at which the fitted probability is p (median effective dose for p = 0.5).
 *
 * Answers when fruit set falls to p. The range is that of the profile likelihood, which knows that the dose can lie
 * anywhere where the slope may be 0: then an end, or both, is null. Fieller's and the delta method's come along for
 * comparison with handbooks. Not to be read past the doses that were tried, and not to compare lots that began unlike:
 * in the viability equation probit v = Ki − age / sigma (Ellis & Roberts 1980, Annals of Botany 45, 13–30) the age at a half is
 * Ki · sigma, which rises with the start Ki; sigma is −1 / slope of a fit with the probit link.
 *
 * @param fit a fit of `logistic`; where it has not settled all is null, because `separated` or `not-settled`
 * @param p probability, strictly between 0 and 1
 * @param options `column`, whose value is sought; `at`, values of the other columns; `level`
 * @returns the dose in the unit of the column; null because `no-slope` where the slope is exactly 0
 * @throws RangeError when p or `level` is not between 0 and 1, a name is no column of the fit, a value is not finite,
 *   all other columns are 0, or the fit's intercept was corrected
 * @source Finney (1971) Probit Analysis, chapter 4 (Fieller); Venables & Ripley (2002) MASS, section 7.2 (`dose.p`)
 * @example doseAt(fit, 0.5, { column: 'ageDays', at: { stored: 1 } }).estimate // 37.91366...
 */
export function doseAt(fit: Fit, p: number, options: DoseOptions): Dose {
  const { level = 0.95 } = options;
  checkInside('doseAt', 'p', p);
  checkLevel('doseAt', level);
  if (fit.interceptCorrected) {
    throw new RangeError('doseAt: fit must be as fitted, got one with its intercept corrected');
  }
  const line = lineOf(fit, p, options);
  if (line.constant.every((value) => value === 0)) {
    throw new RangeError('doseAt: at must leave a column other than 0, got none in a fit without intercept');
  }
  const because = unsettledBecause(fit) ?? (fit.coefficients[line.column] === 0 ? 'no-slope' : null);
  if (because !== null) {
    const open = { lower: null, upper: null };
    return { ...unknown(because), se: null, delta: open, fieller: { ...open, g: null } };
  }
  const quotient = quotientOf(fit, line);
  const z = twoSidedQuantile(level);
  const estimate = quotient.numerator / quotient.slope;
  const se = deltaError(quotient);
  const profile = doseProfile(fit, line);
  const centre = quotient.covariance / quotient.slopeVariance;
  return {
    estimate,
    se,
    lower: doseEnd(profile, estimate, centre, -z * se, z),
    upper: doseEnd(profile, estimate, centre, z * se, z),
    delta: { lower: estimate - z * se, upper: estimate + z * se },
    fieller: fiellerRange(quotient, z),
  };
}
