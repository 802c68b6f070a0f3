/** The flowers that count: crosses whose outcome is known at the season's endpoint, controls apart. */

import { type Cross, fruitAt, recordsHarvests, type Season } from '../season/season.ts';
import { growerNamer, namedGrowers } from './growers.ts';

/** One hand-pollinated flower with a known outcome: what every rate and every model of a season starts from. */
export interface Flower {
  readonly crossId: string;
  readonly seedParent: string;
  readonly pollenParent: string;
  readonly storage: string;
  /** Days from collection to pollination: 0 for fresh pollen, null where not known. */
  readonly ageDays: number | null;
  /** Whether it set fruit at the endpoint. */
  readonly fruit: 0 | 1;
  /** Code of the ordered pair, from 0 in order of appearance: A × B is not B × A. */
  readonly pair: number;
  readonly vial: string | null;
  /** Date of pollination, with the grower where there are several: flowers of one morning share weather and hands. */
  readonly morning: string;
  readonly season: string;
  readonly grower: string | null;
}

/** A cross that names both parents and its storage: every row that is not a control does. */
export interface NamedCross extends Cross {
  readonly pollenParent: string;
  readonly storage: string;
}

/** The crosses of a season without its controls, whatever became of them. */
export function crossesOf(season: Season): NamedCross[] {
  return season.crosses.filter(
    (cross): cross is NamedCross =>
      cross.control === null && cross.pollenParent !== null && cross.storage !== null,
  );
}

/**
 * Hands out codes for ordered pairs. Names are data and may hold any character, so pairs are told apart by a map
 * of maps, never by a joined string.
 */
export function pairCoder(): (seedParent: string, pollenParent: string) => number {
  const codes = new Map<string, Map<string, number>>();
  let next = 0;
  return (seedParent, pollenParent) => {
    let fathers = codes.get(seedParent);
    if (fathers === undefined) {
      fathers = new Map();
      codes.set(seedParent, fathers);
    }
    let code = fathers.get(pollenParent);
    if (code === undefined) {
      code = next;
      next += 1;
      fathers.set(pollenParent, code);
    }
    return code;
  };
}

/**
 * The used flowers of a season, in the order of its files.
 *
 * Answers: which flowers does a rate of this season count, and did each set fruit at the endpoint? Not for
 * controls (`raw.controls`) nor for counting rows (`rowCounts`): lost tags and pending flowers are not in it.
 *
 * @param season the season as read; its `endpoint` decides what counts as fruit
 * @returns one entry a used flower
 * @example
 * usedFlowers(season).filter((flower) => flower.storage === 'fresh').length; // fresh flowers with an outcome
 */
export function usedFlowers(season: Season): Flower[] {
  const harvestsRecorded = recordsHarvests(season.crosses);
  const growerOf = growerNamer(season.crosses);
  const severalGrowers = namedGrowers(season.crosses).length > 1;
  const pairOf = pairCoder();
  const flowers: Flower[] = [];
  for (const cross of crossesOf(season)) {
    const fruit = fruitAt(cross, season.endpoint, harvestsRecorded);
    if (fruit === null) continue;
    flowers.push({
      crossId: cross.crossId,
      seedParent: cross.seedParent,
      pollenParent: cross.pollenParent,
      storage: cross.storage,
      ageDays: cross.ageDays,
      fruit,
      pair: pairOf(cross.seedParent, cross.pollenParent),
      vial: cross.vial,
      // A date has ten characters, so that date and grower cannot run into each other.
      morning: severalGrowers ? `${cross.pollinationDate} ${growerOf(cross) ?? ''}` : cross.pollinationDate,
      season: cross.season,
      grower: growerOf(cross),
    });
  }
  return flowers;
}

/** Whether `a` stands before `b` by code points, the same everywhere whatever the language of the machine. */
export function byCodePoint(a: string, b: string): number {
  const left = Array.from(a);
  const right = Array.from(b);
  const shared = Math.min(left.length, right.length);
  for (let i = 0; i < shared; i += 1) {
    const gap = left[i]!.codePointAt(0)! - right[i]!.codePointAt(0)!;
    if (gap !== 0) return gap;
  }
  return left.length - right.length;
}

/**
 * The storage methods of some flowers in the order every table uses: fresh first, then by number of flowers,
 * most first, ties by code points of the name.
 */
export function storageOrder(flowers: readonly { readonly storage: string }[]): string[] {
  const counts = new Map<string, number>();
  for (const { storage } of flowers) counts.set(storage, (counts.get(storage) ?? 0) + 1);
  const rank = (storage: string) => (storage === 'fresh' ? 0 : 1);
  return [...counts.keys()].sort(
    (a, b) => rank(a) - rank(b) || counts.get(b)! - counts.get(a)! || byCodePoint(a, b),
  );
}
