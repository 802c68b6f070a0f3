import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  chiSquareCdf,
  chiSquareDensity,
  chiSquareQuantile,
  gammaCdf,
  gammaDensity,
  gammaQuantile,
} from '../../lib/numerics/gamma.ts';
import { checkReference } from './distribution-cases.ts';

describe('gamma distribution', () => {
  it('has the reference tails', () => {
    expect(checkReference('pgamma', ({ x, shape }, tail) => gammaCdf(x!, shape!, 1, tail))).toBe(2);
  });

  it('has the reference densities', () => {
    const plain = ({ x, shape, rate }: Record<string, number>) => gammaDensity(x!, shape!, rate!);
    expect(checkReference('dgamma', plain)).toBe(1);
    const call = ({ x, shape, rate }: Record<string, number>) =>
      gammaDensity(x!, shape!, rate!, { log: true });
    expect(checkReference('dgamma_log', call)).toBe(2);
  });

  it('has the reference quantiles', () => {
    expect(checkReference('qgamma', ({ p, shape }, tail) => gammaQuantile(p!, shape!, 1, tail))).toBe(2);
  });

  it('finds an upper quantile of a shape so small that the first guess overflows', () => {
    // R 4.2.2: qgamma(1e-3, 1e-3, lower.tail = FALSE) = 0.2647702702396512
    expect(gammaQuantile(1e-3, 1e-3, 1, { tail: 'upper' })).toBeCloseTo(0.2647702702396512, 10);
  });

  it('scales with the rate', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 50, noNaN: true }), fc.integer({ min: 1, max: 40 }), (x, k) => {
        expect(gammaCdf(x, k / 4, 2)).toBeCloseTo(gammaCdf(2 * x, k / 4, 1), 14);
      }),
    );
  });

  it('has the ends of its support', () => {
    expect([gammaCdf(-1, 2), gammaCdf(0, 2), gammaCdf(Infinity, 2)]).toEqual([0, 0, 1]);
    expect([gammaQuantile(0, 2), gammaQuantile(1, 2)]).toEqual([0, Infinity]);
    expect([gammaDensity(-1, 2), gammaDensity(0, 2), gammaDensity(0, 1), gammaDensity(0, 0.5)]).toEqual([
      0,
      0,
      1,
      Infinity,
    ]);
  });

  it('refuses shapes and rates that are not above 0', () => {
    expect(() => gammaCdf(1, 0)).toThrow('gammaCdf: shape must be a finite number above 0, got 0');
    expect(() => gammaQuantile(0.5, 1, -2)).toThrow('rate');
    expect(() => gammaDensity(Number.NaN, 1)).toThrow('gammaDensity: x must be a number, got NaN');
  });
});

describe('chi-square distribution', () => {
  it('has the reference tails', () => {
    expect(checkReference('pchisq', ({ x, df }, tail) => chiSquareCdf(x!, df!, tail))).toBe(2);
    expect(checkReference('dchisq', ({ x, df }) => chiSquareDensity(x!, df!))).toBe(1);
  });

  it('has the reference quantiles', () => {
    expect(checkReference('qchisq', ({ p, df }, tail) => chiSquareQuantile(p!, df!, tail))).toBe(2);
  });

  it('has the density x e^(-x/2) / 4 at 4 degrees of freedom', () => {
    // Abramowitz & Stegun (1964) 26.4.1 at 4 degrees of freedom
    for (const x of [0.1, 1, 7.5, 40])
      expect(chiSquareDensity(x, 4)).toBeCloseTo((x * Math.exp(-x / 2)) / 4, 14);
  });

  it('refuses degrees of freedom that are not above 0', () => {
    expect(() => chiSquareCdf(1, 0)).toThrow('chiSquareCdf: df must be a finite number above 0, got 0');
    expect(() => chiSquareQuantile(2, 1)).toThrow('chiSquareQuantile: p');
    expect(() => chiSquareDensity(1, Number.NaN)).toThrow('chiSquareDensity: df');
  });
});
