import { describe, expect, it } from 'vitest';
import { logistic } from '../../lib/regression/logistic.ts';
import { dispersion, quasiBinomial, quasiTest } from '../../lib/regression/overdispersion.ts';
import { byTerm, expectReference } from './reference-cases.ts';
import { diagnosticCase, diagnosticCases, diagnosticFit } from './reference-diagnostics.ts';

describe('quasiBinomial', () => {
  // test/reference/i_diagnostics.json: R 4.2.2 glm(family = quasibinomial).
  for (const reference of diagnosticCases) {
    it(`agrees with R on ${reference.id}`, () => {
      const { expected } = reference;
      const { dispersion: spread, terms } = quasiBinomial(diagnosticFit(reference));
      expectReference(reference, 'pearson_chisq', spread.pearson, expected.pearson_chisq);
      expectReference(reference, 'phi_pearson', spread.ofPearson, expected.phi_pearson);
      expectReference(reference, 'phi_deviance', spread.ofDeviance, expected.phi_deviance);
      expectReference(
        reference,
        'quasi_se',
        byTerm(terms, (t) => t.se),
        expected.quasi_se,
      );
      expectReference(
        reference,
        'quasi_t',
        byTerm(terms, (t) => t.statistic),
        expected.quasi_t,
      );
      expectReference(
        reference,
        'quasi_p',
        byTerm(terms, (t) => t.p),
        expected.quasi_p,
      );
    });
  }

  it('agrees with R on the Orobanche plates (Crowder 1978), whose dispersion is published as 1.862', () => {
    const reference = diagnosticCase('i-quasi-orobanche');
    const { expected } = reference;
    const fit = diagnosticFit(reference);
    const { dispersion: spread, terms } = quasiBinomial(fit);
    expectReference(
      reference,
      'coefficients',
      byTerm(terms, (t) => t.estimate),
      expected.coefficients,
    );
    expectReference(reference, 'phi', spread.ofPearson, expected.phi);
    expect(spread.ofPearson!.toFixed(3)).toBe('1.862');
    expectReference(
      reference,
      'se',
      byTerm(terms, (t) => t.se),
      expected.se,
    );
    expectReference(
      reference,
      't',
      byTerm(terms, (t) => t.statistic),
      expected.t,
    );
    expectReference(
      reference,
      'p',
      byTerm(terms, (t) => t.p),
      expected.p,
    );
    expectReference(reference, 'deviance', fit.deviance, expected.deviance);
    expect(spread.df).toBe(expected.df_residual);
    const sequential = expected.f_test_anova_pearson as unknown as { F: number[]; p: number[] };
    const test = quasiTest(fit, { drop: ['genO73:extractcucumber'] });
    expectReference(reference, 'f_test_anova_pearson', test.statistic, sequential.F[2]);
    expectReference(reference, 'f_test_anova_pearson', test.p, sequential.p[2]);
    const byDeviance = expected.f_test_drop1 as unknown as { F: number[] };
    const ratio = spread.ofPearson! / spread.ofDeviance!;
    expectReference(reference, 'f_test_drop1', test.statistic! * ratio, byDeviance.F[0]);
  });

  it('cannot tell dispersion where no row is left over', () => {
    const fit = logistic({ successes: [3, 5], trials: [9, 9], columns: { stored: [0, 1] } });
    expect(dispersion(fit)).toMatchObject({ df: 0, ofPearson: null, ofDeviance: null });
    expect(quasiBinomial(fit).terms[1]).toMatchObject({
      estimate: null,
      se: null,
      because: 'no-residual-rows',
    });
    expect(quasiTest(fit, { drop: ['stored'] })).toMatchObject({
      statistic: null,
      p: null,
      because: 'no-residual-rows',
    });
  });
});
