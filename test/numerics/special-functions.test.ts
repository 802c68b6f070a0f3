import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  devianceTerm,
  digamma,
  logGamma,
  polynomial,
  stirlingError,
  trigamma,
} from '../../lib/numerics/special-functions.ts';
import { checkReference } from './distribution-cases.ts';

describe('gamma functions', () => {
  it('have the reference values', () => {
    expect(checkReference('lgamma', ({ x }) => logGamma(x!))).toBe(2);
    expect(checkReference('digamma', ({ x }) => digamma(x!))).toBe(2);
    expect(checkReference('trigamma', ({ x }) => trigamma(x!))).toBe(2);
  });

  it('keep their digits beside the zeros of log gamma', () => {
    // mpmath 1.3, 40 digits, at the double nearest to 2.0000001
    expect(Math.abs(logGamma(2.0000001) / 4.227843666532498e-8 - 1)).toBeLessThan(1e-15);
    expect([logGamma(1), logGamma(2)].map(Math.abs)).toEqual([0, 0]);
  });

  it('satisfy their recurrences', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 1e3, noNaN: true }), (x) => {
        expect(logGamma(x + 1) - logGamma(x)).toBeCloseTo(Math.log(x), 10);
        expect(digamma(x + 1) - digamma(x)).toBeCloseTo(1 / x, 10);
        expect((trigamma(x) - trigamma(x + 1)) * x * x).toBeCloseTo(1, 6);
      }),
    );
  });

  it('refuse what is not above 0', () => {
    for (const x of [0, -1.5, Number.NaN, Infinity]) {
      expect(() => logGamma(x)).toThrow(`logGamma: x must be a finite number above 0, got ${x}`);
      expect(() => digamma(x)).toThrow('digamma: x');
      expect(() => trigamma(x)).toThrow('trigamma: x');
    }
  });
});

describe('parts of the saddle-point form', () => {
  it("has the table of Stirling's error", () => {
    // Loader (2000), table of the first errors: n = 1, 2, 10
    expect(stirlingError(1)).toBeCloseTo(0.0810614667953272, 13);
    expect(stirlingError(2)).toBeCloseTo(0.0413406959554092, 13);
    expect(stirlingError(10)).toBeCloseTo(0.0083305634333633, 13);
  });

  it('joins the series and the definition of the error at 15', () => {
    // exact: log(15!) less Stirling's formula at 15, mpmath 1.3: 0.005554733551962801
    expect(stirlingError(15)).toBeCloseTo(0.005554733551962801, 15);
    expect(stirlingError(14.999999)).toBeCloseTo(0.005554733551962801, 8);
  });

  it('loses no digits where x is near mu', () => {
    // x = 1e6 + 1, mu = 1e6: (x − mu)² / (2 mu) (1 − (x − mu)/(3 mu) + …) = 4.999998333334166667e-7 (Taylor series)
    expect(Math.abs(devianceTerm(1_000_001, 1e6) / 4.999998333334167e-7 - 1)).toBeLessThan(1e-15);
    expect([devianceTerm(0, 3), devianceTerm(5, 5)]).toEqual([3, 0]);
  });

  it('is never negative', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1e6, noNaN: true }),
        fc.double({ min: 1e-6, max: 1e6, noNaN: true }),
        (x, mu) => {
          expect(devianceTerm(x, mu)).toBeGreaterThanOrEqual(0);
        },
      ),
    );
  });

  it('evaluates a polynomial from its lowest coefficient up', () => {
    expect(polynomial([1, 2, 3], 10)).toBe(321);
    expect(polynomial([], 10)).toBe(0);
  });
});
