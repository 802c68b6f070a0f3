import { describe, expect, it } from 'vitest';
import { continuedProduct, rowProduct } from '../../lib/numerics/row-product.ts';

describe('products of rows', () => {
  // 1 × 7 + 2 × 6 + … by hand, in whole numbers, which add up exactly in any order.
  const a = Float64Array.of(1, 2, 3, 4, 5, 6, 7);
  const b = Float64Array.of(7, 6, 5, 4, 3, 2, 1);

  it.each([
    [0, 0],
    [1, 7],
    [3, 34],
    [4, 50],
    [7, 84],
  ])('are sums over so many entries: %i', (length, sum) => {
    expect(rowProduct(a, 0, b, 0, length)).toBe(sum);
  });

  it('begin where they are told to in either array', () => {
    // 3 × 2 + 4 × 1.
    expect(rowProduct(a, 2, b, 5, 2)).toBe(10);
  });

  it('go on from four sums begun before', () => {
    expect(continuedProduct(1000, 200, 30, 4, a, 0, b, 0, 7)).toBe(1234 + 84);
  });
});
