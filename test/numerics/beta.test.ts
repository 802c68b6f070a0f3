import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { betaCdf, betaDensity, betaQuantile } from '../../lib/numerics/beta.ts';
import { checkReference } from './distribution-cases.ts';

const shape = fc.double({ min: 0.05, max: 500, noNaN: true });

describe('beta distribution', () => {
  it('has the reference tails', () => {
    expect(checkReference('pbeta', ({ x, a, b }, tail) => betaCdf(x!, a!, b!, tail))).toBe(3);
  });

  it('has the reference densities', () => {
    expect(checkReference('dbeta', ({ x, a, b }) => betaDensity(x!, a!, b!))).toBe(1);
    expect(checkReference('dbeta_log', ({ x, a, b }) => betaDensity(x!, a!, b!, { log: true }))).toBe(2);
  });

  it('has the reference quantiles', () => {
    expect(checkReference('qbeta', ({ p, a, b }, tail) => betaQuantile(p!, a!, b!, tail))).toBe(3);
  });

  it('holds for shapes of millions', () => {
    // R 4.2.2: pbeta(0.3001, 3e6, 7e6, lower.tail = FALSE), qbeta(1e-9, 3e6, 7e6)
    expect(betaCdf(0.3001, 3e6, 7e6, { tail: 'upper' })).toBeCloseTo(0.245061328864222, 10);
    expect(betaQuantile(1e-9, 3e6, 7e6)).toBeCloseTo(0.2991313022109776, 14);
  });

  it('mirrors: the tail of x under (a, b) is the other tail of 1 - x under (b, a)', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1023 }), shape, shape, (i, a, b) => {
        const x = i / 1024;
        const [here, there] = [betaCdf(x, a, b), betaCdf(1 - x, b, a, { tail: 'upper' })];
        expect(Math.abs(here - there)).toBeLessThanOrEqual(1e-13 * here + 1e-300);
      }),
    );
  });

  it('comes back from its quantile in the tail that was asked for', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-30, max: 0.5, noNaN: true }), shape, shape, (p, a, b) => {
        const x = betaQuantile(p, a, b);
        // Near 1 the double nearest to a quantile may be 1 itself.
        fc.pre(x < 0.999 && x > 1e-290);
        expect(Math.abs(betaCdf(x, a, b) - p)).toBeLessThanOrEqual(1e-10 * p);
      }),
    );
  });

  it('has the ends of its support', () => {
    expect([betaCdf(0, 2, 3), betaCdf(1, 2, 3), betaCdf(-1, 2, 3, { tail: 'upper' })]).toEqual([0, 1, 1]);
    expect([betaQuantile(0, 2, 3), betaQuantile(1, 2, 3), betaQuantile(0, 2, 3, { tail: 'upper' })]).toEqual([
      0, 1, 1,
    ]);
    expect([betaDensity(0, 1, 3), betaDensity(1, 3, 1)].map((value) => value.toFixed(12))).toEqual([
      '3.000000000000',
      '3.000000000000',
    ]);
    expect([betaDensity(0, 0.5, 3), betaDensity(1, 3, 2), betaDensity(2, 3, 2)]).toEqual([Infinity, 0, 0]);
  });

  it('refuses shapes that are not above 0', () => {
    expect(() => betaCdf(0.5, 0, 1)).toThrow('betaCdf: shape1 must be a finite number above 0, got 0');
    expect(() => betaDensity(0.5, 1, Infinity)).toThrow('betaDensity: shape2');
    expect(() => betaQuantile(-0.1, 1, 1)).toThrow('betaQuantile: p must be a number from 0 to 1, got -0.1');
  });
});
