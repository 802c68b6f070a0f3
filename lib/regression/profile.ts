/** Profile likelihood: intervals of single coefficients, likelihood-ratio tests of several. */

import { chiSquareCdf } from '../numerics/gamma.ts';
import { checkLevel, type Estimate, type LevelOption, type Test, unknown } from '../proportions/interval.ts';
import type { Fit } from './fit.ts';
import { joinRows } from './joined-rows.ts';
import { scoringProblem } from './logistic.ts';
import { basisCoefficients } from './orthogonal-basis.ts';
import { overlappingPart } from './overlapping-part.ts';
import { maximise, type ScoringProblem } from './scoring.ts';
import { type Recession, recessions } from './separation.ts';
import { twoSidedQuantile, unsettledBecause } from './terms.ts';

/** Where the profile stands at one value of the parameter. */
export interface ProfilePoint {
  /** Root of twice the fall from the maximum: a standard normal deviate, were the likelihood quadratic. */
  readonly root: number;
  /** Derivative of `root` by the parameter. */
  readonly slope: number;
}

/** The profile of one parameter; null where the likelihood is flat beyond what can be computed. */
export type Profile = (value: number) => ProfilePoint | null;

// A side that has not fallen far enough after this many doublings has no bound.
const mostSteps = 30;

/** A value on `side` of the start where the root is at least `z`, and the last one before; null if there is none. */
function bracket(profile: Profile, start: number, step: number, z: number): [number, number] | null {
  let inside = start;
  let reach = step;
  for (let k = 0; k < mostSteps; k += 1) {
    const value = start + reach;
    const point = profile(value);
    if (point === null) return null;
    if (point.root >= z) return [inside, value];
    inside = value;
    reach *= 2;
  }
  return null;
}

/**
 * Where the root of a profile is z, by Newton's method kept inside a bracket.
 *
 * @param profile the profile of the parameter
 * @param ends a value where the root is below z, and one where it is not
 * @param z standard normal quantile of the level
 */
export function crossing(profile: Profile, [from, to]: readonly [number, number], z: number): number | null {
  let inside = from;
  let outside = to;
  let value = to;
  let before = Infinity;
  for (let k = 0; k < 100; k += 1) {
    const point = profile(value);
    if (point === null) return null;
    const short = z - point.root;
    // Far below any use of the number, or as near as rounding lets it come.
    const near = Math.abs(short);
    if (near < 1e-11 || (near < 1e-6 && near > before / 2)) return value;
    before = near;
    if (short > 0) inside = value;
    else outside = value;
    let next = value + short / point.slope;
    const least = Math.min(inside, outside);
    if (!(next > least && next < Math.max(inside, outside))) next = (inside + outside) / 2;
    const size = 1e-12 * (Math.abs(value) + Math.abs(to - from));
    if (Math.abs(next - value) < size) return next;
    value = next;
  }
  return value;
}

/**
 * The end of a profile interval on one side of `start`.
 *
 * @param profile the profile of the parameter
 * @param start where it is highest
 * @param step first step, its sign the side
 * @param z standard normal quantile of the level
 * @returns the end, or null where the profile never falls far enough
 */
export function profileEnd(profile: Profile, start: number, step: number, z: number): number | null {
  const ends = bracket(profile, start, step, z);
  return ends === null ? null : crossing(profile, ends, z);
}

/**
 * The profile of the last column's coefficient of a problem.
 *
 * @param problem binomial problem, its last column the one in question
 * @param highest objective at the unconstrained maximum
 * @param gamma coefficients of the basis to start from
 */
export function lastColumnProfile(problem: ScoringProblem, highest: number, gamma: Float64Array): Profile {
  const { p, triangle } = problem.basis;
  const scale = triangle[p * p - 1]!;
  let warm = gamma;
  return (value) => {
    const held = (start: Float64Array): Float64Array => Float64Array.from(start).fill(value * scale, p - 1);
    const end = maximise(problem, held(warm), p - 1) ?? maximise(problem, held(new Float64Array(p)), p - 1);
    if (end === null) return null;
    if (problem.enough === undefined) warm = end.point.gamma;
    const root = Math.sqrt(Math.max(0, 2 * (highest - end.point.objective)));
    return { root, slope: (-end.point.score[p - 1]! * scale) / root };
  };
}

/** The fit's problem with its columns in another order. */
export function reorderedProblem(caller: string, fit: Fit, order: readonly number[]): ScoringProblem {
  const joined = joinRows(fit.design);
  return scoringProblem(caller, joined, fit.design.names, fit.link, fit.method === 'firth', order);
}

/** Highest objective. Where separation has made the information singular at `gamma`, the search starts afresh. */
function highestObjective(problem: ScoringProblem, gamma: Float64Array): number {
  const { p } = problem.basis;
  const end = maximise(problem, gamma, p) ?? maximise(problem, new Float64Array(p), p);
  return end === null ? Number.NEGATIVE_INFINITY : end.point.objective;
}

function checkUncorrected(caller: string, fit: Fit): void {
  if (fit.interceptCorrected) {
    throw new RangeError(`${caller}: fit must be as fitted, got one with its intercept corrected`);
  }
}

/** A value near the maximum from which both ends can be sought, and a first step. */
interface Vantage {
  readonly profile: Profile;
  readonly start: number;
  readonly step: number;
}

/**
 * Where maximum likelihood is infinite the profile may have no top: starts at 0 and climbs, step by doubled step,
 * until the likelihood is within reach of its supremum.
 */
function climbed(profile: Profile, step: number, z: number): number {
  let value = 0;
  for (let reach = step, k = 0; k < mostSteps; reach *= 2, k += 1) {
    const point = profile(value);
    if (point === null || point.root < z) break;
    value += point.slope < 0 ? reach : -reach;
  }
  return value;
}

function coefficientProfile(fit: Fit, j: number, z: number): Vantage {
  const p = fit.design.names.length;
  const order = [...fit.design.names.keys()].filter((k) => k !== j).concat(j);
  const problem = reorderedProblem('profileIntervals', fit, order);
  const gamma = basisCoefficients(
    problem.basis,
    order.map((k) => fit.coefficients[k]!),
  );
  const { estimate, se } = fit.terms[j]!;
  if (fit.convergence.settled) {
    const profile = lastColumnProfile(problem, highestObjective(problem, gamma), gamma);
    return { profile, start: estimate, step: z * se };
  }
  // Other columns may run to infinity: the climb ends once it has all but 1e-11 of the likelihood, and the next one
  // starts afresh, since from so far out steps end where the information is singular.
  const coarse = { ...problem, enough: 1e-11 };
  const origin = new Float64Array(p);
  const profile = lastColumnProfile(coarse, highestObjective(coarse, origin), origin);
  // The standard error at probabilities of a half, the least it can be; the fit's own is far too large.
  const step = (2 * z) / problem.basis.triangle[p * p - 1]!;
  return { profile, start: climbed(profile, step, z), step };
}

/** A coefficient with its profile interval. */
export interface ProfileInterval extends Estimate {
  readonly term: string;
}

/**
 * Profile-likelihood intervals of the coefficients: the values that a likelihood-ratio test does not reject.
 *
 * Answers how far each coefficient is known, also where the likelihood is lopsided. For a Firth fit the penalised
 * likelihood is profiled, with every column kept in the determinant. Where maximum likelihood is infinite, a
 * coefficient that runs away has no estimate and no end on that side (null, because `separated`); its other end, and
 * the coefficients that stay finite, stand.
 *
 * @param fit a fit of `logistic`
 * @param options `level`, a proportion, 0.95 by default
 * @returns one interval a coefficient, in the order of the terms
 * @throws RangeError when `level` is not between 0 and 1, or the fit's intercept was corrected
 * @source Venzon & Moolgavkar (1988) Applied Statistics 37, 87–94; Heinze & Schemper (2002) Statistics in Medicine
 *   21, 2409–2419, section 2.2
 * @example profileIntervals(logistic({ successes: [2, 8], trials: [10, 10], columns: { stored: [1, 0] } }))[1] // { term: 'stored', estimate: -2.77258..., lower: -5.27262..., upper: -0.76632... }
 */
export function profileIntervals(fit: Fit, { level = 0.95 }: LevelOption = {}): readonly ProfileInterval[] {
  checkLevel('profileIntervals', level);
  checkUncorrected('profileIntervals', fit);
  const because = unsettledBecause(fit);
  if (because === 'not-settled') return fit.terms.map(({ term }) => ({ term, ...unknown(because) }));
  const z = twoSidedQuantile(level);
  const sides = because === 'separated' ? openSides(fit) : fit.terms.map(() => ({ up: false, down: false }));
  const part = because === 'separated' ? overlappingPart(fit) : null;
  const finite = part?.convergence.settled ? profileIntervals(part, { level }) : [];
  return fit.terms.map(({ term }, j) => {
    const { up, down } = sides[j]!;
    if (up && down) return { term, ...unknown('separated') };
    const known = up || down ? undefined : finite.find((each) => each.term === term);
    if (known !== undefined) return known;
    const { profile, start, step } = coefficientProfile(fit, j, z);
    const lower = down ? null : profileEnd(profile, start, -step, z);
    const upper = up ? null : profileEnd(profile, start, step, z);
    if (up || down) return { term, estimate: null, lower, upper, because: 'separated' };
    return { term, estimate: fit.terms[j]!.estimate, lower, upper };
  });
}

function openSides({ design }: Fit): readonly Recession[] {
  const joined = joinRows(design);
  return recessions(joined.columns, joined);
}

/** Which columns a likelihood-ratio test sets to zero. */
export interface DropOption {
  readonly drop: readonly string[];
}

/**
 * Likelihood-ratio test that the coefficients of some columns are all zero.
 *
 * Answers whether the columns tell anything beyond the others. For a Firth fit the penalised likelihoods are
 * compared, the coefficients held at 0 with every column kept in the determinant.
 *
 * @param fit a fit of `logistic`
 * @param options `drop`, names of columns
 * @returns statistic, its degrees of freedom (the number of columns) and p from the chi-square distribution
 * @throws RangeError when `drop` is empty or names a column that the fit does not have
 * @source McCullagh & Nelder (1989) Generalized Linear Models, section 4.4.3; Heinze & Schemper (2002)
 * @example likelihoodRatio(fit, { drop: ['stored', 'ageDays'] }) // { statistic: 15.43692..., df: 2, p: 0.00044... }
 */
export function likelihoodRatio(fit: Fit, { drop }: DropOption): Test & { readonly df: number } {
  checkUncorrected('likelihoodRatio', fit);
  const { names } = fit.design;
  const dropped = [...new Set(drop)].map((name) => names.indexOf(name));
  if (dropped.length === 0 || dropped.includes(-1)) {
    const given = drop.length === 0 ? 'none' : drop.join(', ');
    throw new RangeError(
      `likelihoodRatio: drop must name columns of the fit (${names.join(', ')}), got ${given}`,
    );
  }
  const order = [...names.keys()].filter((j) => !dropped.includes(j)).concat(dropped);
  const problem = reorderedProblem('likelihoodRatio', fit, order);
  const p = names.length;
  const highest = highestObjective(problem, new Float64Array(p));
  const reduced = maximise(problem, new Float64Array(p), p - dropped.length);
  const statistic = reduced === null ? 0 : Math.max(0, 2 * (highest - reduced.point.objective));
  const df = dropped.length;
  return { statistic, df, p: chiSquareCdf(statistic, df, { tail: 'upper' }) };
}
