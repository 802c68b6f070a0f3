import { describe, expect, it } from 'vitest';
import type { AllocationProblem } from '../../lib/decisions/allocation.ts';
import { MUST } from '../../lib/decisions/allocation.ts';
import { relaxedBest } from '../../lib/decisions/relaxed-pair.ts';
import { randomStream } from '../../lib/numerics/random.ts';
import { sourceOf } from './small-problem.ts';

/** One pair: an offer of three flowers, three vials of two doses, six draws, and a price for each vial. */
function onePair(seed: number): { problem: AllocationProblem; prices: readonly number[] } {
  const random = randomStream(seed);
  const vials = [0, 1, 2];
  const misses = () => Array.from({ length: 6 }, () => 0.05 + 0.9 * random.uniform());
  return {
    problem: {
      sources: vials.map((vial) => sourceOf(0, vial, 0, misses())),
      flowers: [3],
      doses: [2, 2, 2],
      fathers: [0, 0, 0],
      fatherMost: [Number.POSITIVE_INFINITY],
      pairFewest: [0],
      pairMost: [Number.POSITIVE_INFINITY],
      draws: 6,
    },
    prices: vials.map(() => 0.6 * random.uniform()),
  };
}

/** The best of all shares of the pair, worked out one by one from what a share gives. */
function bestByTrying({ problem, prices }: ReturnType<typeof onePair>, fruits: number): number {
  let best = 0;
  for (let a = 0; a <= 2; a += 1) {
    for (let b = 0; b <= 2; b += 1) {
      for (let c = 0; a + b + c <= 3 && c <= 2; c += 1) {
        const counts = [a, b, c];
        let missed = 0;
        for (let k = 0; k < 6; k += 1)
          missed += counts.reduce((chance, n, s) => chance * problem.sources[s]!.miss[k]! ** n, 1) / 6;
        const plain = counts.reduce(
          (sum, n, s) => sum + n * (fruits * problem.sources[s]!.rate - prices[s]!),
          0,
        );
        best = Math.max(best, plain + (1 - fruits) * (1 - missed));
      }
    }
  }
  return best;
}

describe('relaxedBest', () => {
  const sources = [0, 1, 2];

  it('is never below the best of all shares, and seldom far above', () => {
    let above = 0;
    for (let seed = 1; seed <= 300; seed += 1) {
      const pair = onePair(seed);
      const fruits = (seed % 10) / 10;
      const best = bestByTrying(pair, fruits);
      const weights = { fruits, varieties: 1 - fruits };
      const bound = relaxedBest(pair.problem, weights, (s) => pair.prices[s]!, 0, sources);
      expect(bound, `seed ${seed}`).toBeGreaterThan(best - 1e-9);
      expect(bound - best, `seed ${seed}`).toBeLessThan(0.35);
      above += bound - best;
    }
    expect(above / 300).toBeLessThan(0.05);
  });

  it('is the best itself where only fruits count: then nothing bends', () => {
    for (let seed = 1; seed <= 50; seed += 1) {
      const pair = onePair(seed);
      const bound = relaxedBest(
        pair.problem,
        { fruits: 1, varieties: 0 },
        (s) => pair.prices[s]!,
        0,
        sources,
      );
      expect(bound, `seed ${seed}`).toBeCloseTo(bestByTrying(pair, 1), 9);
    }
  });

  it('adds the flowers that must be tried', () => {
    const { problem, prices } = onePair(1);
    const weights = { fruits: 0.5, varieties: 0.5 };
    const free = relaxedBest(problem, weights, (s) => prices[s]!, 0, sources);
    const bound = relaxedBest({ ...problem, pairFewest: [5] }, weights, (s) => prices[s]!, 0, sources);
    expect(bound).toBeCloseTo(3 * MUST + free, 8);
  });
});
