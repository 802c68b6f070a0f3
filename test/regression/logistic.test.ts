import { describe, expect, it } from 'vitest';
import type { Link } from '../../lib/regression/fit.ts';
import { logistic } from '../../lib/regression/logistic.ts';
import {
  byTerm,
  expectReference,
  formulaDesign,
  type Levels,
  readCases,
  readTable,
} from './reference-cases.ts';

describe('logistic by maximum likelihood', () => {
  // test/reference/c_glm.json: R 4.2.2 glm polished, agreeing with a 50-digit Newton iteration.
  for (const reference of readCases('c_glm.json')) {
    it(`agrees with R's glm on ${reference.id}`, () => {
      const { input, expected } = reference;
      const { formula, levels } = input.design as { formula: string; levels: Levels };
      const link = input.link as Link;
      const fit = logistic(formulaDesign(readTable(input.data as string), formula, levels), { link });
      const p = fit.terms.length;
      expect(fit.convergence.settled).toBe(true);
      expect(fit.separated).toBe(false);
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
      const rows = fit.terms.map((_, j) => [...fit.covariance.slice(j * p, (j + 1) * p)]);
      expectReference(reference, 'vcov', rows, expected.vcov);
      expectReference(reference, 'loglik', fit.logLik, expected.loglik);
      expectReference(reference, 'deviance', fit.deviance, expected.deviance);
      expectReference(reference, 'fitted_first10', fit.fitted, expected.fitted_first10);
    });
  }
});

describe("logistic with Firth's penalty", () => {
  // test/reference/d_firth.json: own R code, brglm2 and logistf 1.26.1 agreeing to 1e-13.
  const separating = new Map([
    ['d-endometrial', ['NV']],
    ['d-endometrial-NV', ['NV']],
    ['d-lizards', []],
    ['d-2x2-0-9-5-6', ['groupb']],
    ['d-2x2-0-4-4-0', ['groupb']],
    ['d-2x2-3-0-2-5', ['groupb']],
    ['d-2x2-0-1-1-0', ['groupb']],
    ['d-2x2-0-9-0-7', ['(Intercept)']],
    ['d-season-separated-father', ['fatherF']],
    ['d-birthwt', []],
    ['d-perfect-continuous', ['x']],
    ['d-all-zero-9', ['(Intercept)']],
  ]);
  for (const reference of readCases('d_firth.json')) {
    it(`agrees with brglm2 and logistf on ${reference.id}, and names what separates`, () => {
      const { input, expected } = reference;
      const { levels } = input.design as { levels: Levels };
      const design = formulaDesign(readTable(input.data as string), input.formula as string, levels);
      const fit = logistic(design, { method: 'firth' });
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
      expectReference(reference, 'penalized_loglik', fit.penalisedLogLik, expected.penalized_loglik);
      expectReference(reference, 'fitted_first10', fit.fitted, expected.fitted_first10);
      // Read off the tables by hand: the cells that hold one outcome only.
      expect(fit.separatedBy).toEqual(separating.get(reference.id));
      expect(fit.separated).toBe(fit.separatedBy.length > 0);
    });
  }
});
