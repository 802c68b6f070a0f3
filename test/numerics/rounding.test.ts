import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { complementRest, productRest } from '../../lib/numerics/rounding.ts';

/** A double as a whole number times 2^−1074, exactly. */
function exact(x: number): bigint {
  const [bits] = new BigUint64Array(Float64Array.of(x).buffer);
  const exponent = (bits! >> 52n) & 2047n;
  const digits = (bits! & ((1n << 52n) - 1n)) | (exponent === 0n ? 0n : 1n << 52n);
  const size = digits << (exponent === 0n ? 0n : exponent - 1n);
  return x < 0 ? -size : size;
}

const share = fc.double({ min: 2 ** -40, max: 1, noNaN: true });

describe('rests of rounding', () => {
  it('are what whole-number arithmetic finds missing from a product', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), share, (a, b) => {
        fc.pre(Math.abs(a) > 1e-9);
        const wanted = exact(a) * exact(b) - (exact(a * b) << 1074n);
        expect(exact(productRest(a, b)) << 1074n).toBe(wanted);
      }),
    );
  });

  it('are what the larger of two shares lacks to make 1', () => {
    fc.assert(
      fc.property(share, (p) => {
        const q = 1 - p;
        const [large, small] = p > q ? [p, q] : [q, p];
        expect(exact(large) + exact(complementRest(large, small)) + exact(small)).toBe(exact(1));
        expect(complementRest(small, large)).toBe(0);
      }),
    );
  });

  it('are left out where the parts of a product would leave the doubles', () => {
    expect(productRest(1e300, 3)).toBe(0);
    expect(productRest(1e200, 1e200)).toBe(0);
  });
});
