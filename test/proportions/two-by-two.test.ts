import { describe, expect, it } from 'vitest';
import { oddsRatio, pearsonChiSquare, type Ratio, riskRatio } from '../../lib/proportions/two-by-two.ts';
import { expectReference, type Json } from '../regression/reference-cases.ts';
import { pairCases, pairOf, withNulls } from './two-proportion-cases.ts';

function named({ estimate, lower, upper, logSe }: Ratio, name: string): Record<string, unknown> {
  return { [name]: estimate, se_log: logSe, ci: [lower, upper] };
}

describe('oddsRatio', () => {
  it("has Woolf's reference interval where no count is 0, else none", () => {
    let without = 0;
    for (const each of pairCases) {
      const { x1, n1, x2, n2, level } = pairOf(each);
      const ratio = oddsRatio(x1, n1, x2, n2, { level });
      const wanted = each.expected.or_sample_woolf;
      if (wanted !== undefined) {
        expectReference(each, 'or_sample_woolf', named(ratio, 'or'), wanted);
      } else {
        without += 1;
        expect(ratio).toMatchObject({ lower: null, upper: null, logSe: null, because: 'zero-count' });
      }
    }
    expect(without).toBeGreaterThan(5);
  });

  it("has Haldane's reference interval with one half added to each count", () => {
    for (const each of pairCases) {
      const { x1, n1, x2, n2, level } = pairOf(each);
      const ratio = oddsRatio(x1, n1, x2, n2, { level, haldane: true });
      expectReference(each, 'or_haldane_plus_half', named(ratio, 'or'), each.expected.or_haldane_plus_half);
    }
  });

  it('is 0, or without bound, where a count is 0', () => {
    expect(oddsRatio(0, 9, 7, 12).estimate).toBe(0);
    expect(oddsRatio(7, 12, 0, 9).estimate).toBeNull();
    expect(oddsRatio(0, 9, 0, 12).estimate).toBeNull();
  });

  it('refuses counts and levels that are none', () => {
    expect(() => oddsRatio(5, 4, 1, 4)).toThrow('oddsRatio: successes1');
    expect(() => oddsRatio(1, 4, 1, 4, { level: 0 })).toThrow('oddsRatio: level');
  });
});

describe('riskRatio', () => {
  it("has Katz's reference interval where both groups have a success, else none", () => {
    let without = 0;
    for (const each of pairCases) {
      const { x1, n1, x2, n2, level } = pairOf(each);
      const ratio = riskRatio(x1, n1, x2, n2, { level });
      const wanted = each.expected.relative_risk_katz;
      if (wanted !== undefined) expectReference(each, 'relative_risk_katz', named(ratio, 'rr'), wanted);
      else {
        without += 1;
        const because = x1 === n1 && x2 === n2 ? 'no-failure' : 'zero-count';
        expect(ratio).toMatchObject({ lower: null, upper: null, logSe: null, because });
      }
    }
    expect(without).toBeGreaterThan(5);
  });

  it('is 0, or without bound, where a group has no success', () => {
    expect(riskRatio(0, 9, 7, 12).estimate).toBe(0);
    expect(riskRatio(7, 12, 0, 9).estimate).toBeNull();
  });

  it('claims no range of width 0 where nothing failed', () => {
    expect(riskRatio(9, 9, 12, 12)).toEqual({
      estimate: 1,
      lower: null,
      upper: null,
      logSe: null,
      because: 'no-failure',
    });
  });

  it('refuses counts and levels that are none', () => {
    expect(() => riskRatio(1, 4, 1, -4)).toThrow('riskRatio: trials2');
    expect(() => riskRatio(1, 4, 1, 4, { level: Number.NaN })).toThrow('riskRatio: level');
  });
});

describe('pearsonChiSquare', () => {
  it.each([
    ['chisq_pearson', false],
    ['chisq_yates', true],
  ])('has the reference statistic and p, %s', (key, continuity) => {
    for (const each of pairCases) {
      const { x1, n1, x2, n2 } = pairOf(each);
      const { statistic, p } = pearsonChiSquare(x1, n1, x2, n2, { continuity });
      expectReference(each, key, { statistic, p }, withNulls(each.expected[key] as Json));
    }
  });

  it('has 1 degree of freedom, or none where nothing varies', () => {
    expect(pearsonChiSquare(3, 10, 5, 10).df).toBe(1);
    const none = { statistic: null, df: null, p: null, because: 'no-variation' };
    expect(pearsonChiSquare(0, 10, 0, 20)).toEqual(none);
    expect(pearsonChiSquare(10, 10, 20, 20)).toEqual(none);
  });

  it('refuses counts that are none', () => {
    expect(() => pearsonChiSquare(1, 4, 7, 4)).toThrow('pearsonChiSquare: successes2');
  });
});
