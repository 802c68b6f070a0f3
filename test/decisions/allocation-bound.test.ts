import { describe, expect, it } from 'vitest';
import { Allocation } from '../../lib/decisions/allocation.ts';
import { allocationBound, paid } from '../../lib/decisions/allocation-bound.ts';
import { bestAllocation } from '../../lib/decisions/exchange.ts';
import { ExchangeGraph } from '../../lib/decisions/exchange-graph.ts';
import { randomStream } from '../../lib/numerics/random.ts';
import { largeProblem } from './large-problem.ts';
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

/** The bound once more, from its definition: what all limits cost, and each pair's best by trying all its shares. */
function boundByHand(
  problem: ReturnType<typeof largeProblem>,
  { flowerPrices, limitPrices }: ReturnType<typeof allocationBound>,
  { fruits, varieties }: (typeof WEIGHTS)[number],
): number {
  const { sources, flowers, doses, draws } = problem;
  let bound = flowers.reduce((sum, count, offer) => sum + count * flowerPrices[offer]!, 0);
  for (const [pollen, count] of doses.entries())
    if (limitPrices.dose[pollen]! > 0) bound += count * limitPrices.dose[pollen]!;
  const pairs = new Map<number, number[]>();
  for (const [s, { pair }] of sources.entries()) pairs.set(pair, [...(pairs.get(pair) ?? []), s]);
  for (const own of pairs.values()) {
    const price = (s: number) => flowerPrices[sources[s]!.offer]! + limitPrices.dose[sources[s]!.pollen]!;
    // No flower of a source is worth its price where its first, with nothing before it, is not.
    const useful = own.filter((s) => (fruits + varieties) * sources[s]!.rate > price(s));
    let best = 0;
    const from = (at: number, missed: readonly number[], plain: number): void => {
      const s = useful[at];
      if (s === undefined) {
        const chance = 1 - missed.reduce((sum, value) => sum + value, 0) / draws;
        best = Math.max(best, plain + varieties * chance);
        return;
      }
      const { miss, rate, offer, pollen } = sources[s]!;
      let now = missed;
      for (let n = 0; n <= Math.min(flowers[offer]!, doses[pollen]!); n += 1) {
        from(at + 1, now, plain + n * (fruits * rate - price(s)));
        now = now.map((value, k) => value * miss[k]!);
      }
    };
    from(0, new Array<number>(draws).fill(1), 0);
    bound += best;
  }
  return bound;
}

describe('the bound on a season of 40 seed parents and 200 vials', () => {
  it('proves the best share, and is what its prices alone say', () => {
    const problem = largeProblem(1);
    for (const weights of WEIGHTS.slice(0, 3)) {
      const { allocation, within } = bestAllocation(problem, weights);
      expect(within).toBe(0);
      const graph = new ExchangeGraph(allocation, weights);
      graph.build();
      const priced = allocationBound(allocation, graph.prices(), weights);
      expect(priced.bound).toBeCloseTo(boundByHand(problem, priced, weights), 8);
      expect(priced.bound - allocation.worth(weights)).toBeLessThan(1e-8);
    }
  });

  it('leaves no more than a hundredth open where few pollen parents share them all', () => {
    const problem = largeProblem(2, 10);
    for (const weights of WEIGHTS) {
      const { allocation, within } = bestAllocation(problem, weights);
      expect(within / allocation.worth(weights)).toBeLessThan(0.01);
    }
  });
});

describe('paid', () => {
  it('pays nothing for what has no limit and no price', () => {
    expect(paid(Float64Array.of(0, 2), [Number.POSITIVE_INFINITY, 3])).toBe(6);
  });
});
