/** What is told of seeds: which pair first, what all crosses come to. */

import type { SeedList, SeedListEntry } from '../../analysis/seed-list.ts';
import type { Seeds, SeedYield } from '../../analysis/seeds.ts';

/** Fewest counted fruits for a pair to be named as the one that gives most. */
const FEWEST_FRUITS = 3;

/** The pair that gives most seed a flower by its cautious end. */
export function bestByCautiousEnd(byPair: Seeds['byPair']): Seeds['byPair'][number] | undefined {
  return byPair
    .filter(
      ({ seedAFlower, seedsPerFruit }: SeedYield) =>
        seedAFlower.lower !== null && seedsPerFruit.fruits >= FEWEST_FRUITS,
    )
    .sort((a, b) => b.seedAFlower.lower! - a.seedAFlower.lower!)[0];
}

/** Methods whose seed a flower is known, two at most. */
export function knownYields(byStorage: Seeds['byStorage']): Seeds['byStorage'] {
  return byStorage.filter(({ seedAFlower }) => seedAFlower.estimate !== null).slice(0, 2);
}

/** The entries of one seed parent. */
export interface SeedGroup {
  readonly seedParent: string;
  readonly entries: readonly SeedListEntry[];
}

/**
 * The entries of a seed list by seed parent, in their order.
 *
 * @example
 * seedGroups({ entries: [] }).length // 0
 */
export function seedGroups({ entries }: Pick<SeedList, 'entries'>): readonly SeedGroup[] {
  const groups = new Map<string, SeedListEntry[]>();
  for (const entry of entries) groups.set(entry.seedParent, [...(groups.get(entry.seedParent) ?? []), entry]);
  return [...groups].map(([seedParent, own]) => ({ seedParent, entries: own }));
}

/** What the entries of a seed list come to together. */
export function seedTotals({ entries }: Pick<SeedList, 'entries'>) {
  const total = (of: (entry: SeedListEntry) => number) => entries.reduce((sum, entry) => sum + of(entry), 0);
  const crosses = new Set(
    entries.map(({ seedParent, pollenParent }) => JSON.stringify([seedParent, pollenParent])),
  );
  return {
    crosses: crosses.size,
    fruits: total((entry) => entry.fruits),
    countedFruits: total((entry) => entry.countedFruits),
    seeds: total((entry) => entry.seeds),
    unsown: total((entry) => entry.unsown),
  };
}
