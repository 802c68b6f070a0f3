/** A season of 40 seed parents and 200 vials as a problem of sharing out flowers, drawn from a seed. */

import type { AllocationProblem, Source } from '../../lib/decisions/allocation.ts';
import { randomStream } from '../../lib/numerics/random.ts';
import { sourceOf } from './small-problem.ts';

const PLANTS = 40;
const VIALS = 200;
const DRAWS = 20;

/**
 * Each plant has 3 to 11 flowers; the first `fathers` of them share 200 vials of one to four doses, and give fresh pollen to two
 * plants in three.
 */
export function largeProblem(seed: number, fatherCount = PLANTS): AllocationProblem {
  const random = randomStream(seed);
  const list = <T>(length: number, of: (at: number) => T) => Array.from({ length }, (_, at) => of(at));
  const effects = (sd: number) => list(PLANTS, () => list(DRAWS, () => sd * random.normal()));
  const [mothers, fathers] = [effects(0.7), effects(0.7)];
  const lots = list(VIALS, () => list(DRAWS, () => -0.8 + 0.4 * random.normal()));
  const fresh = list(DRAWS, () => 0);
  const sources: Source[] = [];
  for (let mother = 0; mother < PLANTS; mother += 1) {
    for (let father = 0; father < fatherCount; father += 1) {
      if (mother === father) continue;
      const own = list(DRAWS, () => 0.6 * random.normal());
      const missed = (pollen: readonly number[]) =>
        own.map((pair, k) => {
          const eta = 0.3 + pair + mothers[mother]![k]! + fathers[father]![k]! + pollen[k]!;
          return 1 / (1 + Math.exp(eta));
        });
      const pair = mother * PLANTS + father;
      if ((mother + father) % 3 > 0) sources.push(sourceOf(mother, father, pair, missed(fresh)));
      for (let lot = father; lot < VIALS; lot += fatherCount) {
        sources.push(sourceOf(mother, PLANTS + lot, pair, missed(lots[lot]!)));
      }
    }
  }
  const free = (length: number) => list(length, () => Number.POSITIVE_INFINITY);
  return {
    sources,
    flowers: list(PLANTS, (plant) => 3 + (plant % 9)),
    doses: [...free(PLANTS), ...list(VIALS, (lot) => 1 + (lot % 4))],
    fathers: [...list(PLANTS, (plant) => plant), ...list(VIALS, (lot) => lot % fatherCount)],
    fatherMost: free(PLANTS),
    pairFewest: list(PLANTS * PLANTS, () => 0),
    pairMost: free(PLANTS * PLANTS),
    draws: DRAWS,
  };
}
