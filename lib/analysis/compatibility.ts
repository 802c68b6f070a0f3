import { type Estimate, type Proportion, unknown } from '../proportions/interval.ts';
import { riskRatio } from '../proportions/two-by-two.ts';
import { fruitAt, recordsHarvests, type Season } from '../season/season.ts';
import type { Flower } from './flowers.ts';
import { gather } from './gather.ts';
import { NAMED_INCOMPATIBLE, type PooledPair } from './pairs.ts';
import { proportionOf } from './proportion.ts';

/** From this probability on a pair is looked at; from `NAMED_INCOMPATIBLE` on it is named. */
const SUSPECTED = 0.5;

/**
 * What tells an incompatible pair from bad pollen: `pollen-took-elsewhere`, `pollen-failed-elsewhere` (it took on no
 * other plant that it was tried on) or `pollen-not-tried-elsewhere`.
 */
export type PollenEvidence =
  | 'pollen-took-elsewhere'
  | 'pollen-failed-elsewhere'
  | 'pollen-not-tried-elsewhere';

/** A pair that probably never takes, with what speaks for it. */
export interface SuspectedPair {
  readonly seedParent: string;
  readonly pollenParent: string;
  readonly kind: 'self' | 'cross';
  /** Probability of it, as in `pairs`. */
  readonly incompatible: number;
  /** Whether it is named, as in `pairs`. */
  readonly named: boolean;
  /** Flowers of the pair, whatever the pollen, and those with fresh pollen. */
  readonly all: Proportion;
  readonly fresh: Proportion;
  /** The same pollen parent on all other plants. */
  readonly pollenElsewhere: Proportion;
  /** The same seed parent with all other pollen. */
  readonly seedParentElsewhere: Proportion;
  readonly evidence: PollenEvidence;
}

/** Selfed against crossed flowers of one plant, fresh pollen both. */
export interface SelfCompatibility {
  /** Null for all plants that have both kinds together. */
  readonly plant: string | null;
  readonly selfed: Proportion;
  readonly crossed: Proportion;
  /** Self ÷ cross, Katz's interval: 1 where selfing takes as well as crossing. */
  readonly selfOverCross: Estimate;
  /** 1 − self ÷ cross: 1 where selfing never takes. */
  readonly oneMinusSelfOverCross: Estimate;
}

/** Key `compatibility` of the analysis. */
export interface Compatibility {
  readonly named: number;
  /** Surest first. */
  readonly pairs: readonly SuspectedPair[];
  /** Of each plant with a selfed flower, in code-point order; then, where a plant has both kinds, of all such plants. */
  readonly selfIncompatibility: readonly SelfCompatibility[];
}

interface Plain {
  readonly plant: string;
  readonly fruit: 0 | 1;
}

function evidenceOf({ fruits, flowers }: Proportion): PollenEvidence {
  if (flowers === 0) return 'pollen-not-tried-elsewhere';
  return fruits > 0 ? 'pollen-took-elsewhere' : 'pollen-failed-elsewhere';
}

function suspectedPair(
  pair: PooledPair,
  incompatible: number,
  flowers: readonly Flower[],
  level: number,
): SuspectedPair {
  const { seedParent, pollenParent } = pair;
  const ofMother = flowers.filter((flower) => flower.seedParent === seedParent);
  const ofFather = flowers.filter((flower) => flower.pollenParent === pollenParent);
  const own = ofMother.filter((flower) => flower.pollenParent === pollenParent);
  const pollenElsewhere = proportionOf(
    ofFather.filter((flower) => flower.seedParent !== seedParent),
    level,
  );
  return {
    seedParent,
    pollenParent,
    kind: seedParent === pollenParent ? 'self' : 'cross',
    incompatible,
    named: pair.named,
    all: proportionOf(own, level),
    fresh: proportionOf(
      own.filter(({ storage }) => storage === 'fresh'),
      level,
    ),
    pollenElsewhere,
    seedParentElsewhere: proportionOf(
      ofMother.filter((flower) => flower.pollenParent !== pollenParent),
      level,
    ),
    evidence: evidenceOf(pollenElsewhere),
  };
}

/** Selfed flowers with fresh pollen: the controls of that kind, and crosses of a plant with itself. */
function selfedFlowers(season: Season, flowers: readonly Flower[]): Plain[] {
  const harvestsRecorded = recordsHarvests(season.crosses);
  const controls = season.crosses.flatMap((cross): Plain[] => {
    const fruit = fruitAt(cross, season.endpoint, harvestsRecorded);
    const counts = cross.control === 'selfed' && cross.storage === 'fresh' && fruit !== null;
    return counts ? [{ plant: cross.seedParent, fruit }] : [];
  });
  const own = flowers.filter(
    ({ seedParent, pollenParent, storage }) => seedParent === pollenParent && storage === 'fresh',
  );
  return [...controls, ...own.map(({ seedParent, fruit }) => ({ plant: seedParent, fruit }))];
}

/** Self ÷ cross; without a fruit of one kind Katz's formula has no range. */
function selfOverCross(self: Proportion, cross: Proportion, level: number): Estimate {
  if (cross.fruits === 0) return unknown('crosses-never-took');
  const { logSe: _, ...ratio } = riskRatio(self.fruits, self.flowers, cross.fruits, cross.flowers, { level });
  return self.fruits === 0 ? { ...ratio, because: 'selfed-never-took' } : ratio;
}

function indexOf(
  plant: string | null,
  selfed: readonly Plain[],
  crossed: readonly Flower[],
  level: number,
): SelfCompatibility {
  const [self, cross] = [proportionOf(selfed, level), proportionOf(crossed, level)];
  if (cross.flowers === 0) {
    const none = unknown('no-fresh-cross');
    return { plant, selfed: self, crossed: cross, selfOverCross: none, oneMinusSelfOverCross: none };
  }
  const ratio = selfOverCross(self, cross, level);
  const turned = (value: number | null) => (value === null ? null : 1 - value);
  return {
    plant,
    selfed: self,
    crossed: cross,
    selfOverCross: ratio,
    oneMinusSelfOverCross: {
      ...ratio,
      estimate: turned(ratio.estimate),
      lower: turned(ratio.upper),
      upper: turned(ratio.lower),
    },
  };
}

function selfIncompatibility(season: Season, flowers: readonly Flower[], level: number): SelfCompatibility[] {
  const crossedOn = (plant: string) =>
    flowers.filter(
      ({ seedParent, pollenParent, storage }) =>
        seedParent === plant && pollenParent !== plant && storage === 'fresh',
    );
  const plants = gather(selfedFlowers(season, flowers), ({ plant }) => plant).map(([plant, selfed]) => ({
    plant,
    selfed,
    crossed: crossedOn(plant),
  }));
  const single = plants.map(({ plant, selfed, crossed }) => indexOf(plant, selfed, crossed, level));
  const both = plants.filter(({ crossed }) => crossed.length > 0);
  if (both.length === 0) return single;
  const [selfed, crossed] = [both.flatMap((each) => each.selfed), both.flatMap((each) => each.crossed)];
  return [...single, indexOf(null, selfed, crossed, level)];
}

/**
 * Compatibility: pairs that probably never take, told from bad pollen, and how selfed flowers do against crossed ones.
 *
 * Answers: is it the pair or the pollen? A pair's probability comes from the model (`pairs`); beside it stand the counts:
 * what the same pollen did on other plants and the same mother with other pollen. Two opposite indexes of
 * self-incompatibility are in use, so both are given under their formulas. Not a test of genotypes: relatives of an
 * incompatible plant need flowers of their own.
 *
 * @param season the season as read, plants told apart (for its selfed controls)
 * @param flowers its used flowers
 * @param pairs key `pairs` of the analysis
 * @param options `level` of the ranges, a proportion in (0, 1), 0.95 by default
 * @see Katz, Baptista, Azen & Pike (1978) Biometrics 34:469, for the ratio's range
 * @example
 * compatibility(season, usedFlowers(season), pairs).pairs.filter(({ named }) => named);
 */
export function compatibility(
  season: Season,
  flowers: readonly Flower[],
  pairs: readonly PooledPair[],
  { level = 0.95 }: { readonly level?: number } = {},
): Compatibility {
  const suspected = pairs.flatMap((pair) =>
    pair.incompatible !== null && pair.incompatible >= SUSPECTED
      ? [suspectedPair(pair, pair.incompatible, flowers, level)]
      : [],
  );
  return {
    named: NAMED_INCOMPATIBLE,
    pairs: suspected.sort((a, b) => b.incompatible - a.incompatible),
    selfIncompatibility: selfIncompatibility(season, flowers, level),
  };
}
