import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Interval, LevelOption } from '../../lib/proportions/interval.ts';
import { miettinenNurminen, newcombe } from '../../lib/proportions/two-sample.ts';
import { expectReference, type ReferenceCase } from '../regression/reference-cases.ts';
import { expectPublished, pairCases, pairOf } from './two-proportion-cases.ts';

type Method = (x1: number, n1: number, x2: number, n2: number, options: LevelOption) => Interval;

const METHODS: Readonly<Record<string, Method>> = {
  newcombe_method10: newcombe,
  newcombe_method11_cc: (x1, n1, x2, n2, options) =>
    newcombe(x1, n1, x2, n2, { ...options, continuity: true }),
  miettinen_nurminen: miettinenNurminen,
  mee_score_no_N_factor: (x1, n1, x2, n2, options) =>
    miettinenNurminen(x1, n1, x2, n2, { ...options, variance: 'mee' }),
};

function intervalOf(key: string, each: ReferenceCase): Interval {
  const { x1, n1, x2, n2, level } = pairOf(each);
  return METHODS[key]!(x1, n1, x2, n2, { level });
}

const pair = fc
  .tuple(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 60 }))
  .chain(([n1, n2]) =>
    fc.tuple(
      fc.integer({ min: 0, max: n1 }),
      fc.constant(n1),
      fc.integer({ min: 0, max: n2 }),
      fc.constant(n2),
    ),
  );

describe.each(Object.keys(METHODS))('difference of two proportions, %s', (key) => {
  const method = METHODS[key]!;

  it('has the reference ends', () => {
    expect(pairCases.length).toBe(21 + 34);
    for (const each of pairCases) {
      const { estimate, lower, upper } = intervalOf(key, each);
      expectReference(each, key, [lower, upper], each.expected[key]);
      expectReference(each, 'difference', estimate, each.expected.difference);
    }
  });

  it('has the published ends, to half a unit of their last digit', () => {
    const own = pairCases.filter(({ expected }) => key in ((expected.published as object | undefined) ?? {}));
    expect(own.length).toBeGreaterThan(0);
    for (const each of own) {
      const { lower, upper } = intervalOf(key, each);
      const printed = (each.expected.published as Record<string, number[]>)[key]!;
      expectPublished([lower, upper], printed, `${each.id} ${each.source}`);
    }
  });

  it('lies within -1 to 1 and holds its estimate', () => {
    fc.assert(
      fc.property(pair, ([x1, n1, x2, n2]) => {
        const { estimate, lower, upper } = method(x1, n1, x2, n2, {});
        expect(lower).toBeGreaterThanOrEqual(-1);
        expect(upper).toBeLessThanOrEqual(1);
        expect(lower).toBeLessThanOrEqual(estimate);
        expect(upper).toBeGreaterThanOrEqual(estimate);
      }),
    );
  });

  it('is nested in its level', () => {
    fc.assert(
      fc.property(pair, fc.double({ min: 0.5, max: 0.98, noNaN: true }), ([x1, n1, x2, n2], level) => {
        const [inner, outer] = [
          method(x1, n1, x2, n2, { level }),
          method(x1, n1, x2, n2, { level: level + 0.01 }),
        ];
        expect(outer.lower).toBeLessThanOrEqual(inner.lower + 1e-12);
        expect(outer.upper).toBeGreaterThanOrEqual(inner.upper - 1e-12);
      }),
    );
  });

  it('changes its sign with the order of the groups', () => {
    fc.assert(
      fc.property(pair, ([x1, n1, x2, n2]) => {
        const [here, there] = [method(x1, n1, x2, n2, {}), method(x2, n2, x1, n1, {})];
        expect(here.lower).toBeCloseTo(-there.upper, 10);
        expect(here.upper).toBeCloseTo(-there.lower, 10);
      }),
    );
  });
});

describe('miettinenNurminen', () => {
  it("holds, without the factor, the differences that Pearson's test at 0 does not reject", () => {
    fc.assert(
      fc.property(pair, ([x1, n1, x2, n2]) => {
        const m = x1 + x2;
        fc.pre(m > 0 && m < n1 + n2);
        // At difference 0 the restricted estimate is the pooled proportion: the score test is Pearson's.
        const pooled = m / (n1 + n2);
        const z = (x1 / n1 - x2 / n2) / Math.sqrt(pooled * (1 - pooled) * (1 / n1 + 1 / n2));
        fc.pre(Math.abs(Math.abs(z) - 1.959963984540054) > 1e-9);
        const { lower, upper } = miettinenNurminen(x1, n1, x2, n2, { variance: 'mee' });
        expect(lower <= 0 && upper >= 0).toBe(Math.abs(z) < 1.959963984540054);
      }),
    );
  });
});

describe.each(Object.entries({ newcombe, miettinenNurminen }))('%s', (name, method) => {
  it('refuses counts that are none, and levels outside 0 to 1', () => {
    expect(() => method(6, 5, 1, 5)).toThrow(
      `${name}: successes1 must be a whole number from 0 to trials1 (5), got 6`,
    );
    expect(() => method(1, 5, 1, 0)).toThrow(`${name}: trials2 must be a whole number of at least 1, got 0`);
    expect(() => method(1, 5, -1, 5)).toThrow(`${name}: successes2`);
    expect(() => method(1, 5, 0.5, 5)).toThrow(RangeError);
    expect(() => method(Number.NaN, 5, 1, 5)).toThrow(RangeError);
    expect(() => method('1' as unknown as number, 5, 1, 5)).toThrow(TypeError);
    for (const level of [0, 1, Number.NaN]) {
      expect(() => method(1, 5, 1, 5, { level })).toThrow(`${name}: level`);
    }
  });
});

describe('the variance of miettinenNurminen', () => {
  it('has two names only', () => {
    expect(() => miettinenNurminen(1, 5, 1, 5, { variance: 'other' as 'mee' })).toThrow(
      'miettinenNurminen: variance must be one of miettinen-nurminen, mee, got "other"',
    );
  });
});
