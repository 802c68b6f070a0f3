/** The rows of the grower's model: flowers that it cannot tell apart, counted together, in one fixed order. */

import { byCodePoint } from './flowers.ts';
import { dayOf, type NameFreeRanks, type Ranks } from './name-free-order.ts';
import type { AgedFlower } from './within-between.ts';

/** Flowers that no model can tell apart, counted together. */
export interface FruitRow extends AgedFlower {
  readonly fruits: number;
  readonly flowers: number;
}

/** Flowers in one fixed order, those alike in everything joined, so that neither the order of rows nor a name can matter. */
export function joinedRows(flowers: readonly AgedFlower[], ranks: NameFreeRanks): FruitRow[] {
  const texts = (pick: (flower: AgedFlower) => string) =>
    new Map([...new Set(flowers.map(pick))].sort(byCodePoint).map((text, rank) => [text, rank]));
  const storages = texts(({ storage }) => storage);
  const days = texts(({ morning }) => dayOf(morning));
  const seasons = texts(({ season }) => season);
  const rank = (order: Ranks, name: string | null) => (name === null ? -1 : order.get(name)!);
  const keyed = flowers.map((flower) => ({
    flower,
    key: [
      rank(ranks.plants, flower.seedParent),
      rank(ranks.plants, flower.pollenParent),
      storages.get(flower.storage)!,
      rank(ranks.vials, flower.vial),
      days.get(dayOf(flower.morning))!,
      rank(ranks.growers, flower.grower),
      seasons.get(flower.season)!,
      flower.ageDays,
    ],
  }));
  keyed.sort((a, b) => compareKeys(a.key, b.key));
  const rows: FruitRow[] = [];
  keyed.forEach(({ flower, key }, i) => {
    const last = rows.at(-1);
    if (last && compareKeys(keyed[i - 1]!.key, key) === 0) {
      rows[rows.length - 1] = { ...last, fruits: last.fruits + flower.fruit, flowers: last.flowers + 1 };
    } else {
      rows.push({ ...flower, fruits: flower.fruit, flowers: 1 });
    }
  });
  return rows;
}

function compareKeys(a: readonly number[], b: readonly number[]): number {
  const k = a.findIndex((value, i) => value !== b[i]);
  return k < 0 ? 0 : a[k]! - b[k]!;
}
