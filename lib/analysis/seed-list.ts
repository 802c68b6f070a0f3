/** What each ripe cross has given: fruits, seeds and germination by ordered pair and season. */

import { fruitAt, recordsHarvests, type Season } from '../season/season.ts';
import { byCodePoint, crossesOf, type NamedCross, pairCoder } from './flowers.ts';
import { plantsApart } from './plants-apart.ts';
import type { Germination, SpreadEstimate } from './seeds.ts';
import { germination, lotsOf } from './seeds.ts';

/** The ripe fruits of one cross in one season. */
export interface SeedListEntry {
  readonly seedParent: string;
  readonly pollenParent: string;
  readonly season: string;
  /** Ripe fruits of bagged flowers, and of flowers of which the file does not say. */
  readonly fruits: number;
  /** Those among them whose bag is not said. */
  readonly bagNotSaid: number;
  /** Fruits whose seeds were counted, and their seeds. */
  readonly countedFruits: number;
  readonly seeds: number;
  /** Counted seeds that no sowing has used. */
  readonly unsown: number;
  readonly germination: Germination;
}

/** The seed list of a season. */
export interface SeedList {
  readonly entries: readonly SeedListEntry[];
  /** Ripe fruits of flowers that had no bag: whose pollen it was is not sure, so they are in no entry. */
  readonly unbagged: number;
  /** Fruits still hanging, where harvests are written down. */
  readonly unharvested: number;
  /** Whether any harvest is written down; where none is, a fruit that did not drop counts as ripe. */
  readonly harvestsRecorded: boolean;
}

/** Options of `seedList`. */
export interface SeedListOptions {
  /** How much sowings differ, as in key `seeds`. */
  readonly lotCorrelation: SpreadEstimate;
  /** Level of the ranges, a proportion in (0, 1), 0.95 by default. */
  readonly level?: number;
  /** Whether a name means one plant, whoever grows it. */
  readonly samePlants?: boolean;
}

/**
 * Seed list: what every ripe cross has given, and what of it is left.
 *
 * Answers: which seed is there to sow or to offer? The direction is kept, A × B is not B × A, and each season stands
 * alone. Controls are left out, and so are fruits of flowers without a bag. Not for comparing crosses: see key `seeds`.
 *
 * @param read the season as read; growers' plants of one name are told apart as `analyse` does it
 * @param options how much sowings differ, level of the ranges, whose plants are the same
 * @returns one entry a cross and season, by names in code-point order, then by season
 * @throws RangeError where `level` is not between 0 and 1
 * @example
 * seedList(season, { lotCorrelation: 0 }).entries.length > 0; // true
 */
export function seedList(
  read: Season,
  { lotCorrelation, level = 0.95, ...whose }: SeedListOptions,
): SeedList {
  if (!(level > 0 && level < 1))
    throw new RangeError(`seedList: level must be between 0 and 1, got ${level}`);
  const { season } = plantsApart(read, whose);
  const harvestsRecorded = recordsHarvests(season.crosses);
  const crosses = crossesOf(season);
  const ripe = crosses.filter((cross) => fruitAt(cross, 'final', harvestsRecorded) === 1);
  const offered = ripe.filter(({ bagged }) => bagged !== false);
  const entries = groupsOf(offered).map((own) => entryOf(own, lotCorrelation, level));
  return {
    entries: entries.sort(inOrder),
    unbagged: ripe.length - offered.length,
    unharvested: crosses.filter(({ outcome }) => outcome === 'fruit').length - ripe.length,
    harvestsRecorded,
  };
}

function groupsOf(crosses: readonly NamedCross[]): NamedCross[][] {
  const pairOf = pairCoder();
  const groupOf = pairCoder();
  const groups: NamedCross[][] = [];
  for (const cross of crosses) {
    const code = groupOf(String(pairOf(cross.seedParent, cross.pollenParent)), cross.season);
    groups[code] ??= [];
    groups[code].push(cross);
  }
  return groups;
}

function entryOf(own: readonly NamedCross[], spread: SpreadEstimate, level: number): SeedListEntry {
  const { seedParent, pollenParent, season } = own[0]!;
  const counted = own.filter(({ seeds }) => seeds !== null);
  const sum = (of: (cross: NamedCross) => number) => counted.reduce((total, cross) => total + of(cross), 0);
  return {
    ...{ seedParent, pollenParent, season },
    fruits: own.length,
    bagNotSaid: own.filter(({ bagged }) => bagged === null).length,
    countedFruits: counted.length,
    seeds: sum(({ seeds }) => seeds!),
    unsown: sum(({ seeds, sown }) => Math.max(0, seeds! - (sown ?? 0))),
    germination: germination(lotsOf(own), spread, level),
  };
}

function inOrder(a: SeedListEntry, b: SeedListEntry): number {
  return (
    byCodePoint(a.seedParent, b.seedParent) ||
    byCodePoint(a.pollenParent, b.pollenParent) ||
    byCodePoint(a.season, b.season)
  );
}
