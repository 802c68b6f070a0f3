/** Key `pairs`: every ordered pair seen, pooled towards its parents. */

import type { Proportion } from '../proportions/interval.ts';
import { unknown } from '../proportions/interval.ts';
import type { Flower } from './flowers.ts';
import { averagedRate } from './fruit-rate.ts';
import type { Predictor } from './predictor.ts';
import { summarise } from './summary.ts';

/** What a pair's estimate is for: fresh pollen, or the commonest stored method at its median age. */
export interface PairBasis {
  readonly storage: string;
  readonly ageDays: number;
}

/** One entry of key `pairs`: every ordered pair seen, pooled towards its parents. */
export interface PooledPair extends Proportion {
  readonly seedParent: string;
  readonly pollenParent: string;
  /** Raw rate of this pair, all storage methods together (its range is in `raw.byPair`). */
  readonly rawRate: number | null;
  /** What the estimate is for: `fresh`, or the commonest stored method with its median age. */
  readonly basis: PairBasis;
  /** Probability that the two are incompatible: no fruit whatever the pollen. */
  readonly incompatible: number | null;
  /** Whether that is at least `NAMED_INCOMPATIBLE`, unrounded: the one rule for charts, tables, averages and the plan. */
  readonly named: boolean;
}

/** From this probability on a pair is named incompatible and left out of averages and of the plan. */
export const NAMED_INCOMPATIBLE = 0.8;

/** Counts of one ordered pair. */
export interface PairCount {
  readonly seedParent: string;
  readonly pollenParent: string;
  readonly fruits: number;
  readonly flowers: number;
}

/** The ordered pairs of some flowers with their counts, in the order of their first flower. */
export function pairCounts(flowers: readonly Flower[]): PairCount[] {
  const counts = new Map<number, PairCount>();
  for (const { pair, seedParent, pollenParent, fruit } of flowers) {
    const seen = counts.get(pair) ?? { seedParent, pollenParent, fruits: 0, flowers: 0 };
    counts.set(pair, { ...seen, fruits: seen.fruits + fruit, flowers: seen.flowers + 1 });
  }
  return [...counts.values()];
}

/**
 * Pooled pairs: each pair's estimate leans on its parents' other crosses the more, the fewer flowers it has of its
 * own (general and specific combining ability).
 *
 * @param predict null where the model could not be fitted; then estimates are null because of `because`
 */
export function pooledPairs(
  counts: readonly PairCount[],
  predict: Predictor | null,
  basis: PairBasis,
  { level, because }: { readonly level: number; readonly because: string },
): PooledPair[] {
  return counts.map((count) => {
    const known = { ...count, basis, rawRate: count.flowers > 0 ? count.fruits / count.flowers : null };
    const added = predict?.storage(basis.storage, basis.ageDays) ?? null;
    if (predict === null || added === null)
      return { ...known, ...unknown(because), incompatible: null, named: false };
    const spread = basis.storage === 'fresh' ? predict.occasion : predict.occasionAndVial;
    const eta = predict.pair(count.seedParent, count.pollenParent);
    const rates = eta.map((value, k) =>
      value === Number.NEGATIVE_INFINITY ? 0 : averagedRate(value + added[k]!, spread[k]!),
    );
    const barren = eta.reduce((sum, value) => sum + (value === Number.NEGATIVE_INFINITY ? 1 : 0), 0);
    const incompatible = barren / eta.length;
    return {
      ...known,
      ...summarise(rates, level),
      incompatible,
      named: incompatible >= NAMED_INCOMPATIBLE,
    };
  });
}
