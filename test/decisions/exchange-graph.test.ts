import { describe, expect, it } from 'vitest';
import { Allocation } from '../../lib/decisions/allocation.ts';
import { ExchangeGraph } from '../../lib/decisions/exchange-graph.ts';
import { sourceOf } from './small-problem.ts';

/** Two offers of one flower each and a vial of one dose: the first does well without it, the second has nothing else. */
const problem = {
  sources: [sourceOf(0, 0, 0, [0.4]), sourceOf(0, 1, 1, [0.25]), sourceOf(1, 1, 3, [0.5])],
  flowers: [1, 1],
  doses: [Number.POSITIVE_INFINITY, 1],
  fathers: [0, 1],
  fatherMost: [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY],
  pairFewest: [0, 0, 0, 0],
  pairMost: [
    Number.POSITIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    Number.POSITIVE_INFINITY,
  ],
  draws: 1,
};
const fruits = { fruits: 1, varieties: 0 };

function greedy(): Allocation {
  const share = new Allocation(problem);
  share.change(1, 1);
  return share;
}

describe('ExchangeGraph', () => {
  it('finds the exchange that frees a dose for another flower', () => {
    const graph = new ExchangeGraph(greedy(), fruits);
    graph.build();
    const moves = graph.moves(graph.cycle()!);
    const changes = new Map<number, number>();
    for (const { from, to } of moves) {
      if (from >= 0) changes.set(from, (changes.get(from) ?? 0) - 1);
      if (to >= 0) changes.set(to, (changes.get(to) ?? 0) + 1);
    }
    expect([...changes].sort()).toEqual([
      [0, 1],
      [1, -1],
      [2, 1],
    ]);
  });

  it('has no cycle that gains at the best share, where a dose is worth what it would add', () => {
    const share = new Allocation(problem);
    share.change(0, 1);
    share.change(2, 1);
    const graph = new ExchangeGraph(share, fruits);
    graph.build();
    expect(graph.cycle()).toBeNull();
    // One dose more: the first flower would give 0.75 instead of 0.6 fruits.
    expect(graph.prices().dose[1]).toBeCloseTo(0.15, 12);
    expect(graph.prices().dose[0]).toBe(0);
  });

  it('leaves barred moves out until they are forgiven', () => {
    const graph = new ExchangeGraph(greedy(), fruits);
    graph.build();
    graph.bar([...graph.moves(graph.cycle()!)]);
    graph.build();
    expect(graph.cycle()).toBeNull();
    graph.forgive();
    graph.build();
    expect(graph.cycle()).not.toBeNull();
  });
});
