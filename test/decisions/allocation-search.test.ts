import { describe, expect, it } from 'vitest';
import { Allocation } from '../../lib/decisions/allocation.ts';
import { allocationBound } from '../../lib/decisions/allocation-bound.ts';
import { betterShare } from '../../lib/decisions/allocation-search.ts';
import { bestByTrying, seedsUpTo, smallProblem, WEIGHTS } from './small-problem.ts';

const weights = WEIGHTS[2]!;

function freePrices(problem: ReturnType<typeof smallProblem>) {
  return {
    dose: new Float64Array(problem.doses.length),
    father: new Float64Array(problem.fatherMost.length),
  };
}

describe('betterShare', () => {
  it('finds the best share from an empty one and no prices at all', () => {
    for (const seed of seedsUpTo(150)) {
      const problem = smallProblem(seed);
      const empty = new Allocation(problem);
      const best = bestByTrying(problem, weights);
      const priced = allocationBound(empty, freePrices(problem), weights);
      const { counts, complete } = betterShare(empty, priced, weights, 1e-10);
      expect(complete).toBe(true);
      const share = new Allocation(problem);
      counts?.forEach((count, s) => {
        if (count > 0) share.change(s, count);
      });
      expect(Math.abs(share.worth(weights) - best), `seed ${seed}`).toBeLessThan(1e-9);
    }
  });

  it('finds none where the bound leaves no room', () => {
    const problem = smallProblem(3);
    const empty = new Allocation(problem);
    const priced = { ...allocationBound(empty, freePrices(problem), weights), bound: 0 };
    expect(betterShare(empty, priced, weights, 1e-10)).toEqual({ counts: null, complete: true });
  });
});
