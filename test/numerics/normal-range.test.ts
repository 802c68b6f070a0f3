import { describe, expect, it } from 'vitest';
import { normalRangeTail } from '../../lib/numerics/normal-range.ts';

describe('normalRangeTail', () => {
  // mpmath 1.3.0, quadrature of the integral with 50 digits.
  it.each([
    [2, 0.1, 0.9436280222029834],
    [3, 1, 0.7592873587706612],
    [3, 3.5, 0.03555704186316038],
    [5, 5, 0.00373027380519444],
    [10, 3, 0.5121840739708066],
    [10, 8, 6.89462222084389e-7],
    [50, 2, 0.9999999612657317],
    [100, 12, 1.065152996016211e-13],
    [4, 30, 4.327796503470882e-99],
  ])('is exact to twelve digits for %d numbers and a range of %d', (count, range, wanted) => {
    expect(Math.abs(normalRangeTail(range, count) / wanted - 1)).toBeLessThan(1e-12);
  });

  it("agrees with R's ptukey of infinitely many degrees of freedom, and is 5 % at its tabled point", () => {
    // R 4.2.2: ptukey(5, 10, Inf, lower.tail = FALSE), itself good to about ten digits; 3.31 is tabled for three means
    // (Pearson & Hartley 1966, table 29).
    expect(normalRangeTail(5, 10)).toBeCloseTo(0.01485743788764, 10);
    expect(normalRangeTail(3.31, 3)).toBeCloseTo(0.05, 3);
  });

  it('is the two-sided normal tail of the difference for two numbers', () => {
    // The difference of two standard normal numbers has variance 2: 5 % beyond 1.959964 × √2.
    expect(normalRangeTail(1.959963984540054 * Math.SQRT2, 2)).toBeCloseTo(0.05, 13);
  });

  it('is 1 at no range and 0 at an infinite one, and refuses what is neither range nor count', () => {
    expect(normalRangeTail(0, 3)).toBe(1);
    expect(normalRangeTail(-1, 3)).toBe(1);
    expect(normalRangeTail(Infinity, 3)).toBe(0);
    expect(() => normalRangeTail(Number.NaN, 3)).toThrow('normalRangeTail: range must be a number, got NaN');
    expect(() => normalRangeTail(1, 1)).toThrow(
      'normalRangeTail: count must be a whole number of at least 2, got 1',
    );
  });
});
