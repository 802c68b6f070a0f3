import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  binomialCdf,
  binomialDensity,
  binomialQuantile,
  firstWhole,
  reaches,
} from '../../lib/numerics/binomial.ts';
import { checkReference } from './distribution-cases.ts';

describe('binomial distribution', () => {
  it('has the reference probabilities', () => {
    expect(checkReference('dbinom', ({ x, n, p }) => binomialDensity(x!, n!, p!))).toBe(2);
    expect(checkReference('dbinom_log', ({ x, n, p }) => binomialDensity(x!, n!, p!, { log: true }))).toBe(3);
  });

  it('has the reference tails', () => {
    expect(checkReference('pbinom', ({ x, n, p }, tail) => binomialCdf(x!, n!, p!, tail))).toBe(3);
  });

  it('has the reference quantiles', () => {
    expect(checkReference('qbinom', ({ q, n, p }, tail) => binomialQuantile(q!, n!, p!, tail))).toBe(2);
  });

  it('sums its probabilities to its tail', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.double({ min: 0, max: 1, noNaN: true }), (n, p) => {
        let sum = 0;
        for (let x = 0; x <= n; x += 1) {
          sum += binomialDensity(x, n, p);
          expect(Math.abs(binomialCdf(x, n, p) - sum)).toBeLessThan(1e-12);
        }
      }),
    );
  });

  it('is certain where p is 0 or 1, and where there is no trial', () => {
    expect([binomialDensity(0, 5, 0), binomialDensity(1, 5, 0), binomialDensity(5, 5, 1)]).toEqual([1, 0, 1]);
    expect([binomialCdf(0, 5, 0), binomialCdf(4, 5, 1), binomialCdf(5, 5, 1)]).toEqual([1, 0, 1]);
    expect([binomialDensity(0, 0, 0.3), binomialCdf(0, 0, 0.3), binomialQuantile(0.9, 0, 0.3)]).toEqual([
      1, 1, 0,
    ]);
  });

  it('is 0 between and outside of whole numbers', () => {
    expect([binomialDensity(1.5, 5, 0.5), binomialDensity(-1, 5, 0.5), binomialDensity(6, 5, 0.5)]).toEqual([
      0, 0, 0,
    ]);
    expect(binomialCdf(2.7, 5, 0.5)).toBe(binomialCdf(2, 5, 0.5));
    expect([binomialCdf(-1, 5, 0.5), binomialCdf(-1, 5, 0.5, { tail: 'upper' })]).toEqual([0, 1]);
  });

  it('refuses what is no count and no probability', () => {
    expect(() => binomialCdf(1, 2.5, 0.5)).toThrow(
      'binomialCdf: trials must be a whole number of at least 0, got 2.5',
    );
    expect(() => binomialDensity(1, 2, 1.5)).toThrow('binomialDensity: probability');
    expect(() => binomialQuantile(Number.NaN, 2, 0.5)).toThrow('binomialQuantile: p');
  });
});

describe('bisection over whole numbers', () => {
  it('finds the first that holds', () => {
    fc.assert(
      fc.property(fc.integer({ min: -50, max: 50 }), fc.nat(100), fc.nat(100), (lower, width, offset) => {
        const first = lower + Math.min(offset, width);
        expect(firstWhole(lower, lower + width, (x) => x >= first)).toBe(first);
      }),
    );
  });

  it('takes a tail that misses by rounding only', () => {
    expect(reaches(0.3, 0.3 - 1e-16, { tail: 'lower' })).toBe(true);
    expect(reaches(0.3, 0.3 - 1e-12, { tail: 'lower' })).toBe(false);
    expect(reaches(0.3, 0.3 + 1e-12, { tail: 'upper' })).toBe(false);
  });
});
