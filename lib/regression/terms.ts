/** Wald intervals and tests of a fit's coefficients. */

import { normalCdf, normalQuantile } from '../numerics/normal.ts';
import { checkLevel, type Estimate, type LevelOption, unknown } from '../proportions/interval.ts';
import type { Convergence, Term } from './fit.ts';

/** A coefficient with its range; `se` and `p` (two-sided, of the coefficient being 0) are null where it is. */
export interface TermInterval extends Estimate {
  readonly term: string;
  readonly se: number | null;
  readonly p: number | null;
}

/** What a fit must tell for intervals of its terms; estimates may be null where it has not settled. */
export interface FittedTerms {
  readonly terms: readonly (Term | { readonly term: string; readonly estimate: null; readonly se: null })[];
  readonly convergence: Convergence;
}

const reasonsOfTheData = ['separated', 'no-informative-strata', 'alike-within-strata', 'logarithmic-limit'];

/**
 * Why the estimates of a fit must not be shown; null where they may: `separated`, for strata `no-informative-strata`
 * or `alike-within-strata`, for zero-truncated counts `logarithmic-limit`, and `not-settled` where the algorithm is at fault.
 */
export function unsettledBecause({ convergence }: { readonly convergence: Convergence }): string | null {
  if (convergence.settled) return null;
  return reasonsOfTheData.includes(convergence.reason) ? convergence.reason : 'not-settled';
}

/** Standard normal quantile of a two-sided range. */
export function twoSidedQuantile(level: number): number {
  return normalQuantile((1 - level) / 2, { tail: 'upper' });
}

/** Two-sided p-value of a standard normal statistic. */
export function twoSidedP(z: number): number {
  return Math.min(1, 2 * normalCdf(Math.abs(z), { tail: 'upper' }));
}

/**
 * Wald intervals: estimate ± z · standard error, with the two-sided p-value of z = estimate / se.
 *
 * Answers how far a coefficient is known where its likelihood is near quadratic. Not for few flowers or near
 * separation, where the standard error itself explodes: use `profileIntervals`.
 *
 * @param fit a fit; where it has not settled (`separated`, `not-settled`) every estimate is null
 * @param options `level`, a proportion, 0.95 by default
 * @returns one entry a term, in their order: estimate, `se`, ends and `p`, on the scale of the link
 * @throws RangeError when `level` is not between 0 and 1
 * @source McCullagh & Nelder (1989) Generalized Linear Models, section 4.4.3
 * @example waldIntervals(logistic({ successes: [2, 8], trials: [10, 10], columns: { stored: [1, 0] } }))[1].upper // -0.58128...
 */
export function waldIntervals(fit: FittedTerms, { level = 0.95 }: LevelOption = {}): readonly TermInterval[] {
  checkLevel('waldIntervals', level);
  const because = unsettledBecause(fit);
  const z = twoSidedQuantile(level);
  return fit.terms.map(({ term, estimate, se }) =>
    because === null && estimate !== null
      ? {
          term,
          estimate,
          se,
          lower: estimate - z * se,
          upper: estimate + z * se,
          p: twoSidedP(estimate / se),
        }
      : { term, se: null, p: null, ...unknown(because ?? 'not-settled') },
  );
}
