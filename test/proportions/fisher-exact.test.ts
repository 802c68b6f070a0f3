import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type FisherOption, fisherExact } from '../../lib/proportions/fisher-exact.ts';
import { expectReference, type Json, type ReferenceCase } from '../regression/reference-cases.ts';
import { pairCases, pairOf, withNulls } from './two-proportion-cases.ts';

const P_VALUES: Readonly<Record<string, Readonly<Record<string, FisherOption>>>> = {
  fisher: {
    p_two_sided: {},
    p_less: { alternative: 'less' },
    p_greater: { alternative: 'greater' },
    p_twice_min_one_sided: { twoSided: 'twice-smaller-tail' },
  },
  midp: {
    less: { alternative: 'less', midP: 'observed' },
    greater: { alternative: 'greater', midP: 'ties' },
    two_sided_twice_min: { twoSided: 'twice-smaller-tail', midP: 'observed' },
    two_sided_minlike_minus_half_observed: { midP: 'observed' },
    two_sided_minlike_minus_half_ties: { midP: 'ties' },
  },
};

function testOf(each: ReferenceCase, options: FisherOption = {}) {
  const { x1, n1, x2, n2, level } = pairOf(each);
  return fisherExact(x1, n1, x2, n2, { level, ...options });
}

describe('fisherExact', () => {
  it.each(Object.entries(P_VALUES))('has the reference p-values, %s', (key, variants) => {
    for (const each of pairCases) {
      const wanted = each.expected[key] as Record<string, Json>;
      for (const [name, options] of Object.entries(variants)) {
        expectReference(each, key, testOf(each, options).p, wanted[name]);
      }
    }
  });

  it('has the reference conditional odds ratio with its exact and mid-p intervals', () => {
    for (const each of pairCases) {
      const wanted = each.expected.conditional_or as Record<string, Json>;
      const [exact, mid] = [testOf(each).oddsRatio, testOf(each, { midP: 'observed' }).oddsRatio];
      expectReference(each, 'conditional_or', exact.estimate, withNulls(wanted.mle!));
      expectReference(each, 'conditional_or', mid.estimate, withNulls(wanted.mle!));
      if (exact.because === 'no-information') {
        expect(wanted).toEqual({ mle: 'NaN', exact_ci: [0, 'Infinity'], midp_ci: [0, 'Infinity'] });
        expect([exact.lower, exact.upper]).toEqual([null, null]);
      } else {
        expectReference(each, 'conditional_or', [exact.lower, exact.upper], withNulls(wanted.exact_ci!));
        expectReference(each, 'conditional_or', [mid.lower, mid.upper], withNulls(wanted.midp_ci!));
      }
    }
  });

  it('gives the published values of the lady who tasted tea', () => {
    // Agresti (1990) p. 61, as R's ?fisher.test prints it: p = 0.4857, one-sided p 0.2429, odds ratio
    // 6.408309 (which R finds with a loose tolerance, so that four decimals can be compared)
    const test = fisherExact(3, 4, 1, 4);
    expect(test.p).toBeCloseTo(0.4857, 4);
    expect(test.oddsRatio.estimate).toBeCloseTo(6.408309, 4);
    expect(fisherExact(3, 4, 1, 4, { alternative: 'greater' }).p).toBeCloseTo(0.2429, 4);
    expect([test.statistic, test.df]).toEqual([3, null]);
  });

  it('says why an odds ratio has no estimate', () => {
    expect(fisherExact(5, 56, 0, 29).oddsRatio).toMatchObject({
      estimate: null,
      upper: null,
      because: 'unbounded',
    });
    expect(fisherExact(0, 5, 0, 7).oddsRatio).toEqual({
      estimate: null,
      lower: null,
      upper: null,
      because: 'no-information',
    });
    expect(fisherExact(0, 9, 7, 12).oddsRatio).toMatchObject({ estimate: 0, lower: 0 });
  });

  it('agrees with a p-value from whole binomial coefficients', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 12 }),
        fc.integer({ min: 1, max: 12 }),
        fc.nat(12),
        fc.nat(12),
        (n1, n2, a, c) => {
          const [x1, x2] = [Math.min(a, n1), Math.min(c, n2)];
          const ways = (x: number) => choose(n1, x) * choose(n2, x1 + x2 - x);
          let [total, rarer] = [0n, 0n];
          for (let x = 0; x <= n1; x += 1) {
            total += ways(x);
            if (ways(x) <= ways(x1)) rarer += ways(x);
          }
          const exact = Number(rarer) / Number(total);
          expect(Math.abs(fisherExact(x1, n1, x2, n2).p - exact)).toBeLessThan(1e-12);
        },
      ),
    );
  });

  it('turns over with the order of the groups', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 30 }),
        fc.integer({ min: 1, max: 30 }),
        fc.nat(30),
        fc.nat(30),
        (n1, n2, a, c) => {
          const [x1, x2] = [Math.min(a, n1), Math.min(c, n2)];
          const [here, there] = [fisherExact(x1, n1, x2, n2), fisherExact(x2, n2, x1, n1)];
          expect(here.p).toBeCloseTo(there.p, 11);
          if (here.oddsRatio.lower && there.oddsRatio.upper) {
            expect(here.oddsRatio.lower * there.oddsRatio.upper).toBeCloseTo(1, 8);
          }
        },
      ),
    );
  });

  it('refuses counts, choices and levels that are none', () => {
    expect(() => fisherExact(5, 4, 1, 4)).toThrow('fisherExact: successes1');
    expect(() => fisherExact(1, 4, 1, 0)).toThrow('fisherExact: trials2');
    expect(() => fisherExact(1, 4, 1, 4, { level: 1 })).toThrow('fisherExact: level');
    expect(() => fisherExact(1, 4, 1, 4, { alternative: 'more' as 'less' })).toThrow(
      'fisherExact: alternative',
    );
    expect(() => fisherExact(1, 4, 1, 4, { midP: 'yes' as 'ties' })).toThrow('fisherExact: midP');
    expect(() => fisherExact(1, 4, 1, 4, { twoSided: '' as 'no-more-probable' })).toThrow(
      'fisherExact: twoSided',
    );
  });
});

/** Binomial coefficient, exactly; 0 outside of 0 to n. */
function choose(n: number, k: number): bigint {
  if (k < 0 || k > n) return 0n;
  let ways = 1n;
  for (let i = 1; i <= k; i += 1) ways = (ways * BigInt(n - k + i)) / BigInt(i);
  return ways;
}
