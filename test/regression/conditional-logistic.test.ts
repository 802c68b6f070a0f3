import { describe, expect, it } from 'vitest';
import { conditionalLogistic } from '../../lib/regression/conditional-logistic.ts';
import { byTerm, expectReference, readCases } from './reference-cases.ts';
import { seasonDesign, seasonRows } from './reference-seasons.ts';

describe('conditionalLogistic', () => {
  // test/reference/k_seasons.json: survival::clogit, method = 'exact', R 4.2.2.
  for (const reference of readCases('k_seasons.json').filter(({ id }) => id.endsWith('-clogit-pair'))) {
    it(`agrees with survival::clogit on ${reference.id}`, () => {
      const rows = seasonRows(reference.input.data as string);
      const fit = conditionalLogistic(seasonDesign(rows, 'A'), { strata: 'pair' });
      const { expected } = reference;
      expect(fit.convergence.settled).toBe(true);
      expectReference(
        reference,
        'coefficients',
        byTerm(fit.terms, (t) => t.estimate),
        expected.coefficients,
      );
      expectReference(
        reference,
        'se',
        byTerm(fit.terms, (t) => t.se),
        expected.se,
      );
      expectReference(reference, 'loglik', fit.logLik, expected.loglik);
      expectReference(reference, 'loglik_null', fit.nullLogLik, expected.loglik_null);
      expect(fit.informativeStrata).toBe(expected.informative_pairs);
    });
  }
});
