import { describe, expect, it } from 'vitest';
import { logistic } from '../../lib/regression/logistic.ts';
import { clusterRobust } from '../../lib/regression/robust.ts';
import { waldIntervals } from '../../lib/regression/terms.ts';
import { byTerm, expectReference, type Json } from './reference-cases.ts';
import { diagnosticCase, diagnosticFit } from './reference-diagnostics.ts';

describe('clusterRobust', () => {
  // test/reference/i_diagnostics.json: own R code and sandwich::vcovCL agreeing to 1.4e-13.
  const reference = diagnosticCase('i-season150');
  const fit = diagnosticFit(reference);
  const wanted = reference.expected.cluster_robust as Record<string, Json>;

  it('agrees with sandwich on mothers as clusters, under each adjustment', () => {
    for (const [key, adjustment] of [
      ['se_cr0', 'none'],
      ['se_g_over_g_minus_1', 'clusters'],
      ['se_stata_hc1', 'clusters-and-terms'],
    ] as const) {
      const robust = clusterRobust(fit, { cluster: 'mother', adjustment });
      expectReference(
        reference,
        'cluster_robust',
        byTerm(robust.terms, (t) => t.se),
        wanted[key],
      );
      expect(robust.clusters).toBe(wanted.n_clusters);
    }
    const { covariance } = clusterRobust(fit, { cluster: 'mother', adjustment: 'none' });
    const rows = [0, 1, 2, 3].map((j) => covariance.slice(4 * j, 4 * j + 4));
    expectReference(reference, 'cluster_robust', rows, wanted.vcov_cr0);
  });

  it('gives Wald intervals about the same estimates', () => {
    const [term] = waldIntervals(clusterRobust(fit, { cluster: 'mother' }));
    expect(term!.estimate).toBe(fit.terms[0]!.estimate);
    expect((term!.lower! + term!.upper!) / 2).toBeCloseTo(term!.estimate!, 12);
  });

  it('refuses a group that is not there or does not vary', () => {
    expect(() => clusterRobust(fit, { cluster: 'father' })).toThrow(
      /cluster must name one of the groups \(mother\)/,
    );
    const one = logistic({ successes: [1, 3], trials: [4, 4], columns: {}, groups: { mother: ['a', 'a'] } });
    expect(() => clusterRobust(one, { cluster: 'mother' })).toThrow(/at least two levels/);
  });
});
