import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  logProbability,
  logShare,
  type Margins,
  marginsOf,
  modeOf,
  momentsAt,
  tailAt,
} from '../../lib/proportions/fixed-margins.ts';

/** Ways to choose k of n, exactly. */
function choose(n: number, k: number): bigint {
  let ways = 1n;
  for (let i = 1; i <= k; i += 1) ways = (ways * BigInt(n - k + i)) / BigInt(i);
  return ways;
}

/** Weight of each table at an odds ratio, by the definition. */
function weightsOf({ n1, n2, successes, least, most }: Margins, psi: number): Map<number, number> {
  const weights = new Map<number, number>();
  for (let x = least; x <= most; x += 1) {
    weights.set(x, Number(choose(n1, x) * choose(n2, successes - x)) * psi ** (x - least));
  }
  return weights;
}

const anyMargins = fc
  .tuple(fc.integer({ min: 1, max: 14 }), fc.integer({ min: 1, max: 14 }))
  .chain(([n1, n2]) => fc.tuple(fc.constant(n1), fc.constant(n2), fc.integer({ min: 0, max: n1 + n2 })))
  .map(([n1, n2, successes]) => marginsOf(n1, n2, successes));
const anyEta = fc.double({ min: -6, max: 6, noNaN: true });

describe('tables with fixed margins', () => {
  it('have the probabilities and tails of whole binomial coefficients', () => {
    fc.assert(
      fc.property(anyMargins, (margins) => {
        const weights = weightsOf(margins, 1);
        const all = [...weights.values()].reduce((sum, weight) => sum + weight, 0);
        let below = 0;
        for (const [x, weight] of weights) {
          below += weight;
          expect(Math.exp(logProbability(x, margins))).toBeCloseTo(weight / all, 12);
          expect(tailAt(x, margins, 'lower')).toBeCloseTo(below / all, 12);
          expect(tailAt(x, margins, 'upper')).toBeCloseTo(1 - below / all, 12);
        }
      }),
    );
  });

  it('have the mode, mean and variance of the definition at any odds ratio', () => {
    fc.assert(
      fc.property(anyMargins, anyEta, (margins, eta) => {
        const weights = [...weightsOf(margins, Math.exp(eta))];
        const all = weights.reduce((sum, [, weight]) => sum + weight, 0);
        const mean = weights.reduce((sum, [x, weight]) => sum + x * weight, 0) / all;
        const variance = weights.reduce((sum, [x, weight]) => sum + (x - mean) ** 2 * weight, 0) / all;
        const largest = Math.max(...weights.map(([, weight]) => weight));
        const own = weights.find(([x]) => x === modeOf(margins, eta))![1];
        expect(own / largest).toBeCloseTo(1, 9);
        const [foundMean, foundVariance] = momentsAt(margins, eta);
        expect(foundMean).toBeCloseTo(mean, 9);
        if (margins.most > margins.least) expect(foundVariance).toBeCloseTo(variance, 9);
      }),
    );
  });

  it('share a weighted sum as the definition does, with its slope', () => {
    fc.assert(
      fc.property(anyMargins, anyEta, (margins, eta) => {
        fc.pre(margins.most > margins.least);
        const beyond = (x: number) => (x > margins.least ? 1 : 0.5);
        const share = (at: number): number => {
          const weights = [...weightsOf(margins, Math.exp(at))];
          const all = weights.reduce((sum, [, weight]) => sum + weight, 0);
          return Math.log(weights.reduce((sum, [x, weight]) => sum + beyond(x) * weight, 0) / all);
        };
        const [value, slope] = logShare(margins, eta, beyond);
        expect(value).toBeCloseTo(share(eta), 10);
        expect(slope).toBeCloseTo((share(eta + 1e-5) - share(eta - 1e-5)) / 2e-5, 6);
      }),
    );
  });
});
