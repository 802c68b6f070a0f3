import { describe, expect, it } from 'vitest';
import { quantileOfSorted } from '../../lib/numerics/quantile.ts';

describe('quantileOfSorted', () => {
  const sorted = [1, 1, 2, 3, 3, 4, 5, 5, 5, 6, 9];

  it.each([
    // R 4.2: quantile(c(3, 1, 4, 1, 5, 9, 2, 6, 5, 3, 5), c(.025, .1, .5, .9, .975), type = 7)
    [0.025, 1],
    [0.1, 1],
    [0.5, 4],
    [0.9, 6],
    [0.975, 8.25],
  ])('is R’s default quantile at %s', (p, expected) => {
    expect(quantileOfSorted(sorted, p)).toBeCloseTo(expected, 13);
  });

  it('interpolates between neighbours, by hand', () => {
    expect(quantileOfSorted([1, 2, 3, 4], 0.5)).toBe(2.5);
    expect(quantileOfSorted([0, 10], 0.125)).toBe(1.25);
  });

  it('is the least at 0, the greatest at 1 and the only one anywhere', () => {
    expect(quantileOfSorted(sorted, 0)).toBe(1);
    expect(quantileOfSorted(sorted, 1)).toBe(9);
    expect(quantileOfSorted([7], 0.3)).toBe(7);
  });

  it('lets infinite ends through without making them NaN', () => {
    const open = [1, 2, Infinity, Infinity];
    expect(quantileOfSorted(open, 0)).toBe(1);
    expect(quantileOfSorted(open, 0.9)).toBe(Infinity);
    expect(quantileOfSorted(open, 1)).toBe(Infinity);
    expect(quantileOfSorted([-Infinity, -Infinity, 0], 0.25)).toBe(-Infinity);
  });

  it('refuses an empty list and a p that is no proportion', () => {
    expect(() => quantileOfSorted([], 0.5)).toThrow(
      'quantileOfSorted: sorted must have at least one value, got none',
    );
    expect(() => quantileOfSorted([1], 1.5)).toThrow('quantileOfSorted: p must be from 0 to 1, got 1.5');
    expect(() => quantileOfSorted([1], Number.NaN)).toThrow(RangeError);
  });
});
