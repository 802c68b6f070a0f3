/**
 * Columns of a within–between model: what tells pollen from pair.
 *
 * Frozen pollen goes to other pairs than fresh does, and random pair effects do not remove that, for they assume
 * that pair and storage are independent. With each pair's share of a method and its mean age as terms of their
 * own, the storage and age terms are left with what happens within pairs (Mundlak 1978, Econometrica 46:69–85;
 * Neuhaus & Kalbfleisch 1998, Biometrics 54:638–645).
 */

import type { Flower } from './flowers.ts';

/** A flower whose pollen has a known age. */
export interface AgedFlower extends Flower {
  readonly ageDays: number;
}

export type WithinBetweenRole = 'storage' | 'age' | 'share' | 'meanAge';

export interface WithinBetweenColumn {
  /** For instance `storage: frozen`, `age: frozen`, `share: frozen`, `mean age: frozen`. */
  readonly name: string;
  readonly role: WithinBetweenRole;
  readonly storage: string;
  /** One entry a flower. */
  readonly values: Float64Array;
}

/** Those flowers whose pollen age is known: the rows of every age model. */
export function agedFlowers(flowers: readonly Flower[]): AgedFlower[] {
  return flowers.filter((flower): flower is AgedFlower => flower.ageDays !== null);
}

/**
 * The columns for each of some methods: storage and age within pairs, share and mean age between them.
 *
 * @param flowers n flowers with known ages
 * @param methods storage methods to be told from the reference (fresh pollen, where there is any)
 * @param term the age term of a flower of a method, from its age in days
 * @returns per method `storage` (0 or 1), `age` (the term, 0 for other methods), `share` and `meanAge` (the means
 *   of those two over the flower's pair)
 */
export function withinBetween(
  flowers: readonly AgedFlower[],
  methods: readonly string[],
  term: (ageDays: number, storage: string) => number,
): WithinBetweenColumn[] {
  return methods.flatMap((storage) => {
    const isMethod = Float64Array.from(flowers, (flower) => (flower.storage === storage ? 1 : 0));
    const age = Float64Array.from(flowers, (flower, i) => (isMethod[i] ? term(flower.ageDays, storage) : 0));
    const column = (role: WithinBetweenRole, label: string, values: Float64Array): WithinBetweenColumn => ({
      name: `${label}: ${storage}`,
      role,
      storage,
      values,
    });
    return [
      column('storage', 'storage', isMethod),
      column('age', 'age', age),
      column('share', 'share', pairMeans(flowers, isMethod)),
      column('meanAge', 'mean age', pairMeans(flowers, age)),
    ];
  });
}

/** Each flower's mean of a column over its pair. */
export function pairMeans(flowers: readonly Flower[], values: Float64Array): Float64Array {
  const sums = new Map<number, { sum: number; count: number }>();
  flowers.forEach(({ pair }, i) => {
    const entry = sums.get(pair) ?? { sum: 0, count: 0 };
    sums.set(pair, { sum: entry.sum + values[i]!, count: entry.count + 1 });
  });
  return Float64Array.from(flowers, ({ pair }) => {
    const { sum, count } = sums.get(pair)!;
    return sum / count;
  });
}
