import { describe, expect, it } from 'vitest';
import { aic } from '../../lib/regression/aic.ts';
import type { Link } from '../../lib/regression/fit.ts';
import { correctIntercept } from '../../lib/regression/intercept-correction.ts';
import { logistic } from '../../lib/regression/logistic.ts';
import { negativeBinomial } from '../../lib/regression/negative-binomial.ts';
import {
  expectReference,
  formulaDesign,
  type Levels,
  numbers,
  readCases,
  readTable,
} from './reference-cases.ts';
import { namedColumns } from './reference-counts.ts';

describe('aic', () => {
  // test/reference/c_glm.json: R 4.2.2, AIC of glm.
  it.each(readCases('c_glm.json').map((reference) => [reference.id, reference] as const))(
    "agrees with R's AIC on %s",
    (_, reference) => {
      const { formula, levels } = reference.input.design as { formula: string; levels: Levels };
      const table = readTable(reference.input.data as string);
      const fit = logistic(formulaDesign(table, formula, levels), { link: reference.input.link as Link });
      expectReference(reference, 'aic', aic(fit).estimate, reference.expected.aic);
    },
  );

  // test/reference/g_counts.json: R 4.2.2, AIC of MASS::glm.nb; theta counts as a parameter.
  it.each([
    ['g_quine.csv', 'Days'],
    ['g_seeds120.csv', 'seeds'],
  ])("agrees with R's AIC of negative binomial fits of %s", (file, response) => {
    for (const reference of readCases('g_counts.json').filter(
      ({ input, expected }) => input.data === file && 'aic' in expected,
    )) {
      const table = readTable(file);
      const { columns, levels } = reference.input.design as { columns: string[]; levels: Levels };
      const fit = negativeBinomial({
        counts: numbers(table, response),
        columns: namedColumns(table, columns, levels),
      });
      expectReference(reference, 'aic', aic(fit).estimate, reference.expected.aic);
    }
  });

  it('is null where the fit is separated, and refused where the likelihood is not maximised', () => {
    const spec = { successes: [0, 5], trials: [9, 9], columns: { stored: [1, 0] } };
    expect(aic(logistic(spec))).toEqual({ estimate: null, because: 'separated' });
    const firth = logistic(spec, { method: 'firth' });
    expect(() => aic(firth)).toThrow(
      "aic: fit must be a maximum of the likelihood, got one with Firth's penalty",
    );
    expect(() => aic(correctIntercept(firth)!)).toThrow('got one with a corrected intercept');
  });
});
