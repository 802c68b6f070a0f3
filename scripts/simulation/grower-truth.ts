/** The truth behind one grower's flowers: plants, pairs, vials, mornings, and the rates they lead to. */

import { spreadOf } from '../../lib/analysis/fruit-rate.ts';
import type { Predictor } from '../../lib/analysis/predictor.ts';
import { ageTerm } from '../../lib/analysis/priors.ts';
import type { RandomStream } from '../../lib/numerics/random.ts';
import type { Nature, StoredMethod } from './nature.ts';
import { meanRate } from './season-world.ts';

export type Bloom = 'early' | 'late' | 'both';

/** Of incompatible couples, the shares that are so both ways, and both ways or the first: as sisters, mostly both. */
export const BOTH_WAYS = 6 / 8;
export const EITHER_WAY = 7 / 8;

/** How growers choose: the easier a pair, the likelier fresh pollen; the harder, the older the lot; ease counts down to here. */
export const FRESH_LIKING = 0.8;
export const OLD_FOR_HARD = 0.8;
export const HARDEST = -3;

/** A pollen lot as it truly is. */
export interface Lot {
  readonly vial: string;
  readonly pollenParent: string;
  readonly storage: StoredMethod;
  readonly collected: string;
}

/** A pollen on the way to a flower: fresh, or a lot at an age. */
export type Pollen = { readonly lot: Lot; readonly ageDays: number } | null;

export interface GrowerTruth {
  readonly nature: Nature;
  readonly bloom: (plant: string) => Bloom;
  /** Logit of fruit set of an ordered pair with fresh pollen; −Infinity where it never sets fruit. */
  readonly pair: (seedParent: string, pollenParent: string) => number;
  /** What a pollen adds. */
  readonly pollen: (pollen: Pollen) => number;
  /** Whose plant it is; null where one grower has them all. */
  readonly grower: (plant: string) => string | null;
  /** What a flower's morning and season add. */
  readonly occasion: (morning: string, season: string) => number;
  /** What the hands of a seed parent's grower add; 0 where one grower has all plants, who is part of the intercept. */
  readonly hands: (seedParent: string) => number;
  /** Fruit set over mornings and seasons to come, in the same hands. */
  readonly rate: (seedParent: string, pollenParent: string, pollen: Pollen) => number;
}

/** A level's effect, drawn when it is first asked for. */
function effects(sd: number, { normal }: RandomStream): (...names: readonly string[]) => number {
  const known = new Map<string, number>();
  return (...names) => {
    const key = JSON.stringify(names);
    const effect = known.get(key) ?? sd * normal();
    known.set(key, effect);
    return effect;
  };
}

/** The logit of every ordered pair with fresh pollen. */
function pairTable(
  { sds, intercept, apart, incompatible, noGoodPollen }: Nature,
  plants: readonly string[],
  blooms: ReadonlyMap<string, Bloom>,
  random: RandomStream,
): Map<string, number> {
  const { uniform } = random;
  const badFathers = new Set(plants.filter(() => uniform() < noGoodPollen));
  const mother = effects(sds.seedParent, random);
  const father = effects(sds.pollenParent, random);
  const pair = effects(sds.pair, random);
  const pairs = new Map<string, number>();
  const put = (one: string, other: string, barren: boolean) => {
    const eta = intercept + mother(one) + father(other) + pair(one, other);
    const loss = together(blooms.get(one)!, blooms.get(other)!) ? 0 : apart;
    const never = barren || badFathers.has(other);
    pairs.set(JSON.stringify([one, other]), never ? Number.NEGATIVE_INFINITY : eta - loss);
  };
  for (const [i, a] of plants.entries()) {
    for (const b of plants.slice(i + 1)) {
      // Of the incompatible ones three in four are so both ways, as sisters are.
      const ways = uniform() < incompatible ? uniform() : null;
      put(a, b, ways !== null && ways < EITHER_WAY);
      put(b, a, ways !== null && (ways < BOTH_WAYS || ways >= EITHER_WAY));
    }
  }
  return pairs;
}

/** Whether two plants flower at the same time. */
export function together(a: Bloom, b: Bloom): boolean {
  return a === 'both' || b === 'both' || a === b;
}

/** Draws all there is to know of some plants. */
export function growerTruth(
  nature: Nature,
  plants: readonly string[],
  growers: readonly string[],
  random: RandomStream,
): GrowerTruth {
  const { sds } = nature;
  const owners = new Map(
    plants.map((plant, at) => [plant, growers[at % Math.max(1, growers.length)] ?? null]),
  );
  const blooms = new Map<string, Bloom>();
  for (const plant of plants) {
    const at = random.uniform();
    blooms.set(plant, at < 0.3 ? 'early' : at < 0.6 ? 'late' : 'both');
  }
  const pairs = pairTable(nature, plants, blooms, random);
  const vial = effects(sds.vial, random);
  const [morning, season] = [effects(sds.morning, random), effects(sds.season, random)];
  const owner = effects(sds.grower, random);
  const grower = (plant: string) => owners.get(plant) ?? null;
  const hands = (seedParent: string) => {
    const whose = grower(seedParent);
    return whose === null ? 0 : owner(whose);
  };
  const pair = (seedParent: string, pollenParent: string) =>
    pairs.get(JSON.stringify([seedParent, pollenParent])) ?? Number.NEGATIVE_INFINITY;
  const pollen = (given: Pollen): number => {
    if (given === null) return 0;
    const { storage } = given.lot;
    const faded = nature.fading[storage] * ageTerm(given.ageDays, storage, nature.ageScale);
    return nature.storage[storage] + faded + vial(given.lot.vial);
  };
  const occasionSd = Math.hypot(sds.morning, sds.season);
  return {
    nature,
    bloom: (plant) => blooms.get(plant)!,
    pair,
    pollen,
    grower,
    occasion: (day, year) => morning(day) + season(year),
    hands,
    rate: (seedParent, pollenParent, given) =>
      meanRate(pair(seedParent, pollenParent) + hands(seedParent) + pollen(given), occasionSd),
  };
}

/** A predictor that knows: one draw, the truth. */
export function oracle(truth: GrowerTruth, lots: readonly Lot[]): Predictor {
  const { nature } = truth;
  const one = (value: number) => Float64Array.of(value);
  const pair = (seedParent: string, pollenParent: string) =>
    one(truth.pair(seedParent, pollenParent) + truth.hands(seedParent));
  const byName = new Map(lots.map((lot) => [lot.vial, lot]));
  const own = (vial: string) => truth.pollen({ lot: byName.get(vial)!, ageDays: 0 });
  const level = (vial: string) => nature.storage[byName.get(vial)!.storage];
  return {
    size: 1,
    pair,
    against: (seedParent, pollenParent) => pair(seedParent, pollenParent).map((eta) => Math.exp(-eta)),
    storage: (storage, ageDays) => {
      const method = storage as StoredMethod;
      return one(nature.storage[method] + nature.fading[method] * ageTerm(ageDays, storage, nature.ageScale));
    },
    vial: (vial) => one(own(vial) - level(vial)),
    occasion: one(spreadOf(Math.hypot(nature.sds.morning, nature.sds.season))),
    occasionAndVial: one(spreadOf(Math.hypot(nature.sds.morning, nature.sds.season, nature.sds.vial))),
    morning: one(spreadOf(nature.sds.morning)),
    seasonSd: one(nature.sds.season),
  };
}
