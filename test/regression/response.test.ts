import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Link } from '../../lib/regression/fit.ts';
import {
  emptyResponse,
  linkFunction,
  linkInverse,
  linkSlope,
  logBinomialCoefficients,
  respond,
  saturatedLogLik,
} from '../../lib/regression/response.ts';

const links: readonly Link[] = ['logit', 'probit', 'cloglog'];
const f = (...values: number[]): Float64Array => Float64Array.from(values);

function kernel(link: Link, eta: number, y: number, m: number): number {
  return respond(link, f(eta), { successes: f(y), trials: f(m) }, emptyResponse(1));
}

describe('respond', () => {
  it('agrees with the binomial formula and central differences for every link', () => {
    const eta = fc.double({ min: -4, max: 1.5, noNaN: true });
    fc.assert(
      fc.property(fc.constantFrom(...links), eta, fc.integer({ min: 0, max: 5 }), (link, x, y) => {
        const target = emptyResponse(1);
        const value = respond(link, f(x), { successes: f(y), trials: f(5) }, target);
        const mu = linkInverse(link, x);
        expect(target.mean[0]).toBeCloseTo(mu, 12);
        expect(value).toBeCloseTo(y * Math.log(mu) + (5 - y) * Math.log1p(-mu), 8);
        const h = 1e-5;
        const slope = (kernel(link, x + h, y, 5) - kernel(link, x - h, y, 5)) / (2 * h);
        expect(target.score[0]).toBeCloseTo(slope, 5);
        const muSlope = (linkInverse(link, x + h) - linkInverse(link, x - h)) / (2 * h);
        expect(linkSlope(link, x)).toBeCloseTo(muSlope, 7);
        expect(target.weight[0]).toBeCloseTo((5 * muSlope ** 2) / (mu * (1 - mu)), 5);
      }),
      { numRuns: 300, seed: 3 },
    );
  });

  it('stays finite far out', () => {
    for (const link of links) {
      for (const eta of [-700, -40, 40, 700]) {
        const target = emptyResponse(1);
        const value = respond(link, f(eta), { successes: f(eta < 0 ? 0 : 1), trials: f(1) }, target);
        expect([value, target.score[0], target.weight[0]].every(Number.isFinite), `${link} at ${eta}`).toBe(
          true,
        );
        expect(value).toBeGreaterThan(-1e-15);
      }
    }
  });

  it('undoes the link', () => {
    for (const link of links) {
      for (const p of [1e-9, 0.1, 0.5, 0.9])
        expect(linkInverse(link, linkFunction(link, p)) / p).toBeCloseTo(1, 9);
    }
  });

  it('adds binomial coefficients and knows the saturated model', () => {
    // Exact: C(10, 3) = 120, and a row of one outcome adds nothing.
    const counts = { successes: f(3, 0), trials: f(10, 4) };
    expect(logBinomialCoefficients(counts)).toBeCloseTo(Math.log(120), 12);
    expect(saturatedLogLik(counts)).toBeCloseTo(3 * Math.log(0.3) + 7 * Math.log(0.7), 12);
  });
});
