import { describe, expect, it } from 'vitest';
import { influence } from '../../lib/regression/influence.ts';
import { logistic } from '../../lib/regression/logistic.ts';
import { expectReference } from './reference-cases.ts';
import { diagnosticCases, diagnosticFit } from './reference-diagnostics.ts';

describe('influence', () => {
  // test/reference/i_diagnostics.json: R 4.2.2 hatvalues and cooks.distance.
  for (const reference of diagnosticCases) {
    it(`agrees with R on ${reference.id}`, () => {
      const { leverage, cooks } = influence(diagnosticFit(reference));
      const { expected } = reference;
      expectReference(
        reference,
        'hat_sum',
        leverage.reduce((sum, h) => sum + h, 0),
        expected.hat_sum,
      );
      expectReference(reference, 'max_hat', Math.max(...leverage), expected.max_hat);
      const largest = Math.max(...cooks.map((distance) => distance!));
      expectReference(reference, 'cooks_distance_max', largest, expected.cooks_distance_max);
    });
  }

  it('has no distance for a row that alone tells a column', () => {
    // A saturated model: every leverage is 1.
    const fit = logistic({ successes: [3, 5], trials: [9, 9], columns: { stored: [0, 1] } });
    expect(influence(fit).cooks).toEqual([null, null]);
  });
});
