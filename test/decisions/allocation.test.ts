import { describe, expect, it } from 'vitest';
import { Allocation, indexBy, MUST } from '../../lib/decisions/allocation.ts';
import { randomStream } from '../../lib/numerics/random.ts';
import { smallProblem, sourceOf } from './small-problem.ts';

/** One offer of three flowers, a vial and fresh pollen of one plant, two draws. */
const problem = {
  sources: [sourceOf(0, 0, 0, [0.5, 1]), sourceOf(0, 1, 0, [0.5, 0.75])],
  flowers: [3],
  doses: [Number.POSITIVE_INFINITY, 1],
  fathers: [0, 0],
  fatherMost: [2],
  pairFewest: [1],
  pairMost: [Number.POSITIVE_INFINITY],
  draws: 2,
};

describe('Allocation', () => {
  it('counts a pair once, whatever its pollens, over draws and not at their mean', () => {
    // Exact arithmetic: chances of no fruit 0.5³ and 1 × 1 × 0.75, so 1 − (0.125 + 0.75) ÷ 2.
    const share = new Allocation({ ...problem, fatherMost: [3] });
    share.change(0, 2);
    share.change(1, 1);
    expect(share.varieties()).toBe(1 - 0.4375);
    expect(share.fruits()).toBe(2 * 0.25 + 0.375);
  });

  it('has room up to the doses of a vial and the ceilings of its plant and its pair', () => {
    const share = new Allocation(problem);
    expect([share.hasRoom(0), share.hasRoom(1)]).toEqual([true, true]);
    share.change(1, 1);
    expect([share.hasRoom(0), share.hasRoom(1)]).toEqual([true, false]);
    share.change(0, 1);
    expect(share.hasRoom(0)).toBe(false);
    const once = new Allocation({ ...problem, pairMost: [1] });
    once.change(0, 1);
    expect([once.hasRoom(0), once.hasRoom(1)]).toEqual([false, false]);
  });

  it('puts flowers towards the fewest of a pair before all else', () => {
    const share = new Allocation(problem);
    const weights = { fruits: 0.5, varieties: 0.5 };
    expect(share.gain(0, weights)).toBe(MUST + 0.25);
    share.change(0, 1);
    expect(share.gain(0, weights)).toBeLessThan(1);
    expect(share.loss(0, weights)).toBe(MUST + 0.25);
    expect(share.worth(weights)).toBe(MUST + 0.25);
  });

  it('says of each flower more, fewer or exchanged what it then is worth', () => {
    const weights = { fruits: 0.3, varieties: 0.7 };
    for (let seed = 1; seed <= 60; seed += 1) {
      const share = new Allocation({
        ...smallProblem(seed),
        pairFewest: smallProblem(seed).pairMost.map(() => 0),
      });
      const random = randomStream(seed);
      const { sources } = share.problem;
      for (let step = 0; step < 6; step += 1) {
        const s = Math.floor(random.uniform() * sources.length);
        if (sources.length === 0) break;
        const before = share.worth(weights);
        const gain = share.gain(s, weights);
        share.change(s, 1);
        expect(share.worth(weights) - before).toBeCloseTo(gain, 12);
        expect(share.loss(s, weights)).toBeCloseTo(gain, 12);
        const t = sources.findIndex(({ pair }, other) => pair === sources[s]!.pair && other !== s);
        if (t < 0) continue;
        const swapped = share.swap(s, t, weights);
        const held = share.worth(weights);
        share.change(s, -1);
        share.change(t, 1);
        expect(share.worth(weights) - held).toBeCloseTo(swapped, 12);
      }
    }
  });
});

describe('indexBy', () => {
  it('lists the positions of each code', () => {
    expect(indexBy([1, 0, 1], 3)).toEqual([[1], [0, 2], []]);
  });
});
