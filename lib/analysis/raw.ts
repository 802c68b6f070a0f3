import type { Estimate, Proportion } from '../proportions/interval.ts';
import { newcombe } from '../proportions/two-sample.ts';
import type { Control, Season } from '../season/season.ts';
import { fruitAt, recordsHarvests } from '../season/season.ts';
import { crossesOf, type Flower, storageOrder, usedFlowers } from './flowers.ts';
import { gather } from './gather.ts';
import { proportion, proportionOf } from './proportion.ts';

/** What the rate would be if every lost tag had hidden a failure (`lowest`) or a fruit (`highest`). */
export interface LostTagBounds {
  readonly lost: number;
  readonly lowest: Proportion;
  readonly highest: Proportion;
}

/** Bounds for the difference fresh minus stored, when the lost tags of both are taken at their worst. */
export interface LostTagDifference {
  readonly storage: string;
  readonly lowest: Estimate;
  readonly highest: Estimate;
}

export interface AgeBand extends Proportion {
  readonly storage: string;
  /** First and last day of the band; `to` is null for the open last band (366 days and more). */
  readonly from: number;
  readonly to: number | null;
}

/** Key `raw` of the analysis: counts and rates as they stand, no model. */
export interface RawRates {
  readonly overall: Proportion;
  readonly lostTags: {
    readonly overall: LostTagBounds;
    readonly byStorage: readonly (LostTagBounds & { readonly storage: string })[];
    readonly difference: readonly LostTagDifference[];
  };
  readonly byStorage: readonly (Proportion & { readonly storage: string })[];
  readonly bySeedParent: readonly (Proportion & { readonly seedParent: string })[];
  readonly byPollenParent: readonly (Proportion & { readonly pollenParent: string })[];
  readonly byPair: readonly (Proportion & { readonly seedParent: string; readonly pollenParent: string })[];
  readonly byAge: readonly AgeBand[];
  readonly controls: readonly (Proportion & { readonly control: string })[];
}

/** First and last day of each band of pollen age, as the trade speaks of them; the last is open. */
export const AGE_BANDS: readonly (readonly [number, number | null])[] = [
  [0, 0],
  [1, 2],
  [3, 7],
  [8, 14],
  [15, 30],
  [31, 90],
  [91, 180],
  [181, 365],
  [366, null],
];

const CONTROLS: readonly Control[] = ['unpollinated', 'selfed'];

function ratesByPair(flowers: readonly Flower[], level: number): RawRates['byPair'] {
  return gather(flowers, ({ seedParent }) => seedParent).flatMap(([seedParent, ofMother]) =>
    gather(ofMother, ({ pollenParent }) => pollenParent).map(([pollenParent, ofPair]) => ({
      seedParent,
      pollenParent,
      ...proportionOf(ofPair, level),
    })),
  );
}

function ratesByAge(flowers: readonly Flower[], storages: readonly string[], level: number): AgeBand[] {
  const bands: AgeBand[] = [];
  for (const storage of storages) {
    for (const [from, to] of AGE_BANDS) {
      const inBand = flowers.filter(
        ({ storage: kept, ageDays }) =>
          kept === storage && ageDays !== null && ageDays >= from && (to === null || ageDays <= to),
      );
      if (inBand.length > 0) bands.push({ storage, from, to, ...proportionOf(inBand, level) });
    }
  }
  return bands;
}

function ratesOfControls(season: Season, level: number): RawRates['controls'] {
  const harvestsRecorded = recordsHarvests(season.crosses);
  return CONTROLS.flatMap((control) => {
    const fruits = season.crosses
      .filter((cross) => cross.control === control)
      .map((cross) => fruitAt(cross, season.endpoint, harvestsRecorded))
      .filter((fruit) => fruit !== null)
      .map((fruit) => ({ fruit }));
    return fruits.length === 0 ? [] : [{ control, ...proportionOf(fruits, level) }];
  });
}

function boundsFor(flowers: readonly Flower[], lost: number, level: number): LostTagBounds {
  const fruits = flowers.reduce((sum, { fruit }) => sum + fruit, 0);
  return {
    lost,
    lowest: proportion(fruits, flowers.length + lost, level),
    highest: proportion(fruits + lost, flowers.length + lost, level),
  };
}

/** Newcombe's interval of the difference of two proportions that both have flowers. */
function differenceOf(first: Proportion, second: Proportion, level: number): Estimate {
  return newcombe(first.fruits, first.flowers, second.fruits, second.flowers, { level });
}

function lostTags(season: Season, flowers: readonly Flower[], level: number): RawRates['lostTags'] {
  const lost = crossesOf(season).filter(({ outcome }) => outcome === 'unknown');
  const byStorage = storageOrder([...flowers, ...lost]).map((storage) => {
    const ofStorage = flowers.filter((flower) => flower.storage === storage);
    const lostOfStorage = lost.filter((cross) => cross.storage === storage).length;
    return { storage, ...boundsFor(ofStorage, lostOfStorage, level) };
  });
  const fresh = byStorage.find(({ storage }) => storage === 'fresh');
  const stored = byStorage.filter(({ storage }) => storage !== 'fresh');
  return {
    overall: boundsFor(flowers, lost.length, level),
    byStorage,
    difference: fresh
      ? stored.map(({ storage, lowest, highest }) => ({
          storage,
          lowest: differenceOf(fresh.lowest, highest, level),
          highest: differenceOf(fresh.highest, lowest, level),
        }))
      : [],
  };
}

/**
 * Raw rates: fruits of flowers by storage, parent, pair and pollen age, as they stand.
 *
 * Answers: how many of my flowers took? Not for comparing fresh and stored pollen (it goes to other pairs:
 * `freshVersusStored`) nor for ranking pairs of a few flowers (`pairs`). Storage methods stand with fresh first,
 * then by number of flowers; plants in code-point order of their names; only groups with a used flower are listed
 * (methods whose tags were all lost still stand in `lostTags`). Stored flowers of unknown age are in no age band.
 *
 * @param season the season as read
 * @param options `level`: confidence level of the ranges, a proportion in (0, 1), 0.95 by default
 * @returns proportions with Wilson's score interval; for lost tags the rate had all failed and had all taken
 * @throws RangeError where `level` is not between 0 and 1
 * @see Wilson (1927) J Am Stat Assoc 22:209; Newcombe (1998) Stat Med 17:873, method 10
 * @example
 * rawRates(season).byStorage[0]; // { storage: 'fresh', fruits: 8, flowers: 16, estimate: 0.5, ... }
 */
export function rawRates(season: Season, { level = 0.95 }: { readonly level?: number } = {}): RawRates {
  const flowers = usedFlowers(season);
  const storages = storageOrder(flowers);
  return {
    overall: proportionOf(flowers, level),
    lostTags: lostTags(season, flowers, level),
    byStorage: storages.map((storage) => ({
      storage,
      ...proportionOf(
        flowers.filter((flower) => flower.storage === storage),
        level,
      ),
    })),
    bySeedParent: gather(flowers, ({ seedParent }) => seedParent).map(([seedParent, group]) => ({
      seedParent,
      ...proportionOf(group, level),
    })),
    byPollenParent: gather(flowers, ({ pollenParent }) => pollenParent).map(([pollenParent, group]) => ({
      pollenParent,
      ...proportionOf(group, level),
    })),
    byPair: ratesByPair(flowers, level),
    byAge: ratesByAge(flowers, storages, level),
    controls: ratesOfControls(season, level),
  };
}
