import { describe, expect, it } from 'vitest';
import { conditionalLogistic } from '../../lib/regression/conditional-logistic.ts';
import { waldIntervals } from '../../lib/regression/terms.ts';
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

  // Matched pairs of one fresh and one stored flower, of which one took: so many the fresh one, so many the stored one.
  const matched = (freshOnly: number, storedOnly: number) => {
    const rows = Array.from({ length: freshOnly + storedOnly }, (_, pair) => ({
      pair,
      fresh: pair < freshOnly ? 1 : 0,
    }));
    return {
      successes: rows.flatMap(({ fresh }) => [fresh, 1 - fresh]),
      columns: { fresh: rows.flatMap(() => [1, 0]) },
      groups: { pair: rows.flatMap(({ pair }) => [pair, pair]) },
    };
  };

  it('gives the ratio of discordant pairs for matched pairs', () => {
    // Breslow & Day (1980), section 5.2: odds ratio b / c, variance of its logarithm 1/b + 1/c.
    const fit = conditionalLogistic(matched(12, 3));
    expect(fit.terms[0]!.estimate).toBeCloseTo(Math.log(4), 12);
    expect(fit.terms[0]!.se).toBeCloseTo(Math.sqrt(1 / 12 + 1 / 3), 12);
    expect(fit.nullLogLik).toBeCloseTo(15 * Math.log(0.5), 12);
  });

  it('does not depend on splitting rows, on their order, or on which outcome is called success', () => {
    const spec = {
      successes: [3, 1, 2, 5],
      trials: [5, 4, 6, 6],
      columns: { stored: [0, 1, 0, 1], age: [0, 3, 0, 9] },
      groups: { pair: ['a', 'a', 'b', 'b'] },
    };
    const split = {
      successes: [5, 2, 1, 0, 3],
      trials: [6, 6, 1, 3, 5],
      columns: { stored: [1, 0, 1, 1, 0], age: [9, 0, 3, 3, 0] },
      groups: { pair: ['b', 'b', 'a', 'a', 'a'] },
    };
    const turned = { ...spec, successes: [2, 3, 4, 1] };
    const [a, b, c] = [spec, split, turned].map((given) => conditionalLogistic(given));
    [0, 1].forEach((j) => {
      expect(b!.terms[j]!.estimate).toBeCloseTo(a!.terms[j]!.estimate!, 10);
      expect(b!.terms[j]!.se).toBeCloseTo(a!.terms[j]!.se!, 10);
      expect(c!.terms[j]!.estimate).toBeCloseTo(-a!.terms[j]!.estimate!, 10);
      expect(c!.terms[j]!.se).toBeCloseTo(a!.terms[j]!.se!, 10);
    });
  });

  it('says when it is infinite', () => {
    const fit = conditionalLogistic(matched(12, 0), { strata: 'pair' });
    expect(fit).toMatchObject({ covariance: null, blamed: ['fresh'], informativeStrata: 12 });
    expect(fit.logLik).toBeCloseTo(0, 8);
    expect(waldIntervals(fit)[0]).toMatchObject({ estimate: null, lower: null, because: 'separated' });
  });

  it('says when the strata cannot tell', () => {
    const alike = {
      ...matched(4, 3),
      columns: { fresh: Array.from({ length: 14 }, (_, i) => Number(i < 7 && i > 13)) },
    };
    expect(waldIntervals(conditionalLogistic(alike))[0]!.because).toBe('alike-within-strata');
    const shared = {
      ...matched(4, 3),
      columns: { age: Array.from({ length: 14 }, (_, i) => Math.floor(i / 2) / 10) },
    };
    expect(conditionalLogistic(shared).blamed).toEqual(['age']);
    const none = { successes: [1, 1, 0], columns: { x: [1, 2, 3] }, groups: { pair: ['a', 'a', 'b'] } };
    expect(conditionalLogistic(none)).toMatchObject({ informativeStrata: 0, strata: 2, logLik: 0 });
    expect(waldIntervals(conditionalLogistic(none))[0]!.because).toBe('no-informative-strata');
  });

  it('refuses strata that are not there, and designs without a column', () => {
    const spec = matched(4, 3);
    expect(() => conditionalLogistic(spec, { strata: 'mother' })).toThrow(
      /strata must name one of the groups \(pair\)/,
    );
    expect(() => conditionalLogistic({ ...spec, groups: {} })).toThrow(RangeError);
    expect(() => conditionalLogistic({ ...spec, columns: {} })).toThrow(/at least one column/);
    expect(() => conditionalLogistic({ ...spec, successes: [1, 2] })).toThrow(RangeError);
  });
});
