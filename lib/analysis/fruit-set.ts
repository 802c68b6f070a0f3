import type { Proportion } from '../proportions/interval.ts';
import { type Endpoint, fruitAt, recordsHarvests, type Season } from '../season/season.ts';
import { crossesOf, type NamedCross, storageOrder } from './flowers.ts';
import { proportionOf } from './proportion.ts';

/** Fruit set at the check and at harvest. */
export interface BothFruitSets {
  /** Fruits at the check ÷ flowers pollinated: `fruit` and `dropped` count as set. */
  readonly initial: Proportion;
  /** Fruits harvested ÷ flowers pollinated: what dropped counts as none, what still hangs is left out. */
  readonly final: Proportion;
  /** Fruits harvested ÷ fruits at the check whose end is known. */
  readonly kept: Proportion;
}

/** Key `fruitSet` of the analysis: initial and final fruit set side by side, whatever the endpoint of the rest. */
export interface FruitSet extends BothFruitSets {
  /** Whether harvest dates are recorded; without them every fruit that did not drop counts as harvested. */
  readonly harvestsRecorded: boolean;
  readonly byStorage: readonly (BothFruitSets & { readonly storage: string })[];
}

function bothOf(crosses: readonly NamedCross[], harvestsRecorded: boolean, level: number): BothFruitSets {
  const at = (endpoint: Endpoint) => crosses.map((cross) => fruitAt(cross, endpoint, harvestsRecorded));
  const rateOf = (fruits: readonly (0 | 1 | null)[]) =>
    proportionOf(
      fruits.filter((fruit) => fruit !== null).map((fruit) => ({ fruit })),
      level,
    );
  const [initial, final] = [at('initial'), at('final')];
  return {
    initial: rateOf(initial),
    final: rateOf(final),
    kept: rateOf(final.filter((_, i) => initial[i] === 1)),
  };
}

/**
 * Initial and final fruit set, side by side.
 *
 * Answers: how many of the fruits that set came to harvest? Both are over crosses whose outcome is known at that
 * endpoint, so the final one may rest on fewer flowers.
 *
 * @param season the season as read; its own endpoint does not matter here
 * @param options `level` of the ranges (Wilson), a proportion in (0, 1), 0.95 by default
 * @example
 * fruitSet(season).kept.estimate; // fruits harvested ÷ fruits set
 */
export function fruitSet(season: Season, { level = 0.95 }: { readonly level?: number } = {}): FruitSet {
  const harvestsRecorded = recordsHarvests(season.crosses);
  const crosses = crossesOf(season);
  const known = crosses.filter((cross) => fruitAt(cross, 'initial', harvestsRecorded) !== null);
  return {
    ...bothOf(crosses, harvestsRecorded, level),
    harvestsRecorded,
    byStorage: storageOrder(known).map((storage) => ({
      storage,
      ...bothOf(
        crosses.filter((cross) => cross.storage === storage),
        harvestsRecorded,
        level,
      ),
    })),
  };
}
