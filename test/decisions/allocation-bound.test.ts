import { describe, expect, it } from 'vitest';
import { Allocation } from '../../lib/decisions/allocation.ts';
import { allocationBound, paid } from '../../lib/decisions/allocation-bound.ts';
import { bestAllocation } from '../../lib/decisions/exchange.ts';
import { ExchangeGraph } from '../../lib/decisions/exchange-graph.ts';
import { randomStream } from '../../lib/numerics/random.ts';
import { bestByTrying, seedsUpTo, smallProblem, WEIGHTS } from './small-problem.ts';

describe('allocationBound', () => {
  it('is never below the best of all shares, whatever share and prices it starts from', () => {
    for (const seed of seedsUpTo(150)) {
      const problem = smallProblem(seed);
      const random = randomStream(seed);
      for (const weights of WEIGHTS) {
        const prices = {
          dose: Float64Array.from(problem.doses, (limit) => (limit < Infinity ? random.uniform() : 0)),
          father: Float64Array.from(problem.fatherMost, (limit) => (limit < Infinity ? random.uniform() : 0)),
        };
        const { bound } = allocationBound(new Allocation(problem), prices, weights);
        expect(bound).toBeGreaterThan(bestByTrying(problem, weights) - 1e-9);
      }
    }
  });

  it('is the best itself, at the prices of the best share, where each pair has one pollen', () => {
    let compared = 0;
    for (const seed of seedsUpTo(400)) {
      const problem = smallProblem(seed);
      const pairs = problem.sources.map(({ pair }) => pair);
      if (new Set(pairs).size < pairs.length) continue;
      for (const weights of WEIGHTS) {
        const { allocation } = bestAllocation(problem, weights);
        const graph = new ExchangeGraph(allocation, weights);
        graph.build();
        const { bound } = allocationBound(allocation, graph.prices(), weights);
        expect(bound - bestByTrying(problem, weights), `seed ${seed}`).toBeLessThan(1e-9);
        compared += 1;
      }
    }
    expect(compared).toBeGreaterThan(200);
  });
});

describe('paid', () => {
  it('pays nothing for what has no limit and no price', () => {
    expect(paid(Float64Array.of(0, 2), [Number.POSITIVE_INFINITY, 3])).toBe(6);
  });
});
