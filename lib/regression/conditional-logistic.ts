/** Conditional logistic regression: within strata, exact. */

import { cholesky, invertCholesky } from '../numerics/linear-algebra.ts';
import { climb } from './climb.ts';
import { conditionalPoint } from './conditional-likelihood.ts';
import { type Design, type DesignSpec, designOf, type Factor } from './design.ts';
import type { Convergence, Term } from './fit.ts';
import { columnCoefficients, columnCovariance, orthogonalBasis } from './orthogonal-basis.ts';
import { type Stratum, separatingWithin, strataOf, withinStrata } from './strata.ts';

export interface ConditionalOptions {
  /** Name of the grouping factor whose levels are the strata; may be left out where there is one factor only. */
  readonly strata?: string;
}

/** A coefficient whose estimate the strata may not give. */
export type ConditionalTerm = Term | { readonly term: string; readonly estimate: null; readonly se: null };

/** A finished fit. Where `convergence.settled` is false, terms hold null, and the reason says why. */
export interface ConditionalFit {
  readonly terms: readonly ConditionalTerm[];
  /** p × p covariance, row by row; null where the estimates are. */
  readonly covariance: Float64Array | null;
  /** Conditional log-likelihood: its supremum under separation, its value at zero where it cannot be maximised. */
  readonly logLik: number;
  /** At coefficients of zero. */
  readonly nullLogLik: number;
  readonly strata: number;
  /** Strata with both outcomes: only these tell anything. */
  readonly informativeStrata: number;
  /** Columns that cause what `convergence.reason` says: `separated` or `alike-within-strata`. */
  readonly blamed: readonly string[];
  readonly convergence: Convergence;
}

function factorOf({ groups }: Design, name: string | undefined): Factor {
  const factor = name === undefined && groups.length === 1 ? groups[0] : groups.find((g) => g.name === name);
  if (factor === undefined) {
    const names = groups.length === 0 ? 'none' : groups.map((group) => group.name).join(', ');
    throw new RangeError(
      `conditionalLogistic: strata must name one of the groups (${names}), got ${name ?? 'nothing'}`,
    );
  }
  return factor;
}

interface Setting {
  readonly names: readonly string[];
  readonly strata: readonly Stratum[];
  readonly counts: { readonly strata: number; readonly informativeStrata: number };
}

function unfitted(
  { names, counts }: Setting,
  reason: string,
  blamed: readonly string[],
  logLik: readonly [number, number],
): ConditionalFit {
  return {
    terms: names.map((term) => ({ term, estimate: null, se: null })),
    covariance: null,
    logLik: logLik[1],
    nullLogLik: logLik[0],
    ...counts,
    blamed,
    convergence: { settled: false, iterations: 0, gradient: 0, reason },
  };
}

/** Log-likelihood at coefficients of zero, the offset kept. */
function nullLogLikelihood(strata: readonly Stratum[]): number {
  return conditionalPoint(strata, new Float64Array(0), 0, new Float64Array(0)).objective;
}

function fitStrata(setting: Setting, columns: readonly Float64Array[], trials: Float64Array): ConditionalFit {
  const { names, strata, counts } = setting;
  const nullLogLik = nullLogLikelihood(strata);
  const basis = orthogonalBasis(columns, trials);
  if ('column' in basis) {
    const blamed = [...basis.on, basis.column].map((j) => names[j]!);
    return unfitted(setting, 'alike-within-strata', blamed, [nullLogLik, nullLogLik]);
  }
  const { p, rows } = basis;
  const end = climb((gamma) => conditionalPoint(strata, rows, p, gamma), new Float64Array(p), p);
  const factor = end === null ? null : cholesky(end.point.curvature, p);
  const blamed =
    end?.convergence.settled && factor !== null && end.point.reach < 12
      ? []
      : separatingWithin(strata, basis);
  const logLik = end === null ? nullLogLik : end.point.objective;
  if (blamed.length > 0) {
    return unfitted(
      setting,
      'separated',
      blamed.map((j) => names[j]!),
      [nullLogLik, logLik],
    );
  }
  if (end === null || factor === null || !end.convergence.settled) {
    return unfitted(setting, end?.convergence.reason ?? 'singular-information', [], [nullLogLik, logLik]);
  }
  const estimates = columnCoefficients(basis, end.point.gamma);
  const covariance = columnCovariance(basis, invertCholesky(factor, p));
  const terms = names.map((term, j) => ({
    term,
    estimate: estimates[j]!,
    se: Math.sqrt(covariance[j * p + j]!),
  }));
  return { terms, covariance, logLik, nullLogLik, ...counts, blamed: [], convergence: end.convergence };
}

/**
 * Conditional logistic regression, exact within strata.
 *
 * Answers how a column changes the odds within strata (pairs of parents, matched sets), whatever the strata
 * themselves are like: their own level is conditioned away with their number of successes, so only strata with both
 * outcomes tell anything, and a column that is constant within strata cannot be estimated. Not for predictions:
 * there is no intercept.
 *
 * The denominator, a sum over all ways to place the successes of a stratum, is computed by recursion, for strata of
 * hundreds of trials too. Where the strata cannot give the estimates, terms are null and `convergence.reason` is
 * `no-informative-strata`, `alike-within-strata` (a column, or a combination of columns, does not vary within any) or
 * `separated` (the estimate is infinite); `waldIntervals` carries it as `because`.
 *
 * @param spec rows of successes and trials, columns (an intercept is left out), the strata among the groups
 * @param options `strata`, a group's name
 * @returns a finished fit; `waldIntervals` makes its ranges
 * @throws RangeError when the design breaks the rules of `DesignSpec`, has no column, or `strata` is none of its groups
 * @source Breslow & Day (1980) Statistical Methods in Cancer Research I, chapter 7; Gail, Lubin & Rubinstein (1981)
 *   Biometrika 68, 703–707 (recursion)
 * @example const pair = ['a', 'a', 'b', 'b', 'c', 'c'];
 * const columns = { stored: [0, 1, 0, 1, 0, 1] };
 * conditionalLogistic({ successes: [5, 2, 6, 4, 1, 2], trials: [6, 6, 7, 7, 3, 5], columns, groups: { pair } }, { strata: 'pair' }).terms[0].estimate // -1.18179...
 */
export function conditionalLogistic(
  spec: DesignSpec,
  { strata: name }: ConditionalOptions = {},
): ConditionalFit {
  const design = designOf({ ...spec, intercept: false }, 'conditionalLogistic');
  if (design.names.length === 0) {
    throw new RangeError('conditionalLogistic: columns must hold at least one column, got none');
  }
  const factor = factorOf(design, name);
  const { strata, rows } = strataOf(design, factor);
  const counts = { strata: factor.levels.length, informativeStrata: strata.length };
  const setting = { names: design.names, strata, counts };
  if (strata.length === 0) return unfitted(setting, 'no-informative-strata', [], [0, 0]);
  const trials = Float64Array.from(rows, (i) => design.trials[i]!);
  return fitStrata(setting, withinStrata(design, strata, rows), trials);
}
