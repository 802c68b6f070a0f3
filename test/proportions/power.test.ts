import { describe, expect, it } from 'vitest';
import { fisherExact } from '../../lib/proportions/fisher-exact.ts';
import { type PowerOption, powerTwoProportions } from '../../lib/proportions/power.ts';
import { expectReference, readCases } from '../regression/reference-cases.ts';

const cases = readCases('h_power.json');
const equal = cases.filter(({ id }) => id.startsWith('h-power'));
const unequal = cases.filter(({ id }) => id.startsWith('h-unequal'));

interface Sizes {
  readonly p1: number;
  readonly p2: number;
  readonly n_per_group: number;
  readonly alpha: number;
}

const METHODS: Readonly<Record<string, PowerOption>> = {
  power_normal_two_sided: {},
  power_normal_strict: { method: 'normal-both-tails' },
  power_normal_one_sided: { alternative: 'one-sided' },
  power_exact_fisher_two_sided: { method: 'fisher' },
  power_exact_pooled_z_two_sided: { method: 'pooled-z' },
};

describe('powerTwoProportions', () => {
  it.each(Object.entries(METHODS))('has the reference value, %s', (key, options) => {
    expect(equal.length).toBe(4);
    for (const each of equal) {
      const { p1, p2, n_per_group: n, alpha } = each.input as unknown as Sizes;
      const power = powerTwoProportions(p1, n, p2, n, { level: 1 - alpha, ...options });
      expectReference(each, key, power, each.expected[key]);
    }
  });

  it('has the reference error of the exact tests where the chances are equal', () => {
    for (const each of equal) {
      const { p1, n_per_group: n, alpha } = each.input as unknown as Sizes;
      const error = (method: 'fisher' | 'pooled-z') =>
        powerTwoProportions(p1, n, p1, n, { level: 1 - alpha, method });
      expectReference(
        each,
        'size_exact_fisher_at_p1',
        error('fisher'),
        each.expected.size_exact_fisher_at_p1,
      );
      expectReference(
        each,
        'size_exact_pooled_z_at_p1',
        error('pooled-z'),
        each.expected.size_exact_pooled_z_at_p1,
      );
    }
  });

  it('has the reference value for groups of unequal size', () => {
    expect(unequal.length).toBe(2);
    for (const each of unequal) {
      const { n1, n2, p1, p2, alpha } = each.input as Record<'n1' | 'n2' | 'p1' | 'p2' | 'alpha', number>;
      for (const key of ['power_exact_fisher_two_sided', 'power_exact_pooled_z_two_sided']) {
        const power = powerTwoProportions(p1, n1, p2, n2, { level: 1 - alpha, ...METHODS[key]! });
        expectReference(each, key, power, each.expected[key]);
      }
    }
  });

  it("gives the value that R's manual prints", () => {
    // R ?power.prop.test: n = 50, p1 = .50, p2 = .75 ## => power = 0.740
    expect(powerTwoProportions(0.5, 50, 0.75, 50)).toBeCloseTo(0.74, 3);
  });

  it("rejects exactly the tables that Fisher's test rejects", () => {
    // Certain outcomes: with chances 0 and 1 the one table that can be seen is 0 of n1, n2 of n2.
    for (const [n1, n2] of [
      [3, 3],
      [4, 4],
      [2, 9],
      [5, 3],
    ] as const) {
      const power = powerTwoProportions(0, n1, 1, n2, { method: 'fisher' });
      expect(power).toBe(fisherExact(0, n1, n2, n2).p <= 0.05 ? 1 : 0);
    }
  });

  it('is certain, by the normal approximation too, where nothing varies', () => {
    expect(powerTwoProportions(0, 20, 1, 20)).toBe(1);
    expect(powerTwoProportions(0, 1, 1, 1)).toBe(0);
  });

  it('refuses chances, sizes and options that are none', () => {
    expect(() => powerTwoProportions(-0.1, 5, 0.5, 5)).toThrow('powerTwoProportions: p1');
    expect(() => powerTwoProportions(0.1, 5, 1.5, 5)).toThrow('powerTwoProportions: p2');
    expect(() => powerTwoProportions(0.1, 0, 0.5, 5)).toThrow('powerTwoProportions: trials1');
    expect(() => powerTwoProportions(0.1, 5, 0.5, 2.5)).toThrow('powerTwoProportions: trials2');
    expect(() => powerTwoProportions(0.1, 5, 0.5, 5, { level: 0 })).toThrow('powerTwoProportions: level');
    expect(() => powerTwoProportions(0.1, 5, 0.5, 5, { method: 'z' as 'normal' })).toThrow('method');
    expect(() => powerTwoProportions(0.1, 5, 0.5, 5, { method: 'fisher', alternative: 'one-sided' })).toThrow(
      'powerTwoProportions: alternative must be two-sided for method fisher, got one-sided',
    );
  });
});
