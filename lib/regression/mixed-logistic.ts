/** Mixed logistic regression: crossed random intercepts by Laplace's approximation. */

import { columnsOf, type IndicatorSource } from './column-source.ts';
import { type Design, type DesignSpec, designOf, type Factor } from './design.ts';
import type { Convergence, Fit, Term } from './fit.ts';
import { conditionalCovariance, type GroupEffect, groupEffects } from './given-variances.ts';
import { joinRows } from './joined-rows.ts';
import type { MixedModel } from './laplace-gradient.ts';
import { type LaplaceOptimum, laplaceOptimum } from './laplace-optimum.ts';
import { logistic01 } from './latent-likelihood.ts';
import { fitDesign } from './logistic.ts';
import { logBinomialCoefficients } from './response.ts';

/** Options of `mixedLogistic`. */
export interface MixedLogisticOptions {
  /** Names of the groups that get a random intercept; all of `spec.groups` where left out. */
  readonly groups?: readonly string[];
}

/** One fixed coefficient. */
export interface MixedTerm extends Term {
  /** Standard error from the joint observed information over coefficients and standard deviations. */
  readonly se: number;
  /** Standard error were the variances known, from the weights at the mode. */
  readonly seGivenVariances: number;
}

/** Variance of the random intercepts of one group. */
export interface GroupVariance {
  readonly group: string;
  readonly levels: number;
  readonly variance: number;
  readonly sd: number;
  /** Standard error of `sd`; null where it is 0, on the edge of what it can be. */
  readonly sdSe: number | null;
}

/** A finished mixed fit. When `convergence.settled` is false nothing of it must be shown. */
export interface MixedFit {
  readonly method: 'laplace';
  readonly link: 'logit';
  readonly design: Design;
  readonly terms: readonly MixedTerm[];
  /** p coefficients, in the order of `design.names`. */
  readonly coefficients: Float64Array;
  /** p × p covariance of the coefficients, row by row, from the joint observed information. */
  readonly covariance: Float64Array;
  readonly variances: readonly GroupVariance[];
  /** Groups whose variance came out as 0. */
  readonly singular: readonly string[];
  /** Groups whose variance cannot be told, held at 0: see `mixedLogistic`. */
  readonly unidentified: readonly string[];
  /** Groups of which every level had one outcome only: their variance has no upper bound, whatever number stands there. */
  readonly unbounded: readonly string[];
  readonly effects: readonly GroupEffect[];
  /** Fitted probabilities, the conditional modes included, one a row. */
  readonly fitted: Float64Array;
  /** Laplace's approximation with the binomial coefficients. */
  readonly logLik: number;
  /** Number of coefficients and of variances, those that came out as 0 among them, those held at 0 not. */
  readonly df: number;
  readonly separated: boolean;
  readonly separatedBy: readonly string[];
  readonly convergence: Convergence;
}

/**
 * Mixed logistic regression (generalised linear mixed model): crossed random intercepts, maximum likelihood by
 * Laplace's approximation, no priors.
 *
 * Answers how the odds of a success change with the columns, and how much the levels of each group (seed parents,
 * pollen parents, pairs, mornings) differ beyond them. Not where a column goes along with a group, as frozen pollen
 * with hard pairs: random effects are taken to be independent of the columns, so give the group's mean of the column
 * as another column.
 *
 * With eta_i = offset_i + x_i′beta + sum over groups of u_g(level of row i), u_g ~ N(0, sd_g²). A label may be null:
 * that row gets no effect of the group. Laplace's approximation makes variances too small where levels have few
 * trials and outcomes are yes or no; effects shrink with them. Several maxima are possible on such data: two starts
 * are tried where a variance comes out as 0.
 *
 * A variance of 0 is an estimate like others (`singular`). A group with fewer than two levels, without a level of two
 * trials, or with the same levels as a group before it, is held at 0 (`unidentified`). Where the columns separate successes from failures, a constant outcome
 * among them, the likelihood has no maximum: `convergence` says so, `variances` and `effects` are empty. Where every
 * level of a group had one outcome only, the exact likelihood grows with the variance without end; Laplace's has a maximum
 * somewhere, often absurdly far out, as other software finds it too: `unbounded` names the group.
 *
 * @param spec n rows of successes and trials, p columns, groups; see `DesignSpec`
 * @param options `groups`, the names of those that get a random intercept
 * @returns a finished fit
 * @throws RangeError when counts, lengths or values break the rules of `DesignSpec`, when there is no group, one that
 *   is not there, or a column that is a linear combination of others
 * @source Bates, Mächler, Bolker & Walker (2015) Journal of Statistical Software 67(1); Laplace's approximation as in
 *   Breslow & Clayton (1993) Journal of the American Statistical Association 88, 9–25, equation 4, with the
 *   determinant's dependence on beta kept
 * @example mixedLogistic({ successes: [9, 8, 1, 0, 5, 4], trials: [9, 9, 9, 9, 9, 9], columns: {},
 *   groups: { plant: ['a', 'a', 'b', 'b', 'c', 'c'] } }).variances[0].sd // 2.27616...
 */
export function mixedLogistic(spec: DesignSpec, options: MixedLogisticOptions = {}): MixedFit {
  const design = withGroups(designOf(spec, 'mixedLogistic', 'keep'), options.groups);
  const fixed = fitDesign(design, 'maximum-likelihood', 'logit', 'mixedLogistic');
  if (!fixed.convergence.settled) return unsettled(design, fixed);
  const unidentified = design.groups.filter(
    (group, g) => !identified(group, design.trials) || repeats(group, design.groups.slice(0, g)),
  );
  const factors = design.groups.filter((group) => !unidentified.includes(group));
  const { model, rowOf } = joinedModel(design, factors);
  const optimum = laplaceOptimum(model, fixed);
  return assemble(design, factors, optimum, unidentified, rowOf);
}

/** The model on rows joined where columns and levels agree: flowers of one pair and one kind of pollen. */
function joinedModel(
  design: Design,
  factors: readonly Factor[],
): { readonly model: MixedModel; readonly rowOf: Int32Array } {
  // Code 0 is of no level here.
  const labels = factors.map(({ codes, levels }) => ({
    codes: codes.map((k) => k + 1),
    width: levels.length,
  }));
  const { n, successes, trials, offset, sources } = design;
  const joined = joinRows({ n, successes, trials, offset, sources: [...sources, ...labels] });
  const model = {
    successes: joined.successes,
    trials: joined.trials,
    offset: joined.offset,
    columns: columnsOf(joined.sources.slice(0, sources.length)),
    factors: factors.map(({ name, levels }, g) => ({
      name,
      codes: (joined.sources[sources.length + g] as IndicatorSource).codes.map((k) => k - 1),
      size: levels.length,
    })),
  };
  return { model, rowOf: joined.rowOf };
}

function withGroups(design: Design, names: readonly string[] | undefined): Design {
  const groups = (names ?? design.groups.map(({ name }) => name)).map((name) => {
    const group = design.groups.find((candidate) => candidate.name === name);
    if (group) return group;
    throw new RangeError(`mixedLogistic: groups must be names of groups of the design, got ${name}`);
  });
  if (groups.length === 0)
    throw new RangeError('mixedLogistic: groups must hold at least one group, got none');
  return { ...design, groups };
}

/** Whether a group's variance can be told from the coefficients: two levels, and one of them with two trials. */
function identified({ codes, levels }: Factor, trials: Float64Array): boolean {
  const counts = new Float64Array(levels.length);
  codes.forEach((code, i) => {
    if (code >= 0) counts[code]! += trials[i]!;
  });
  return levels.length >= 2 && counts.some((count) => count >= 2);
}

/** Whether a group is another one under new names. Codes go by order of appearance, so equal groups have equal ones. */
function repeats({ codes }: Factor, before: readonly Factor[]): boolean {
  return before.some((other) => codes.every((code, i) => code === other.codes[i]));
}

/** What is said where the fit without random effects has no maximum: neither has the one with them. */
function unsettled(design: Design, fixed: Fit): MixedFit {
  const { coefficients, covariance, fitted, logLik, separated, separatedBy, convergence } = fixed;
  return {
    method: 'laplace',
    link: 'logit',
    design,
    terms: fixed.terms.map((term) => ({ ...term, seGivenVariances: term.se })),
    coefficients,
    covariance,
    variances: [],
    singular: [],
    unidentified: [],
    unbounded: [],
    effects: [],
    fitted,
    logLik,
    df: fixed.df,
    separated,
    separatedBy,
    convergence,
  };
}

function assemble(
  design: Design,
  factors: readonly Factor[],
  optimum: LaplaceOptimum,
  unidentified: readonly Factor[],
  rowOf: Int32Array,
): MixedFit {
  const { surface, coefficients, sds, kept, convergence } = optimum;
  const p = coefficients.length;
  const keptSds = Float64Array.from(kept, (g) => sds[g]!);
  const { mode } = surface.slope(coefficients, keptSds);
  const size = p + kept.length;
  const covariance = new Float64Array(p * p);
  for (let j = 0; j < p; j += 1) {
    covariance.set(optimum.covariance.subarray(j * size, j * size + p), j * p);
  }
  const conditional = conditionalCovariance(surface, keptSds, mode);
  const keptFactors = kept.map((g) => factors[g]!);
  return {
    method: 'laplace',
    link: 'logit',
    design,
    terms: design.names.map((term, j) => ({
      term,
      estimate: coefficients[j]!,
      se: Math.sqrt(covariance[j * p + j]!),
      seGivenVariances: Math.sqrt(conditional[j * p + j]!),
    })),
    coefficients,
    covariance,
    variances: design.groups.map((group) => groupVariance(group, keptFactors, keptSds, optimum, p)),
    singular: factors.filter((_, g) => !kept.includes(g)).map(({ name }) => name),
    unidentified: unidentified.map(({ name }) => name),
    unbounded: factors.filter((group) => oneOutcomeEach(group, design)).map(({ name }) => name),
    effects: design.groups.flatMap((group) => groupEffects(group, keptFactors, keptSds, surface, mode)),
    fitted: Float64Array.from(rowOf, (row) => logistic01(surface.finder.work.eta[row]!)),
    logLik: optimum.value + logBinomialCoefficients(design),
    df: p + factors.length,
    separated: false,
    separatedBy: [],
    convergence,
  };
}

/** Whether the trials of each level all ended alike. */
function oneOutcomeEach({ codes }: Factor, { successes, trials }: Design): boolean {
  const [took, failed] = [new Set<number>(), new Set<number>()];
  for (const [row, code] of codes.entries()) {
    if (code < 0) continue;
    if (successes[row]! > 0) took.add(code);
    if (successes[row]! < trials[row]!) failed.add(code);
  }
  return [...took].every((code) => !failed.has(code));
}

function groupVariance(
  { name, levels }: Factor,
  kept: readonly Factor[],
  sds: Float64Array,
  { covariance }: LaplaceOptimum,
  p: number,
): GroupVariance {
  const k = kept.findIndex((factor) => factor.name === name);
  const sd = k < 0 ? 0 : sds[k]!;
  const place = (p + k) * (p + kept.length + 1);
  return {
    group: name,
    levels: levels.length,
    variance: sd * sd,
    sd,
    sdSe: k < 0 ? null : Math.sqrt(covariance[place]!),
  };
}
