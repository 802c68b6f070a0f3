import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalCdf } from '../../lib/numerics/normal.ts';
import { studentCdf, studentDensity, studentQuantile } from '../../lib/numerics/student.ts';
import { checkReference } from './distribution-cases.ts';

describe("Student's t distribution", () => {
  it('has the reference tails', () => {
    expect(checkReference('pt', ({ t, df }, tail) => studentCdf(t!, df!, tail))).toBe(3);
  });

  it('has the reference densities', () => {
    expect(checkReference('dt', ({ t, df }) => studentDensity(t!, df!))).toBe(1);
    expect(checkReference('dt_log', ({ t, df }) => studentDensity(t!, df!, { log: true }))).toBe(2);
  });

  it('has the reference quantiles', () => {
    expect(checkReference('qt', ({ p, df }, tail) => studentQuantile(p!, df!, tail))).toBe(3);
  });

  it("is Cauchy's distribution at 1 degree of freedom", () => {
    // P(T > t) = 1/2 − arctan(t)/π = arctan(1/t)/π for t > 0 (Abramowitz & Stegun 1964, 26.7.3)
    for (const t of [0.2, 1, 30, 1e9, 1e160, 1e300]) {
      const exact = Math.atan(1 / t) / Math.PI;
      expect(Math.abs(studentCdf(t, 1, { tail: 'upper' }) / exact - 1)).toBeLessThan(1e-13);
    }
  });

  it('is the normal distribution at infinitely many', () => {
    expect(studentCdf(1.5, Infinity)).toBe(normalCdf(1.5));
    expect(studentQuantile(0.5, Infinity)).toBe(0);
    // density at 0 is 1/√(2π): 0.39894 22804 01433 (Abramowitz & Stegun 1964, table 26.1)
    expect(studentDensity(0, Infinity)).toBeCloseTo(0.398942280401433, 14);
  });

  it('is symmetric', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 100, noNaN: true }),
        fc.integer({ min: 1, max: 50 }),
        (t, df) => {
          expect(studentCdf(-t, df)).toBe(studentCdf(t, df, { tail: 'upper' }));
          expect(studentQuantile(0.1, df)).toBe(-studentQuantile(0.1, df, { tail: 'upper' }));
        },
      ),
    );
  });

  it('has the ends of its support', () => {
    expect([studentQuantile(0, 3), studentQuantile(1, 3), studentQuantile(0.5, 3)]).toEqual([
      -Infinity,
      Infinity,
      0,
    ]);
    expect([studentCdf(0, 3), studentDensity(Infinity, 3)]).toEqual([0.5, 0]);
  });

  it('refuses degrees of freedom that are not above 0', () => {
    expect(() => studentCdf(1, 0)).toThrow('studentCdf: df must be a finite number above 0, got 0');
    expect(() => studentQuantile(0.5, -1)).toThrow('studentQuantile: df');
    expect(() => studentDensity(Number.NaN, 1)).toThrow('studentDensity: t must be a number, got NaN');
  });
});
