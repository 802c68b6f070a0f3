/** The seed parents in question: those that next season offers, else those used so far. */

import type { ExpectedFlowers } from '../season/season.ts';
import type { Flower } from './flowers.ts';
import { byCodePoint } from './flowers.ts';
import type { PooledPair } from './pairs.ts';

/** A seed parent with its weight in an average. */
export interface WeightedParent {
  readonly seedParent: string;
  readonly weight: number;
}

/** Seed parents by number of flowers: of the flowers file where there is one, else of the used crosses. */
export function seedParents(
  flowers: readonly Flower[],
  expected: readonly ExpectedFlowers[],
): WeightedParent[] {
  const counts = new Map<string, number>();
  const add = (seedParent: string, count: number) =>
    counts.set(seedParent, (counts.get(seedParent) ?? 0) + count);
  if (expected.length > 0) for (const { seedParent, flowers: count } of expected) add(seedParent, count);
  else for (const { seedParent } of flowers) add(seedParent, 1);
  const named = [...counts].filter(([, count]) => count > 0).sort(([a], [b]) => byCodePoint(a, b));
  return shares(named.map(([seedParent, weight]) => ({ seedParent, weight })));
}

/** Pairs named incompatible, as a question. */
export function incompatiblePairs(pairs: readonly PooledPair[]): (mother: string, father: string) => boolean {
  const named = new Map<string, Set<string>>();
  for (const { seedParent, pollenParent } of pairs.filter((pair) => pair.named)) {
    const fathers = named.get(seedParent) ?? new Set<string>();
    named.set(seedParent, fathers.add(pollenParent));
  }
  return (mother, father) => named.get(mother)?.has(father) ?? false;
}

/** The seed parents that a pollen parent is for: its own plant and incompatible pairs left out. */
export function seedParentsFor(
  pollenParent: string,
  all: readonly WeightedParent[],
  incompatible: (mother: string, father: string) => boolean,
): WeightedParent[] {
  return shares(
    all.filter(({ seedParent }) => seedParent !== pollenParent && !incompatible(seedParent, pollenParent)),
  );
}

function shares(parents: readonly WeightedParent[]): WeightedParent[] {
  const total = parents.reduce((sum, { weight }) => sum + weight, 0);
  return parents.map(({ seedParent, weight }) => ({ seedParent, weight: weight / total }));
}
