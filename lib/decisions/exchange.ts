/** The best share of flowers for given weights: greedy first, then exchanges along gaining cycles. */

import type { AllocationProblem, Weights } from './allocation.ts';
import { Allocation, indexBy } from './allocation.ts';
import { allocationBound } from './allocation-bound.ts';
import { betterShare } from './allocation-search.ts';
import type { Move } from './exchange-graph.ts';
import { ExchangeGraph, LEAST } from './exchange-graph.ts';

/** A share must be better by this much to count as better. */
const BETTER = 1e-10;

/** A best share. */
export interface BestAllocation {
  readonly allocation: Allocation;
  /** No share within the limits is worth more by more than this: 0 where it is known to be the best. */
  readonly within: number;
}

/**
 * Shares flowers out for the most of fruits × weight + varieties × weight.
 *
 * Starts with whatever flower gains most, then moves flowers along cycles of exchanges (a flower goes from vial a to
 * vial b, another takes the dose it left, …) while one gains. Where each pair has one pollen, what a pair gives is a
 * concave function of one flow, and a flow without a gaining cycle is the best there is (Ahuja, Magnanti & Orlin 1993,
 * Network Flows, chapter 14). Where a pair has several pollens, their chances act together: then a bound by prices
 * says how far the share can be from the best, and a search looks at all that the bound leaves, as far as it can.
 *
 * @returns the share, and within how much it is known to be the best
 */
export function bestAllocation(problem: AllocationProblem, weights: Weights): BestAllocation {
  const allocation = new Allocation(problem);
  fillGreedily(allocation, weights);
  const graph = new ExchangeGraph(allocation, weights);
  graph.build();
  while (improve(graph)) graph.build();
  const priced = allocationBound(allocation, graph.prices(), weights);
  const { counts, complete } = betterShare(allocation, priced, weights, BETTER);
  if (counts !== null) settle(allocation, counts);
  return { allocation, within: complete ? 0 : Math.max(0, priced.bound - allocation.worth(weights)) };
}

function settle(allocation: Allocation, counts: Int32Array): void {
  counts.forEach((count, s) => {
    const by = count - allocation.counts[s]!;
    if (by !== 0) allocation.change(s, by);
  });
}

/** One flower after the other, each where it gains most. */
function fillGreedily(allocation: Allocation, weights: Weights): void {
  const { sources, flowers } = allocation.problem;
  const ofOffer = indexBy(
    sources.map(({ offer }) => offer),
    flowers.length,
  );
  const best = ofOffer.map((own) => bestSource(allocation, weights, own));
  const gainOf = (s: number) => (s < 0 ? 0 : allocation.gain(s, weights));
  for (;;) {
    best.forEach((s, offer) => {
      const open = s >= 0 && allocation.idle[offer]! > 0;
      if (s >= 0 && !(open && allocation.hasRoom(s))) {
        best[offer] = open ? bestSource(allocation, weights, ofOffer[offer]!) : -1;
      }
    });
    const next = best.reduce((a, b) => (gainOf(b) > gainOf(a) ? b : a), -1);
    if (next < 0) return;
    allocation.change(next, 1);
    const { pair } = sources[next]!;
    best.forEach((s, offer) => {
      if (s >= 0 && sources[s]!.pair === pair) best[offer] = bestSource(allocation, weights, ofOffer[offer]!);
    });
  }
}

/** The source with room whose next flower gains most; −1 where none gains. */
function bestSource(allocation: Allocation, weights: Weights, sources: readonly number[]): number {
  let best = -1;
  let most = 0;
  for (const s of sources) {
    const gain = allocation.gain(s, weights);
    if (gain > most && allocation.hasRoom(s)) {
      most = gain;
      best = s;
    }
  }
  return best;
}

/** Carries out one gaining cycle; false where there is none. A cycle that did not keep its promise is taken back. */
function improve(graph: ExchangeGraph): boolean {
  for (;;) {
    const cycle = graph.cycle();
    if (cycle === null) return false;
    const { allocation, weights } = graph;
    const before = allocation.worth(weights);
    const moves = graph.moves(cycle);
    carryOut(allocation, moves, 1);
    if (allocation.worth(weights) > before + LEAST) {
      graph.forgive();
      return true;
    }
    carryOut(allocation, moves, -1);
    graph.bar(moves);
    graph.build();
  }
}

function carryOut(allocation: Allocation, moves: readonly Move[], by: 1 | -1): void {
  for (const { from, to } of moves) {
    if (from >= 0) allocation.change(from, -by);
    if (to >= 0) allocation.change(to, by);
  }
}
