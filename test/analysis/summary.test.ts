import { describe, expect, it } from 'vitest';
import { mean, summarise } from '../../lib/analysis/summary.ts';

describe('summarise', () => {
  it('is the mean with the equal-tailed range of type 7 quantiles, by hand', () => {
    // 0 to 100 shuffled: position 100 p, so the 90 % range is 5 to 95; the mean is 50.
    const draws = Float64Array.from({ length: 101 }, (_, k) => (k * 37) % 101);
    const { estimate, lower, upper } = summarise(draws, 0.9);
    expect(estimate).toBe(50);
    expect(lower).toBeCloseTo(5, 12);
    expect(upper).toBeCloseTo(95, 12);
  });

  it('leaves the draws in their order', () => {
    const draws = Float64Array.of(3, 1, 2);
    summarise(draws, 0.95);
    expect([...draws]).toEqual([3, 1, 2]);
  });

  it('sorts as numbers, not as text', () => {
    expect(summarise(Float64Array.of(10, 9, 100), 0).lower).toBe(10);
  });
});

describe('mean', () => {
  it('is the sum divided by the count', () => {
    expect(mean([1, 2, 6])).toBe(3);
  });
});
