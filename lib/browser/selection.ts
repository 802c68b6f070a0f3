/** Which flowers a reader has chosen, and the counts of those: nothing of the page is known here. */

import { byCodePoint, storageOrder } from '../analysis/flowers.ts';
import { gather } from '../analysis/gather.ts';
import { proportionOf } from '../analysis/proportion.ts';
import { AGE_BANDS } from '../analysis/raw.ts';
import type { Proportion } from '../proportions/interval.ts';
import type { ExploredBy } from '../words/told/choices.ts';
import type { ExploredFlower } from './explored-flowers.ts';

/** What can be chosen, in the order of the page. */
export const DIMENSIONS: readonly ExploredBy[] = ['storage', 'age', 'season', 'seedParent', 'pollenParent'];
export type Dimension = ExploredBy;

/** The chosen values of each dimension; null where all of them are. */
export type Selection = ReadonlyMap<Dimension, ReadonlySet<string> | null>;

/** The age of pollen that no file tells. */
export const UNKNOWN_AGE = 'unknown';

/** Level of every range on the page, as of the report. */
const LEVEL = 0.95;

/** A value of a dimension with the flowers that all other choices leave to it, and whether it is itself chosen. */
export interface Group extends Proportion {
  readonly key: string;
  readonly chosen: boolean;
}

/** The first day of the band of ages that a flower's pollen is in. */
function ageKey(ageDays: number | null): string {
  const band = AGE_BANDS.find(
    ([from, to]) => ageDays !== null && ageDays >= from && (to === null || ageDays <= to),
  );
  return band === undefined ? UNKNOWN_AGE : String(band[0]);
}

function keyOf(flower: ExploredFlower, dimension: Dimension): string {
  return dimension === 'age' ? ageKey(flower.ageDays) : flower[dimension];
}

/** The values of a dimension that occur: fresh first, ages from young to old and the unknown last, names by code point. */
export function keysOf(flowers: readonly ExploredFlower[], dimension: Dimension): string[] {
  if (dimension === 'storage') return storageOrder(flowers);
  const keys = [...new Set(flowers.map((flower) => keyOf(flower, dimension)))];
  if (dimension !== 'age') return keys.sort(byCodePoint);
  const place = (key: string) => (key === UNKNOWN_AGE ? Number.MAX_SAFE_INTEGER : Number(key));
  return keys.sort((a, b) => place(a) - place(b));
}

/** Every flower is chosen. */
export const everything: Selection = new Map(DIMENSIONS.map((dimension) => [dimension, null]));

/** The selection with these values of one dimension; none of them chosen is a choice too, and leaves no flower. */
export function withChosen(
  selection: Selection,
  dimension: Dimension,
  keys: ReadonlySet<string> | null,
): Selection {
  return new Map(selection).set(dimension, keys);
}

/** One value alone; all values again where it was alone already. */
export function alone(selection: Selection, dimension: Dimension, key: string): Selection {
  const chosen = selection.get(dimension);
  const already = chosen?.size === 1 && chosen.has(key);
  return withChosen(selection, dimension, already ? null : new Set([key]));
}

/**
 * The flowers that fit every choice.
 *
 * @param except a dimension whose choice does not count, for a chart that shows what else could be chosen there
 */
export function chosenFlowers(
  flowers: readonly ExploredFlower[],
  selection: Selection,
  except?: Dimension,
): ExploredFlower[] {
  const asked = DIMENSIONS.filter((dimension) => dimension !== except);
  return flowers.filter((flower) =>
    asked.every((dimension) => selection.get(dimension)?.has(keyOf(flower, dimension)) ?? true),
  );
}

/** All values of a dimension with the counts that the other choices leave to each, those without a flower too. */
export function groupsOf(
  flowers: readonly ExploredFlower[],
  selection: Selection,
  dimension: Dimension,
): Group[] {
  const left = new Map(
    gather(chosenFlowers(flowers, selection, dimension), (flower) => keyOf(flower, dimension)),
  );
  const chosen = selection.get(dimension) ?? null;
  return keysOf(flowers, dimension).map((key) => ({
    key,
    chosen: chosen?.has(key) ?? true,
    ...proportionOf(left.get(key) ?? [], LEVEL),
  }));
}

/** The counts of a list of flowers, with Wilson's interval. */
export function totalOf(flowers: readonly ExploredFlower[]): Proportion {
  return proportionOf(flowers, LEVEL);
}

/** The counts of each ordered pair among some flowers, most flowers first. */
export function pairsOf(
  flowers: readonly ExploredFlower[],
): (Proportion & { readonly seedParent: string; readonly pollenParent: string })[] {
  return gather(flowers, ({ seedParent }) => seedParent)
    .flatMap(([seedParent, ofMother]) =>
      gather(ofMother, ({ pollenParent }) => pollenParent).map(([pollenParent, ofPair]) => ({
        seedParent,
        pollenParent,
        ...totalOf(ofPair),
      })),
    )
    .sort((a, b) => b.flowers - a.flowers);
}
