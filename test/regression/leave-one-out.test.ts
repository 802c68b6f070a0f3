import { describe, expect, it } from 'vitest';
import { auc } from '../../lib/regression/auc.ts';
import { crossValidate, leaveOneOut } from '../../lib/regression/leave-one-out.ts';
import { logistic } from '../../lib/regression/logistic.ts';
import { expectReference, type Json } from './reference-cases.ts';
import { diagnosticCases, diagnosticFit } from './reference-diagnostics.ts';

describe('leaveOneOut', () => {
  // test/reference/i_diagnostics.json: refits in R 4.2.2.
  for (const reference of diagnosticCases) {
    it(`agrees with refits in R on ${reference.id}, for both methods`, () => {
      for (const [key, method] of [
        ['loo_ml', 'maximum-likelihood'],
        ['loo_firth', 'firth'],
      ] as const) {
        const wanted = reference.expected[key] as Record<string, Json>;
        const fit = diagnosticFit(reference, method);
        const { logScore, brier, probabilities } = leaveOneOut(fit);
        expectReference(reference, key, logScore, wanted.log_score_sum);
        expectReference(reference, key, brier, wanted.brier);
        expectReference(reference, key, probabilities, wanted.p_first10);
        if (wanted.auc === undefined) continue;
        const area = auc({ successes: fit.design.successes, scores: probabilities! }).estimate;
        expectReference(reference, key, area, wanted.auc);
      }
    });
  }

  it('joins the refits of equal flowers without changing the result', () => {
    const single = { successes: [1, 0, 1, 1, 0, 0, 1, 0], columns: { stored: [0, 0, 0, 0, 1, 1, 1, 1] } };
    const grouped = { successes: [3, 1], trials: [4, 4], columns: { stored: [0, 1] } };
    const [a, b] = [leaveOneOut(logistic(single)), leaveOneOut(logistic(grouped))];
    // By hand: without its one failure, fresh has 3 of 3, so maximum likelihood is infinite.
    expect(a).toEqual({ logScore: null, brier: null, probabilities: null, because: 'separated' });
    expect(b).toEqual(a);
    const [c, d] = [single, grouped].map((spec) => leaveOneOut(logistic(spec, { method: 'firth' })));
    // By hand, half a fruit and half a failure added: fruits of fresh are given 2.5 of 4, its failure 3.5 of 4.
    expect(c!.probabilities![0]).toBeCloseTo(2.5 / 4, 10);
    expect(c!.probabilities![1]).toBeCloseTo(3.5 / 4, 10);
    expect(c!.logScore).toBeCloseTo(2 * (3 * Math.log(2.5 / 4) + Math.log(0.5 / 4)), 10);
    expect(d!.logScore).toBeCloseTo(c!.logScore!, 10);
    expect(d!.brier).toBeCloseTo(c!.brier!, 10);
  });

  it('says when a flower is the only one of its kind', () => {
    const fit = logistic(
      { successes: [3, 1], trials: [9, 1], columns: { rare: [0, 1] } },
      { method: 'firth' },
    );
    expect(leaveOneOut(fit).because).toBe('row-alone');
  });
});

describe('crossValidate', () => {
  for (const reference of diagnosticCases) {
    const { fold, ...wanted } = reference.expected.five_fold_ml as {
      fold: readonly number[];
      log_score_sum: number;
      brier: number;
    };
    // R's glm gives certainties to two of nodal's folds, which are separated: its score of -2011 is no estimate.
    const separated = reference.id === 'i-nodal';
    it(`${separated ? 'refuses the separated folds' : 'agrees with R on the five folds'} of ${reference.id}`, () => {
      const { logScore, brier, because } = crossValidate(diagnosticFit(reference), { folds: fold });
      if (separated) {
        expect([logScore, brier, because]).toEqual([null, null, 'separated']);
        expect(crossValidate(diagnosticFit(reference, 'firth'), { folds: fold }).logScore).toBeLessThan(-20);
      } else {
        expectReference(reference, 'five_fold_ml', { log_score_sum: logScore, brier }, wanted);
      }
    });
  }

  it('refuses folds of another length, or a single one', () => {
    const fit = logistic({ successes: [3, 1], trials: [9, 4], columns: {} });
    expect(() => crossValidate(fit, { folds: [1] })).toThrow(RangeError);
    expect(() => crossValidate(fit, { folds: [1, 1] })).toThrow(RangeError);
  });
});
