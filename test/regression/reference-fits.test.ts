/** What the reference cases state beside coefficients: tests, information, null models, printed values. */

import { describe, expect, it } from 'vitest';
import type { Link } from '../../lib/regression/fit.ts';
import { logistic } from '../../lib/regression/logistic.ts';
import { negativeBinomial } from '../../lib/regression/negative-binomial.ts';
import { dispersion, quasiTest } from '../../lib/regression/overdispersion.ts';
import { likelihoodRatio } from '../../lib/regression/profile.ts';
import { logBinomialCoefficients } from '../../lib/regression/response.ts';
import { waldIntervals } from '../../lib/regression/terms.ts';
import {
  byTerm,
  expectReference,
  formulaDesign,
  type Json,
  type Levels,
  numbers,
  type ReferenceCase,
  readCases,
  readTable,
} from './reference-cases.ts';
import { namedColumns } from './reference-counts.ts';
import { seasonDesign, seasonRows } from './reference-seasons.ts';

const titled = (cases: readonly ReferenceCase[]) =>
  cases.map((reference) => [reference.id, reference] as const);

/** A printed value is right when the actual one is within half a unit of its last digit, or as many units as said. */
function expectPrinted(actual: number, printed: number, units = 0.5): void {
  const decimals = String(printed).split('.')[1]?.length ?? 0;
  expect(Math.abs(actual - printed), `${actual} printed as ${printed}`).toBeLessThanOrEqual(
    units * 10 ** -decimals * (1 + 1e-9),
  );
}

function allPrinted(actual: Iterable<number>, printed: Json | undefined, units?: number): void {
  if (printed === undefined) return;
  [...actual].forEach((value, i) => {
    expectPrinted(value, (printed as readonly number[])[i]!, units);
  });
}

const square = (matrix: Float64Array, p: number) =>
  Array.from({ length: p }, (_, j) => [...matrix.slice(j * p, (j + 1) * p)]);

/** The same design with all columns but the intercept left out; without an intercept the null model is a half. */
function nullDeviance(design: ReturnType<typeof formulaDesign>): number {
  if (design.intercept !== false) return logistic({ ...design, columns: {} }).deviance;
  const half = design.successes.length;
  const trials = design.trials!;
  let deviance = 0;
  for (let i = 0; i < half; i += 1) {
    for (const count of [design.successes[i]!, trials[i]! - design.successes[i]!]) {
      if (count > 0) deviance += 2 * count * Math.log((2 * count) / trials[i]!);
    }
  }
  return deviance;
}

describe('maximum-likelihood fits in full', () => {
  // test/reference/c_glm.json: R 4.2.2 glm polished; printed values as in the sources that the cases name.
  it.each(titled(readCases('c_glm.json')))('agree with R on %s', (_, reference) => {
    const { input, expected } = reference;
    const { formula, levels } = input.design as { formula: string; levels: Levels };
    const design = formulaDesign(readTable(input.data as string), formula, levels);
    const fit = logistic(design, { link: input.link as Link });
    const check = (key: string, actual: unknown) => expectReference(reference, key, actual, expected[key]);
    const n = fit.design.n;
    check(
      'z',
      byTerm(waldIntervals(fit), (t) => t.estimate! / t.se!),
    );
    check('null_deviance', nullDeviance(design));
    check('df_residual', n - fit.df);
    check('df_null', n - (design.intercept === false ? 0 : 1));
    check('bic', Math.log(n) * fit.df - 2 * fit.logLik);
    check('pearson_chisq', dispersion(fit).pearson);
    const drop = fit.design.names.filter((name) => name !== '(Intercept)');
    if (drop.length > 0) {
      const { statistic, df, p } = likelihoodRatio(fit, { drop });
      check('lr_overall', { lr: statistic, df, p });
    }
    const published = (expected.published ?? {}) as { readonly [key: string]: Json };
    allPrinted(fit.coefficients, published.coefficients);
    allPrinted(
      fit.terms.map(({ se }) => se),
      published.se,
      // glm's printed errors are those of its last step but one: menarche's 0.77068 is 0.770686 at the optimum.
      1,
    );
    const deviance = published.deviance ?? published.residual_deviance;
    if (deviance !== undefined) expectPrinted(fit.deviance, deviance as number);
  });
});

describe("Firth's fits in full", () => {
  // test/reference/d_firth.json: own R code, brglm2 and logistf agreeing; brglm2's printed endometrial fit.
  it.each(titled(readCases('d_firth.json')))('agree with R on %s', (_, reference) => {
    const { input, expected } = reference;
    const { levels } = input.design as { levels: Levels };
    const design = formulaDesign(readTable(input.data as string), input.formula as string, levels);
    const fit = logistic(design, { method: 'firth' });
    const check = (key: string, actual: unknown) => expectReference(reference, key, actual, expected[key]);
    const withoutConstants = fit.logLik - logBinomialCoefficients(fit.design);
    check('vcov', square(fit.covariance, fit.df));
    check('loglik_at_firth', withoutConstants);
    check('log_det_information', 2 * (fit.penalisedLogLik! - withoutConstants));
    const wald = waldIntervals(fit);
    check('wald_ci', { lower: byTerm(wald, (t) => t.lower), upper: byTerm(wald, (t) => t.upper) });
    check(
      'wald_p',
      byTerm(wald, (t) => t.p),
    );
    if (expected.intercept_only_model) {
      const alone = logistic({ ...design, columns: {} }, { method: 'firth' });
      check('intercept_only_model', {
        coefficient: alone.coefficients[0],
        penalized_loglik: alone.penalisedLogLik,
      });
    }
    const { lr_overall: overall } = expected as { lr_overall?: { penalized_loglik_null: number } };
    const drop = fit.design.names.filter((name) => name !== '(Intercept)');
    if (overall && drop.length > 0) {
      const { statistic } = likelihoodRatio(fit, { drop });
      expect(fit.penalisedLogLik! - statistic! / 2).toBeCloseTo(overall.penalized_loglik_null, 7);
    }
    const published = (expected.published ?? {}) as { readonly [key: string]: Json };
    allPrinted(fit.coefficients, published.coefficients);
    allPrinted(
      fit.terms.map(({ se }) => se),
      published.se,
    );
  });
});

describe('fits that other references are made from', () => {
  // test/reference/f_standardisation.json, i_diagnostics.json, k_seasons.json: R 4.2.2.
  it.each(titled(readCases('f_standardisation.json')))('agree with R on %s', (_, reference) => {
    const { formula, levels, fit: kind, data } = reference.input;
    const method = kind === 'firth' ? 'firth' : 'maximum-likelihood';
    const fit = logistic(formulaDesign(readTable(data as string), formula as string, levels as Levels), {
      method,
    });
    const { coefficients, vcov } = reference.expected;
    expectReference(
      reference,
      'coefficients',
      byTerm(fit.terms, (t) => t.estimate),
      coefficients,
    );
    expectReference(reference, 'vcov', square(fit.covariance, fit.df), vcov);
  });

  const seasons = readCases('k_seasons.json').filter(
    ({ id }) => /-glm-[AB]$/.test(id) && !id.includes('standardised'),
  );
  it.each(titled(seasons))('agree with R on %s', (_, reference) => {
    const design = seasonDesign(seasonRows(reference.input.data as string), reference.id.at(-1)!);
    const fit = logistic(design);
    const { vcov, null_deviance, aic } = reference.expected;
    expectReference(reference, 'vcov', square(fit.covariance, fit.df), vcov);
    expectReference(reference, 'null_deviance', nullDeviance(design), null_deviance);
    expectReference(reference, 'aic', 2 * (fit.df - fit.logLik), aic);
    expect(fit.design.names).toEqual(reference.expected.columns);
  });
});

describe('printed values of counts', () => {
  it('are those of the negative binomial fits of absent days (Venables & Ripley 2002, section 7.4)', () => {
    for (const reference of readCases('g_counts.json').filter(({ expected }) => 'published' in expected)) {
      const table = readTable(reference.input.data as string);
      const { columns, levels } = reference.input.design as { columns: string[]; levels: Levels };
      const fit = negativeBinomial({
        counts: numbers(table, 'Days'),
        columns: namedColumns(table, columns, levels),
      });
      const published = reference.expected.published as { theta: number; minus2loglik?: number };
      expectPrinted(fit.theta.estimate!, published.theta);
      if (published.minus2loglik !== undefined) expectPrinted(-2 * fit.logLik!, published.minus2loglik);
    }
  });
});

describe('the quasi-binomial F test of germination', () => {
  it("differs from R's drop1, which scales by the deviance, as stated", () => {
    const reference = readCases('i_diagnostics.json').find(({ id }) => id === 'i-quasi-orobanche')!;
    const { f_test_drop1: dropped, f_test_anova_pearson: anova } = reference.expected as unknown as Record<
      string,
      Record<string, readonly number[]>
    >;
    const { formula, levels } = reference.input as unknown as { formula: string; levels: Levels };
    const fit = logistic(formulaDesign(readTable(reference.input.data as string), formula, levels));
    const drop = fit.design.names.filter((name) => name.includes(':'));
    expect(quasiTest(fit, { drop }).statistic).toBeCloseTo(anova!.F!.at(-1)!, 8);
    expect(quasiTest(fit, { drop }).p).toBeCloseTo(anova!.p!.at(-1)!, 8);
    const { ofPearson, ofDeviance } = dispersion(fit);
    expect((quasiTest(fit, { drop }).statistic! * ofPearson!) / ofDeviance!).toBeCloseTo(dropped!.F![0]!, 8);
  });
});
