/** Effects of plants, pairs and vials that the data never had: the same one gets the same draws in every table. */

import type { RandomStream } from '../numerics/random.ts';
import { randomStream } from '../numerics/random.ts';
import type { Vial } from '../season/season.ts';
import { byCodePoint } from './flowers.ts';
import type { NameFreeRanks, Ranks } from './name-free-order.ts';

/** What a stream is asked for by: a rank where there is one, else the name. */
export type StrangerKey = string | number;

/** A stream that depends on the keys alone, not on the order in which they are asked for. */
export function streamFor(kind: string, keys: readonly StrangerKey[]): RandomStream {
  return randomStream(hash(JSON.stringify([kind, ...keys])));
}

/** Keys of plants and vials in which, where their flowers or the vials' own facts suffice, no name has a part. */
export interface StrangerKeys {
  readonly plant: (name: string) => StrangerKey;
  readonly vial: (name: string) => StrangerKey;
}

/**
 * Keys for a model's plants by their rank, for vials and fathers that it never saw by what the vial is; what is known by its
 * name alone keeps that.
 *
 * @param ranks of the model's flowers
 * @param vials of the season, tried or not
 */
export function strangerKeys(ranks: NameFreeRanks | undefined, vials: readonly Vial[]): StrangerKeys {
  const father = ({ pollenParent }: Vial) => ranks?.plants.get(pollenParent) ?? -1;
  const factsOf = (vial: Vial) =>
    JSON.stringify([
      vial.collected,
      vial.storage,
      father(vial),
      vial.dosesLeft,
      vial.dosesFilled,
      vial.thaws,
    ]);
  const sorted = vials
    .map((vial) => ({ vial, facts: factsOf(vial) }))
    .sort((a, b) => byCodePoint(a.facts, b.facts) || byCodePoint(a.vial.vial, b.vial.vial))
    .map(({ vial }) => vial);
  const vialRanks = firstPlaces(sorted.map(({ vial }) => vial));
  const fatherRanks = firstPlaces(sorted.map(({ pollenParent }) => pollenParent));
  const unseenFather = (name: string) => {
    const at = fatherRanks.get(name);
    // Below 0, so that it is no rank of a plant that was seen.
    return at === undefined ? name : -1 - at;
  };
  return {
    plant: (name) => ranks?.plants.get(name) ?? unseenFather(name),
    vial: (name) => vialRanks.get(name) ?? name,
  };
}

function firstPlaces(names: readonly string[]): Ranks {
  return new Map([...new Set(names)].map((name, at) => [name, at]));
}

/** FNV-1a over UTF-16 code units (Fowler, Noll & Vo; RFC 9923). */
function hash(text: string): number {
  let value = 0x811c9dc5;
  for (let i = 0; i < text.length; i += 1) {
    value ^= text.charCodeAt(i);
    value = Math.imul(value, 0x01000193);
  }
  return value | 0;
}
