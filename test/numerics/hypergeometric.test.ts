import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  hypergeometricCdf,
  hypergeometricDensity,
  hypergeometricQuantile,
} from '../../lib/numerics/hypergeometric.ts';
import { pairCases, pairOf } from '../proportions/two-proportion-cases.ts';
import { checkReference } from './distribution-cases.ts';

describe('hypergeometric distribution', () => {
  it('has the reference probabilities', () => {
    expect(checkReference('dhyper', ({ x, m, n, k }) => hypergeometricDensity(x!, m!, n!, k!))).toBe(2);
    const log = ({ x, m, n, k }: Record<string, number>) =>
      hypergeometricDensity(x!, m!, n!, k!, { log: true });
    expect(checkReference('dhyper_log', log)).toBe(2);
  });

  it('has the reference tails', () => {
    expect(checkReference('phyper', ({ x, m, n, k }, tail) => hypergeometricCdf(x!, m!, n!, k!, tail))).toBe(
      4,
    );
  });

  it('has the reference quantiles', () => {
    const call = ({ q, m, n, k }: Record<string, number>, tail: { tail?: 'lower' | 'upper' }) =>
      hypergeometricQuantile(q!, m!, n!, k!, tail);
    expect(checkReference('qhyper', call)).toBe(2);
  });

  it('finds the quantile of a far upper tail', () => {
    // R 4.2.2: phyper(27:28, 60, 3000, 170, lower.tail = FALSE) = 1.794e-20, 9.794e-22
    expect(hypergeometricQuantile(1e-20, 60, 3000, 170, { tail: 'upper' })).toBe(28);
  });

  it('is 1 or 0, not 0 or 1, where its terms underflow', () => {
    expect(hypergeometricCdf(100, 50_000, 50_000, 50_000)).toBe(0);
    expect(hypergeometricCdf(100, 50_000, 50_000, 50_000, { tail: 'upper' })).toBe(1);
    expect(hypergeometricCdf(49_900, 50_000, 50_000, 50_000)).toBe(1);
  });

  it('does not mind which margin is called marked and which drawn', () => {
    fc.assert(
      fc.property(fc.nat(40), fc.nat(40), fc.nat(80), fc.nat(40), (m, n, draw, x) => {
        const k = Math.min(draw, m + n);
        const here = hypergeometricDensity(x, m, n, k);
        expect(Math.abs(here - hypergeometricDensity(x, k, m + n - k, m))).toBeLessThanOrEqual(1e-12 * here);
      }),
    );
  });

  it('is 0 where a count cannot be drawn', () => {
    expect([
      hypergeometricDensity(0, 5, 2, 4),
      hypergeometricDensity(1.5, 5, 2, 4),
      hypergeometricDensity(0, 0, 0, 0),
    ]).toEqual([0, 0, 1]);
    expect([hypergeometricCdf(1, 5, 2, 4), hypergeometricCdf(4, 5, 2, 4)]).toEqual([0, 1]);
  });

  it('refuses to draw more than there are', () => {
    expect(() => hypergeometricCdf(1, 2, 3, 6)).toThrow(
      'hypergeometricCdf: drawn must be at most marked + unmarked (5), got 6',
    );
    expect(() => hypergeometricDensity(1, -2, 3, 1)).toThrow('hypergeometricDensity: marked');
    expect(() => hypergeometricQuantile(3, 2, 3, 1)).toThrow('hypergeometricQuantile: p');
  });
});

describe('hypergeometricDensity of the observed table', () => {
  it('is the probability that the cases of two proportions state', () => {
    // test/reference/b_two_proportions.json: exact rational arithmetic.
    // Not every set of cases states it.
    const stated = pairCases.filter(({ expected }) => 'prob_observed' in (expected.fisher as object));
    expect(stated.length).toBeGreaterThan(20);
    for (const reference of stated) {
      const { x1, n1, x2, n2 } = pairOf(reference);
      const { prob_observed } = reference.expected.fisher as { prob_observed: number };
      const density = hypergeometricDensity(x1, x1 + x2, n1 + n2 - x1 - x2, n1);
      expect(Math.abs(density / prob_observed - 1)).toBeLessThan(1e-12);
      const { p1, p2 } = reference.expected;
      expect([x1 / n1, x2 / n2]).toEqual([p1, p2]);
    }
  });
});
