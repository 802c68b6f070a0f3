/** How good a share of flowers can be at most: a bound that prices give. */

import type { Allocation, Weights } from './allocation.ts';
import { indexBy } from './allocation.ts';
import type { LimitPrices } from './exchange-graph.ts';
import { PairShares } from './pair-shares.ts';
import { relaxedBest } from './relaxed-pair.ts';

/** A share with what every limit of it is worth. */
export interface Priced {
  /** No share within the limits is worth more. */
  readonly bound: number;
  /** Price of one flower of a source: of its offer, its dose and its pollen parent. */
  readonly cost: (source: number) => number;
  /** Price of one unit of each limit. */
  readonly flowerPrices: Float64Array;
  readonly limitPrices: LimitPrices;
  /** The best that each pair can do at these prices; null where there was too much to look at. */
  readonly pairBest: readonly (number | null)[];
}

/**
 * The most that any share of the flowers can be worth: every limit is given up at a price, and each pair then
 * takes what is best for it alone (Lagrangian duality; Fisher 1981, Management Science 27:1–18). Whatever the prices,
 * no share is worth more; with those of the best share and one pollen a pair, none is worth less either.
 *
 * @param allocation a share without gaining cycles
 * @param prices what one more unit of each limit would gain
 */
export function allocationBound(allocation: Allocation, prices: LimitPrices, weights: Weights): Priced {
  const { problem } = allocation;
  const { sources, flowers, doses, fathers, fatherMost } = problem;
  const dosePrice = (s: number) => {
    const { pollen } = sources[s]!;
    return prices.dose[pollen]! + prices.father[fathers[pollen]!]!;
  };
  const flowerPrices = flowerPricesOf(allocation, weights, dosePrice);
  const cost = (s: number) => dosePrice(s) + flowerPrices[sources[s]!.offer]!;
  const shares = new PairShares(problem, weights, cost);
  const own = indexBy(
    sources.map(({ pair }) => pair),
    problem.pairMost.length,
  );
  const pairBest = own.map((ofPair, pair) => shares.best(pair, ofPair));
  const pairs = pairBest.reduce<number>(
    (sum, best, pair) => sum + (best ?? relaxedBest(problem, weights, cost, pair, own[pair]!)),
    0,
  );
  const bound =
    paid(flowerPrices, flowers) + paid(prices.dose, doses) + paid(prices.father, fatherMost) + pairs;
  return { bound, cost, flowerPrices, limitPrices: prices, pairBest };
}

/** What all units of some limits cost; without a limit there is no price. */
export function paid(prices: Float64Array, units: ArrayLike<number>): number {
  return prices.reduce((sum, price, at) => sum + (price > 0 ? price * units[at]! : 0), 0);
}

/** What one more flower of each offer would gain. */
function flowerPricesOf(
  allocation: Allocation,
  weights: Weights,
  dosePrice: (s: number) => number,
): Float64Array {
  const { sources, flowers, pairMost } = allocation.problem;
  const prices = new Float64Array(flowers.length);
  sources.forEach(({ offer, pair }, s) => {
    if (allocation.pairUse[pair]! >= pairMost[pair]!) return;
    prices[offer] = Math.max(prices[offer]!, allocation.gain(s, weights) - dosePrice(s));
  });
  return prices;
}
