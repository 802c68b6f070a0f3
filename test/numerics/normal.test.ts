import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalCdf, normalDensity, normalLogCdf, normalQuantile } from '../../lib/numerics/normal.ts';
import { checkReference } from './distribution-cases.ts';

describe('normal distribution', () => {
  it('has the reference tails, to x = -38', () => {
    expect(checkReference('pnorm', ({ x }, tail) => normalCdf(x!, tail))).toBe(3);
  });

  it('has the reference logarithm of the tails, to x = -100000', () => {
    expect(checkReference('plognorm', ({ x }, tail) => normalLogCdf(x!, tail))).toBe(2);
  });

  it('has the reference quantiles, to p = 1e-300', () => {
    expect(checkReference('qnorm', ({ p }, tail) => normalQuantile(p!, tail))).toBe(3);
  });

  it('has the reference densities, to x = 37 and their logarithms to 1e8', () => {
    expect(checkReference('dnorm', ({ x }) => normalDensity(x!))).toBe(1);
    expect(checkReference('dnorm_log', ({ x }) => normalDensity(x!, { log: true }))).toBe(1);
  });

  it('has the density of the tables', () => {
    // Abramowitz & Stegun (1964) table 26.1, 15 decimals
    expect(normalDensity(1)).toBeCloseTo(0.241970724519143, 15);
    expect(normalDensity(3)).toBeCloseTo(0.004431848411938, 15);
    // log of the above by the definition: −x²/2 − log √(2π), log √(2π) = 0.91893 85332 (ibid. 6.1.41)
    expect(normalDensity(40, { log: true })).toBeCloseTo(-800.9189385332, 9);
  });

  it('ends at 0 and 1, and at infinity', () => {
    expect(normalCdf(-Infinity)).toBe(0);
    expect(normalCdf(Infinity)).toBe(1);
    expect(normalCdf(-Infinity, { tail: 'upper' })).toBe(1);
    expect(normalLogCdf(-Infinity)).toBe(-Infinity);
    expect(normalQuantile(0)).toBe(-Infinity);
    expect(normalQuantile(1)).toBe(Infinity);
    expect(normalQuantile(0, { tail: 'upper' })).toBe(Infinity);
  });

  it('comes back from its quantile in either tail', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-200, max: 0.5, noNaN: true }), (p) => {
        for (const tail of ['lower', 'upper'] as const) {
          const back = normalCdf(normalQuantile(p, { tail }), { tail });
          // The relative error of a far tail is x times that of x, some 30 ulps of x at 1e-200.
          expect(Math.abs(back - p)).toBeLessThanOrEqual(1e-12 * p);
        }
      }),
    );
  });

  it('refuses what is not a number or a probability', () => {
    expect(() => normalCdf(Number.NaN)).toThrow(RangeError);
    expect(() => normalQuantile(1.01)).toThrow('normalQuantile: p must be a number from 0 to 1, got 1.01');
    expect(() => normalQuantile('0.5' as unknown as number)).toThrow(TypeError);
  });
});
