import { describe, expect, it } from 'vitest';
import type { Allocation, AllocationProblem } from '../../lib/decisions/allocation.ts';
import { PairShares } from '../../lib/decisions/pair-shares.ts';
import { randomStream } from '../../lib/numerics/random.ts';
import { everyShare, sourceOf } from './small-problem.ts';

const weights = { fruits: 0.4, varieties: 0.6 };

/** One pair with three pollens of at most two doses. */
function onePair(seed: number): AllocationProblem {
  const random = randomStream(seed);
  const misses = () => [0, 1, 2, 3].map(() => 0.05 + 0.9 * random.uniform());
  return {
    sources: [0, 1, 2].map((pollen) => sourceOf(0, pollen, 0, misses())),
    flowers: [6],
    doses: [2, 2, 2],
    fathers: [0, 0, 0],
    fatherMost: [Number.POSITIVE_INFINITY],
    pairFewest: [seed % 3],
    pairMost: [seed % 4 === 0 ? 3 : Number.POSITIVE_INFINITY],
    draws: 4,
  };
}

function everyValue(problem: AllocationProblem, cost: number): number[] {
  const values: number[] = [];
  everyShare(problem, (share: Allocation) => {
    const flowers = share.counts.reduce((sum, count) => sum + count, 0);
    values.push(share.worth(weights) - cost * flowers);
  });
  return values;
}

describe('PairShares', () => {
  it('finds the best share of a pair at given prices', () => {
    for (let seed = 1; seed <= 100; seed += 1) {
      const problem = onePair(seed);
      const cost = (seed % 10) / 20;
      const shares = new PairShares(problem, weights, () => cost);
      expect(shares.best(0, [0, 1, 2])).toBeCloseTo(Math.max(...everyValue(problem, cost)), 9);
    }
  });

  it('lists every share that falls short by no more than asked, best first', () => {
    for (let seed = 1; seed <= 100; seed += 1) {
      const problem = { ...onePair(seed), pairFewest: [0] };
      const cost = (seed % 10) / 20;
      const values = everyValue(problem, cost);
      const best = Math.max(...values);
      const near = new PairShares(problem, weights, () => cost).near(0, [0, 1, 2], best, 0.1)!;
      const expected = values.map((value) => best - value).filter((deficit) => deficit <= 0.1);
      expect(near.length).toBe(expected.length);
      expected.sort((a, b) => a - b);
      near.forEach(({ deficit }, at) => {
        expect(deficit).toBeCloseTo(expected[at]!, 9);
      });
    }
  });
});
