import { describe, expect, it } from 'vitest';
import { binomialTest, powerOneProportion } from '../../lib/proportions/binomial-test.ts';
import { expectReference, readCases } from '../regression/reference-cases.ts';

const cases = readCases('h_power.json').filter(({ input }) => 'p_null' in input);

describe('binomialTest', () => {
  it('has the reference p of every count', () => {
    expect(cases.length).toBe(2);
    for (const each of cases) {
      const { n, p_null } = each.input as { n: number; p_null: number };
      const p = Array.from({ length: n + 1 }, (_, x) => binomialTest(x, n, p_null).p);
      expectReference(each, 'p_two_sided_by_x', p, each.expected.p_two_sided_by_x);
    }
  });

  it('has one-sided p-values that hold the count itself in both', () => {
    // 2 of 3 at 1/2, by counting: P(X ≤ 2) = 7/8, P(X ≥ 2) = 4/8
    expect(binomialTest(2, 3, 0.5, { alternative: 'less' })).toEqual({
      statistic: 2,
      df: null,
      p: expect.closeTo(7 / 8, 14),
    });
    expect(binomialTest(2, 3, 0.5, { alternative: 'greater' }).p).toBeCloseTo(4 / 8, 14);
  });

  it('refuses counts, chances and alternatives that are none', () => {
    expect(() => binomialTest(4, 3, 0.5)).toThrow('binomialTest: successes');
    expect(() => binomialTest(1, 3, 0)).toThrow(
      'binomialTest: probability must be a number between 0 and 1, got 0',
    );
    expect(() => binomialTest(1, 3, 0.5, { alternative: 'more' as 'less' })).toThrow(
      'binomialTest: alternative',
    );
  });
});

describe('powerOneProportion', () => {
  it('has the reference power', () => {
    for (const each of cases) {
      const { n, p_null, p_true, alpha } = each.input as Record<'n' | 'p_null' | 'p_true' | 'alpha', number>;
      const power = powerOneProportion(p_true, n, p_null, { level: 1 - alpha });
      expectReference(each, 'power_two_sided', power, each.expected.power_two_sided);
    }
  });

  it('is at most 1 - level where there is nothing to find', () => {
    for (const n of [5, 20, 33]) expect(powerOneProportion(0.3, n, 0.3)).toBeLessThanOrEqual(0.05);
  });

  it('refuses chances, trials and levels that are none', () => {
    expect(() => powerOneProportion(1.2, 5, 0.5)).toThrow('powerOneProportion: probability');
    expect(() => powerOneProportion(0.2, 0, 0.5)).toThrow('powerOneProportion: trials');
    expect(() => powerOneProportion(0.2, 5, 1)).toThrow('powerOneProportion: hypothesis');
    expect(() => powerOneProportion(0.2, 5, 0.5, { level: 1 })).toThrow('powerOneProportion: level');
  });
});
