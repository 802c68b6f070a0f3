/** Overdispersion of grouped counts: quasi-binomial standard errors and tests. */

import { betaCdf } from '../numerics/beta.ts';
import { studentCdf, studentQuantile } from '../numerics/student.ts';
import { checkLevel, type Estimate, type LevelOption, unknown } from '../proportions/interval.ts';
import type { Fit } from './fit.ts';
import { type DropOption, likelihoodRatio } from './profile.ts';
import { unsettledBecause } from './terms.ts';

/** A coefficient with the standard error that the dispersion widens; `statistic` is Student's t. */
export interface QuasiTerm extends Estimate {
  readonly term: string;
  readonly se: number | null;
  readonly statistic: number | null;
  readonly p: number | null;
}

/** How much more the rows vary than a binomial; null where no row is left over to tell. */
export interface Dispersion {
  /** Pearson's chi-square. */
  readonly pearson: number;
  /** Rows less coefficients. */
  readonly df: number;
  /** pearson / df, the dispersion of a quasi-binomial; about 1 for a binomial. */
  readonly ofPearson: number | null;
  /** deviance / df: only for rows with many trials. */
  readonly ofDeviance: number | null;
}

/**
 * Dispersion of a fit, over its rows as given.
 *
 * Answers whether counts vary more between rows than the model allows. Rows of single flowers cannot tell: the rows
 * must be groups (plates, mornings) of several trials.
 *
 * @param fit a fit of `logistic`
 * @source McCullagh & Nelder (1989) Generalized Linear Models, section 4.5
 * @example dispersion(fit).ofPearson // 0.43915...
 */
export function dispersion({ design, fitted, deviance, df: p }: Fit): Dispersion {
  let pearson = 0;
  for (let i = 0; i < design.n; i += 1) {
    const expected = design.trials[i]! * fitted[i]!;
    const excess = design.successes[i]! - expected;
    if (excess !== 0) pearson += (excess * excess) / (expected * (1 - fitted[i]!));
  }
  const df = design.n - p;
  return {
    pearson,
    df,
    ofPearson: df > 0 ? pearson / df : null,
    ofDeviance: df > 0 ? deviance / df : null,
  };
}

/** Quasi-binomial terms with the dispersion they use. */
export interface QuasiBinomial {
  readonly dispersion: Dispersion;
  readonly terms: readonly QuasiTerm[];
}

/**
 * Quasi-binomial intervals and tests: standard errors times the root of Pearson's dispersion, Student's t.
 *
 * Answers what `waldIntervals` does, when rows of several trials vary more than a binomial.
 *
 * @param fit a fit of `logistic`, its rows groups of several trials
 * @param options `level`, a proportion, 0.95 by default
 * @returns terms; null because `no-residual-rows` where there are no more rows than coefficients
 * @throws RangeError when `level` is not between 0 and 1
 * @source McCullagh & Nelder (1989) Generalized Linear Models, section 4.5
 * @example quasiBinomial(fit).terms[1].se // 0.44569...
 */
export function quasiBinomial(fit: Fit, { level = 0.95 }: LevelOption = {}): QuasiBinomial {
  checkLevel('quasiBinomial', level);
  const spread = dispersion(fit);
  const { df, ofPearson } = spread;
  const because = unsettledBecause(fit) ?? (ofPearson === null ? 'no-residual-rows' : null);
  const terms = fit.terms.map(({ term, estimate, se: model }): QuasiTerm => {
    if (because !== null || ofPearson === null) {
      return { term, se: null, statistic: null, p: null, ...unknown(because ?? 'no-residual-rows') };
    }
    const se = model * Math.sqrt(ofPearson);
    const reach = studentQuantile((1 - level) / 2, df, { tail: 'upper' }) * se;
    const p = Math.min(1, 2 * studentCdf(Math.abs(estimate / se), df, { tail: 'upper' }));
    return {
      term,
      estimate,
      se,
      lower: estimate - reach,
      upper: estimate + reach,
      statistic: estimate / se,
      p,
    };
  });
  return { dispersion: spread, terms };
}

/** An F test; all null, with `because`, where no row is left over. */
export interface FTest {
  readonly statistic: number | null;
  readonly df: number;
  readonly residualDf: number;
  readonly p: number | null;
  readonly because?: string;
}

/** P(F > f) from the beta distribution. */
function fUpperTail(f: number, df1: number, df2: number): number {
  return betaCdf(df2 / (df2 + df1 * f), df2 / 2, df1 / 2);
}

/**
 * Quasi-binomial F test that the coefficients of some columns are all zero: the fall of the deviance a column, over
 * Pearson's dispersion.
 *
 * Answers what `likelihoodRatio` does, when rows of several trials vary more than a binomial.
 *
 * @param fit a maximum-likelihood fit of `logistic`, its rows groups of several trials
 * @param options `drop`, names of columns
 * @throws RangeError when `drop` is empty or names a column that the fit does not have
 * @source McCullagh & Nelder (1989) Generalized Linear Models, section 4.5; R's `anova(test = "F")`
 * @example quasiTest(fit, { drop: ['stored', 'ageDays'] }).p // 0.00077...
 */
export function quasiTest(fit: Fit, { drop }: DropOption): FTest {
  const { statistic: fall, df } = likelihoodRatio(fit, { drop });
  const { ofPearson, df: residualDf } = dispersion(fit);
  const because = unsettledBecause(fit) ?? (ofPearson === null ? 'no-residual-rows' : null);
  if (because !== null || ofPearson === null || fall === null) {
    return { statistic: null, df, residualDf, p: null, because: because ?? 'no-residual-rows' };
  }
  const statistic = fall / df / ofPearson;
  return { statistic, df, residualDf, p: fUpperTail(statistic, df, residualDf) };
}
