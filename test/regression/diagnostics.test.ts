import { describe, expect, it } from 'vitest';
import { brier, hosmerLemeshow, pseudoRSquared } from '../../lib/regression/diagnostics.ts';
import { logistic } from '../../lib/regression/logistic.ts';
import { expectReference, type Json } from './reference-cases.ts';
import { diagnosticCases, diagnosticFit } from './reference-diagnostics.ts';

describe('diagnostics of binary fits', () => {
  // test/reference/i_diagnostics.json: R 4.2.2, own code checked against packages.
  for (const reference of diagnosticCases) {
    const fit = diagnosticFit(reference);
    const { expected, input } = reference;

    it(`hosmerLemeshow agrees with R on ${reference.id}`, () => {
      const wanted = expected.hosmer_lemeshow as Record<string, Json>;
      const test = hosmerLemeshow(fit, { groups: input.hosmer_lemeshow_groups as number });
      const actual = {
        cutpoints: test.cutPoints,
        n: test.groups.map(({ trials }) => trials),
        observed: test.groups.map(({ observed }) => observed),
        expected: test.groups.map((group) => group.expected),
        statistic: test.statistic,
        df: test.df,
        p: test.p,
      };
      const { g_requested: _, groups, ...rest } = wanted;
      expect(test.groups.length).toBe(groups);
      expectReference(reference, 'hosmer_lemeshow', actual, rest);
    });

    it(`brier and pseudoRSquared agree with R on ${reference.id}`, () => {
      const { score, reference: baseline, skill } = brier(fit);
      expectReference(reference, 'brier', score, expected.brier);
      expectReference(reference, 'brier_reference', baseline, expected.brier_reference);
      expectReference(reference, 'brier_skill', skill, expected.brier_skill);
      expectReference(reference, 'log_score_apparent_sum', fit.logLik, expected.log_score_apparent_sum);
      const { mcFadden, coxSnell, nagelkerke, tjur } = pseudoRSquared(fit);
      expectReference(reference, 'r2_mcfadden', mcFadden, expected.r2_mcfadden);
      expectReference(reference, 'r2_cox_snell', coxSnell, expected.r2_cox_snell);
      expectReference(reference, 'r2_nagelkerke', nagelkerke, expected.r2_nagelkerke);
      expectReference(reference, 'r2_tjur', tjur, expected.r2_tjur);
    });
  }
});

describe('hosmerLemeshow', () => {
  it('does not depend on how rows are grouped', () => {
    const grouped = { successes: [2, 5, 9, 8], trials: [10, 10, 12, 9], probabilities: [0.2, 0.4, 0.7, 0.9] };
    const split = {
      successes: [2, 0, 5, 9, 8],
      trials: [4, 6, 10, 12, 9],
      probabilities: [0.2, 0.2, 0.4, 0.7, 0.9],
    };
    expect(hosmerLemeshow(split, { groups: 4 })).toEqual(hosmerLemeshow(grouped, { groups: 4 }));
  });

  it('says when the probabilities cannot be told apart', () => {
    const test = hosmerLemeshow({ successes: [1, 0, 1, 0], probabilities: [0.5, 0.5, 0.5, 0.5] });
    expect(test).toMatchObject({ statistic: null, df: null, p: null, because: 'too-few-groups' });
    expect(test.groups).toEqual([{ trials: 4, observed: 2, expected: 2 }]);
  });

  it('refuses to judge a separated fit, and impossible arguments', () => {
    const split = logistic({ successes: [0, 8], trials: [10, 10], columns: { stored: [1, 0] } });
    expect(hosmerLemeshow(split)).toMatchObject({ statistic: null, because: 'separated' });
    const rows = { successes: [1, 0], probabilities: [0.5, 0.5] };
    expect(() => hosmerLemeshow(rows, { groups: 2 })).toThrow(RangeError);
    expect(() => hosmerLemeshow({ ...rows, probabilities: [0.5, 1.5] })).toThrow(/from 0 to 1/);
    expect(() => hosmerLemeshow({ ...rows, successes: [1] })).toThrow(RangeError);
    expect(() => hosmerLemeshow({ ...rows, trials: [1, 0] })).toThrow(RangeError);
    expect(() => hosmerLemeshow({ ...rows, probabilities: [Number.NaN, 0.5] })).toThrow(RangeError);
  });
});

describe('brier and pseudoRSquared', () => {
  it('are exact on a small example', () => {
    // (0.2² + 0.4²) / 2, against a rate of 1/2 with 0.25.
    const { score, reference, skill } = brier({ successes: [1, 0], probabilities: [0.8, 0.4] });
    expect(score).toBeCloseTo(0.1, 15);
    expect(reference).toBe(0.25);
    expect(skill).toBeCloseTo(0.6, 15);
  });

  it('have no skill to show where every outcome is the same', () => {
    const rows = { successes: [1, 1], probabilities: [0.8, 0.4] };
    expect(brier(rows).skill).toBeNull();
    expect(pseudoRSquared(rows)).toEqual({ mcFadden: null, coxSnell: null, nagelkerke: null, tjur: null });
  });
});
