import { describe, expect, it } from 'vitest';
import type { Link } from '../../lib/regression/fit.ts';
import { logistic } from '../../lib/regression/logistic.ts';
import { twoSidedP, twoSidedQuantile, waldIntervals } from '../../lib/regression/terms.ts';
import {
  byTerm,
  expectReference,
  formulaDesign,
  type Levels,
  readCases,
  readTable,
} from './reference-cases.ts';

describe('waldIntervals', () => {
  // test/reference/c_glm.json: R 4.2.2 summary(glm) and confint.default.
  for (const reference of readCases('c_glm.json')) {
    it(`agree with R on ${reference.id}`, () => {
      const { input, expected } = reference;
      const { formula, levels } = input.design as { formula: string; levels: Levels };
      const design = formulaDesign(readTable(input.data as string), formula, levels);
      const terms = waldIntervals(logistic(design, { link: input.link as Link }));
      const ends = { lower: byTerm(terms, (t) => t.lower), upper: byTerm(terms, (t) => t.upper) };
      expectReference(reference, 'wald_ci', ends, expected.wald_ci);
      expectReference(
        reference,
        'p_wald',
        byTerm(terms, (t) => t.p),
        expected.p_wald,
      );
    });
  }

  it('show nothing of a separated fit', () => {
    const fit = logistic({ successes: [0, 8], trials: [10, 10], columns: { stored: [1, 0] } });
    for (const term of waldIntervals(fit)) {
      expect(term).toMatchObject({
        estimate: null,
        se: null,
        lower: null,
        upper: null,
        p: null,
        because: 'separated',
      });
    }
  });

  it('refuse a level outside 0 and 1', () => {
    const fit = logistic({ successes: [2, 8], trials: [10, 10], columns: { stored: [1, 0] } });
    for (const level of [0, 1, -1, Number.NaN])
      expect(() => waldIntervals(fit, { level })).toThrow(RangeError);
  });
});

describe('twoSidedQuantile and twoSidedP', () => {
  it('belong together', () => {
    // 1.959963984540054: handbook value of the normal distribution.
    expect(twoSidedQuantile(0.95)).toBeCloseTo(1.959963984540054, 14);
    expect(twoSidedP(-1.959963984540054)).toBeCloseTo(0.05, 14);
    expect(twoSidedP(0)).toBe(1);
  });
});
