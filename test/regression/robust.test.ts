import { describe, expect, it } from 'vitest';
import { logistic } from '../../lib/regression/logistic.ts';
import { clusterRobust } from '../../lib/regression/robust.ts';
import { waldIntervals } from '../../lib/regression/terms.ts';
import { byTerm, expectReference, type Json, numbers, readTable, texts } from './reference-cases.ts';
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

  it('is, by morning, the sandwich of numerical derivatives of each morning’s log-likelihood', () => {
    // Flowers of three invented seasons (test/reference/seven-effects.csv); Liang & Zeger (1986), without a correction.
    const table = readTable('seven-effects.csv');
    const [fruit, stored, mornings] = [
      numbers(table, 'fruit'),
      numbers(table, 'stored'),
      texts(table, 'morning'),
    ];
    const season = logistic({
      successes: fruit,
      trials: fruit.map(() => 1),
      columns: { stored },
      groups: { morning: mornings },
    });
    const logLikOf = (morning: string | null, beta: readonly number[]): number =>
      fruit.reduce((sum, y, i) => {
        if (morning !== null && mornings[i] !== morning) return sum;
        const eta = beta[0]! + beta[1]! * stored[i]!;
        return sum + y * eta - Math.log(1 + Math.exp(eta));
      }, 0);
    const at = [...season.coefficients];
    const moved = (change: readonly number[]) => at.map((value, j) => value + change[j]!);
    const [h, unit] = [1e-4, [[1e-4, 0], [0, 1e-4]]]; // biome-ignore format: a table
    const scores = [...new Set(mornings)].map((morning) =>
      unit.map(
        (step) => (logLikOf(morning, moved(step)) - logLikOf(morning, moved(step.map((x) => -x)))) / (2 * h),
      ),
    );
    const curvature = unit.map((one) =>
      unit.map((other) => {
        const value = (a: number, b: number) =>
          logLikOf(null, moved(one.map((x, j) => a * x + b * other[j]!)));
        return -(value(1, 1) - value(1, -1) - value(-1, 1) + value(-1, -1)) / (4 * h * h);
      }),
    );
    const [[a, b], [, d]] = curvature as [[number, number], [number, number]];
    const inverse = [[d, -b], [-b, a]].map((row) => row.map((x) => x / (a * d - b * b))); // biome-ignore format: a table
    const wanted = [0, 1].map((j) =>
      Math.sqrt(
        scores.reduce((sum, [s0, s1]) => sum + (inverse[j]![0]! * s0! + inverse[j]![1]! * s1!) ** 2, 0),
      ),
    );
    const robust = clusterRobust(season, { cluster: 'morning', adjustment: 'none' });
    expect(robust.clusters).toBe(new Set(mornings).size);
    robust.terms.forEach(({ se }, j) => {
      expect(Math.abs(se / wanted[j]! - 1)).toBeLessThan(1e-5);
    });
    // Mornings differ there: taking flowers as independent claims too much of the intercept.
    expect(robust.terms[0]!.se).toBeGreaterThan(1.05 * season.terms[0]!.se);
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
