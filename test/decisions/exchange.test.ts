import { describe, expect, it } from 'vitest';
import { bestAllocation } from '../../lib/decisions/exchange.ts';
import { bestByTrying, seedsUpTo, smallProblem, WEIGHTS } from './small-problem.ts';

describe('bestAllocation', () => {
  it('is worth as much as the best of all shares, in hundreds of small problems', () => {
    const seeds = seedsUpTo(600);
    expect(seeds.length).toBeGreaterThan(400);
    for (const seed of seeds) {
      const problem = smallProblem(seed);
      for (const weights of WEIGHTS) {
        const { allocation, within } = bestAllocation(problem, weights);
        const best = bestByTrying(problem, weights);
        expect(Math.abs(allocation.worth(weights) - best), `seed ${seed}`).toBeLessThan(1e-9);
        expect(within).toBe(0);
      }
    }
  });

  it('never passes a limit', () => {
    for (let seed = 1; seed <= 200; seed += 1) {
      const problem = smallProblem(seed);
      for (const weights of WEIGHTS) {
        const { allocation } = bestAllocation(problem, weights);
        expect(allocation.counts.every((count) => count >= 0)).toBe(true);
        expect(allocation.idle.every((left) => left >= 0)).toBe(true);
        expect(problem.doses.every((limit, p) => allocation.pollenUse[p]! <= limit)).toBe(true);
        expect(problem.fatherMost.every((limit, f) => allocation.fatherUse[f]! <= limit)).toBe(true);
        expect(problem.pairMost.every((limit, pair) => allocation.pairUse[pair]! <= limit)).toBe(true);
      }
    }
  });
});
