/** Small problems of sharing out flowers, drawn from a seed, and their best shares by trying all of them. */

import type { AllocationProblem, Source, Weights } from '../../lib/decisions/allocation.ts';
import { Allocation } from '../../lib/decisions/allocation.ts';
import { randomStream } from '../../lib/numerics/random.ts';

const DRAWS = 5;

/** A source from its chances of failing, draw by draw. */
export function sourceOf(offer: number, pollen: number, pair: number, miss: readonly number[]): Source {
  const rate = 1 - miss.reduce((sum, value) => sum + value, 0) / miss.length;
  return { offer, pollen, pair, miss: Float64Array.from(miss), rate };
}

/**
 * One to three offers of one to three flowers, one to three pollen parents with fresh pollen and up to three vials of one or
 * two doses; sometimes two offers of one seed parent, ceilings, crosses that must be tried.
 */
export function smallProblem(seed: number): AllocationProblem {
  const random = randomStream(seed);
  const below = (n: number) => Math.floor(random.uniform() * n);
  const list = <T>(length: number, of: (at: number) => T) => Array.from({ length }, (_, at) => of(at));
  const [offers, fathers, vials] = [1 + below(3), 1 + below(3), below(4)];
  const flowers = list(offers, () => 1 + below(3));
  const vialFathers = list(vials, () => below(fathers));
  const doses = [...list(fathers, () => Number.POSITIVE_INFINITY), ...vialFathers.map(() => 1 + below(2))];
  const ofPollen = [...list(fathers, (father) => father), ...vialFathers];
  const together = below(4) === 0 && offers > 1;
  const misses = new Map<string, readonly number[]>();
  const sources: Source[] = [];
  for (let offer = 0; offer < offers; offer += 1) {
    const mother = together && offer === 1 ? 0 : offer;
    for (const [pollen, father] of ofPollen.entries()) {
      if (pollen < fathers && below(2) === 0) continue;
      const key = `${mother} ${pollen}`;
      const base = random.uniform();
      const drawn = list(DRAWS, () => Math.min(0.99, Math.max(0.02, base + 0.5 * (random.uniform() - 0.5))));
      misses.set(key, misses.get(key) ?? drawn);
      sources.push(sourceOf(offer, pollen, mother * fathers + father, misses.get(key)!));
    }
  }
  const pairs = offers * fathers;
  return {
    sources,
    flowers,
    doses,
    fathers: ofPollen,
    fatherMost: list(fathers, () => (below(5) === 0 ? 2 : Number.POSITIVE_INFINITY)),
    pairFewest: list(pairs, () => (below(8) === 0 ? 1 : 0)),
    pairMost: list(pairs, () => (below(6) === 0 ? 1 : Number.POSITIVE_INFINITY)),
    draws: DRAWS,
  };
}

/** Every share within the limits, told one after the other. */
export function everyShare(problem: AllocationProblem, told: (share: Allocation) => void): void {
  const share = new Allocation(problem);
  const from = (s: number): void => {
    if (s === problem.sources.length) {
      told(share);
      return;
    }
    from(s + 1);
    let used = 0;
    while (share.idle[problem.sources[s]!.offer]! > 0 && share.hasRoom(s)) {
      share.change(s, 1);
      used += 1;
      from(s + 1);
    }
    share.change(s, -used);
  };
  from(0);
}

/** The most that any share is worth. */
export function bestByTrying(problem: AllocationProblem, weights: Weights): number {
  let best = Number.NEGATIVE_INFINITY;
  everyShare(problem, (share) => {
    best = Math.max(best, share.worth(weights));
  });
  return best;
}

/** Seeds whose problems are small enough to try all shares. */
export function seedsUpTo(last: number): number[] {
  return Array.from({ length: last }, (_, at) => at + 1).filter(
    (seed) => smallProblem(seed).sources.length <= 11,
  );
}

export const WEIGHTS: readonly Weights[] = [1 - 1e-6, 0.8, 0.5, 0.2, 1e-6].map((fruits) => ({
  fruits,
  varieties: 1 - fruits,
}));
