import { sampleSizeOneProportion } from '../proportions/one-sample-size.ts';
import { sampleSizePairedDesign } from '../proportions/paired-power.ts';
import type { Season } from '../season/season.ts';
import { crossesOf, type Flower, storageOrder } from './flowers.ts';
import { sdOf } from './fruit-rate.ts';
import type { GrowerModel } from './grower-model.ts';
import { mean } from './summary.ts';

/** Settled: this chance that the range leaves out zero if the true difference is this; never the observed one. */
export const SETTLED = { power: 0.8, trueDifference: 0.2 } as const;

/** Flowers of each kind that a pair of the paired design gets. */
const FLOWERS_PER_KIND = 2;

/** Standard deviation between pairs on the logit scale, where no model tells it: parents differ moderately. */
const PAIR_SD = 1;

/** Rates this near to none or all are not planned for. */
const NEAREST = 0.05;

/** How many flowers settle a question; null with `because` where it cannot be said. */
export interface Settling {
  /** Flowers needed in all. */
  readonly needed: number | null;
  /** Flowers there are already. */
  readonly have: number;
  readonly more: number | null;
  /** The most flowers that two seasons offer for it. */
  readonly reach: number;
  readonly outOfReach: boolean | null;
  readonly because?: string;
}

/** Fresh against a stored method within pairs: half of the flowers with each kind. */
export interface StorageSettling extends Settling {
  readonly storage: string;
  /** Pairs of plants needed, each with this many flowers of either kind. */
  readonly pairs: number;
  readonly flowersPerKind: number;
  /** The rates assumed for fresh and stored pollen: the level is the season's, the difference is not. */
  readonly assumed: { readonly fresh: number; readonly stored: number; readonly pairSd: number };
}

/** A vial against what is worth a flower. */
export interface VialSettling extends Settling {
  readonly vial: string;
  /** Whether the vial itself holds too few doses for it; null where these are not known. */
  readonly tooFewDoses: boolean | null;
}

/** A pair against the average of all pairs. */
export interface PairSettling extends Settling {
  readonly seedParent: string;
  readonly pollenParent: string;
}

/** Key `settle` of the analysis. */
export interface Settle {
  readonly trueDifference: number;
  readonly power: number;
  readonly level: number;
  /** Flowers of one season: those of the flowers file, else the mean number of crosses a season. */
  readonly seasonFlowers: number;
  readonly freshVersusStored: readonly StorageSettling[];
  readonly vials: readonly VialSettling[];
  readonly pairs: readonly PairSettling[];
}

/** What the rest of the analysis knows. */
export interface SettleQuestion {
  readonly level: number;
  readonly worth: number | null;
  readonly model: GrowerModel | null;
  readonly vials: readonly {
    readonly vial: string;
    readonly flowers: number;
    readonly dosesLeft: number | null;
  }[];
  readonly pairs: readonly {
    readonly seedParent: string;
    readonly pollenParent: string;
    readonly flowers: number;
    readonly estimate: number | null;
  }[];
}

function settling(needed: number, have: number, reach: number): Settling {
  const more = Math.max(0, needed - have);
  return { needed, have, more, reach, outOfReach: more > reach };
}

function unsettled(have: number, reach: number, because: string): Settling {
  return { needed: null, have, more: null, reach, outOfReach: null, because };
}

/** Flowers of one season, of all plants and of each: what is expected next season, else the mean of past seasons. */
function flowersASeason(season: Season): {
  readonly all: number;
  readonly of: (seedParent: string) => number;
} {
  const expected = season.flowers.filter(({ flowers }) => flowers > 0);
  const crosses = crossesOf(season);
  const offers =
    expected.length > 0 ? expected : crosses.map(({ seedParent }) => ({ seedParent, flowers: 1 }));
  const seasons = expected.length > 0 ? 1 : Math.max(1, new Set(crosses.map((cross) => cross.season)).size);
  const counts = new Map<string, number>();
  let all = 0;
  for (const { seedParent, flowers } of offers) {
    counts.set(seedParent, (counts.get(seedParent) ?? 0) + flowers);
    all += flowers;
  }
  return {
    all: Math.round(all / seasons),
    of: (seedParent) => Math.round((counts.get(seedParent) ?? 0) / seasons),
  };
}

/** Two rates whose difference is the one to be found, around a middle that leaves room for both. */
function ratesAround(middle: number): { fresh: number; stored: number } {
  const half = SETTLED.trueDifference / 2;
  const centre = Math.min(1 - NEAREST - half, Math.max(NEAREST + half, middle));
  return { fresh: centre + half, stored: centre - half };
}

/** How much pairs differ, on the logit scale: mothers, fathers and what they are to each other. */
function pairSdOf(model: GrowerModel | null): number {
  if (model === null) return PAIR_SD;
  return mean(
    model.draws.map(({ model: fruit, draw }) =>
      Math.hypot(
        sdOf(fruit, draw, 'seedParent'),
        sdOf(fruit, draw, 'pollenParent'),
        sdOf(fruit, draw, 'pair'),
      ),
    ),
  );
}

/** Flowers that already stand in the paired design: as many of the one kind as of the other in each pair. */
function matchedFlowers(flowers: readonly Flower[], storage: string): number {
  const pairs = new Map<number, { fresh: number; stored: number }>();
  for (const flower of flowers) {
    const pair = pairs.get(flower.pair) ?? { fresh: 0, stored: 0 };
    pairs.set(flower.pair, pair);
    if (flower.storage === 'fresh') pair.fresh += 1;
    if (flower.storage === storage) pair.stored += 1;
  }
  return [...pairs.values()].reduce((sum, { fresh, stored }) => sum + 2 * Math.min(fresh, stored), 0);
}

function rateOf(flowers: readonly Flower[], storage: string): number[] {
  const own = flowers.filter((flower) => flower.storage === storage);
  return own.length === 0 ? [] : [mean(own.map(({ fruit }) => fruit))];
}

function storageSettling(
  flowers: readonly Flower[],
  storage: string,
  reach: number,
  { level, model }: SettleQuestion,
): StorageSettling {
  const rates = ratesAround(mean([...rateOf(flowers, 'fresh'), ...rateOf(flowers, storage)]));
  // Two digits: the answer must not hang on the last one of an average over draws.
  const pairSd = Math.round(pairSdOf(model) * 100) / 100;
  const { pairs } = sampleSizePairedDesign(
    { flowersPerKind: FLOWERS_PER_KIND, freshRate: rates.fresh, storedRate: rates.stored, pairSd },
    { level, power: SETTLED.power, simulations: 1000 },
  );
  return {
    storage,
    ...settling(2 * FLOWERS_PER_KIND * pairs, matchedFlowers(flowers, storage), reach),
    pairs,
    flowersPerKind: FLOWERS_PER_KIND,
    assumed: { ...rates, pairSd },
  };
}

/** Trials that tell a rate from a line when it truly lies the difference above it, or below: the more of the two. */
function neededAgainst(line: number, level: number): number {
  const rates = [line + SETTLED.trueDifference, line - SETTLED.trueDifference];
  const possible = rates.filter((rate) => rate > 0 && rate < 1);
  return Math.max(
    ...possible.map((rate) => sampleSizeOneProportion(rate, line, { level, power: SETTLED.power })),
  );
}

function vialSettlings(reach: number, { worth, vials, level }: SettleQuestion): VialSettling[] {
  const needed = worth === null ? null : neededAgainst(worth, level);
  return vials.map(({ vial, flowers, dosesLeft }) => {
    const settled =
      needed === null ? unsettled(flowers, reach, 'no-worth') : settling(needed, flowers, reach);
    const tooFewDoses = settled.more === null || dosesLeft === null ? null : settled.more > dosesLeft;
    return { vial, ...settled, tooFewDoses };
  });
}

/** The average of all pairs, each weighing alike; null without estimates. */
function averagePair(pairs: SettleQuestion['pairs']): number | null {
  const known = pairs.flatMap(({ estimate }) => (estimate === null ? [] : [estimate]));
  return known.length < 2 ? null : mean(known);
}

function pairSettlings(
  flowersOf: (seedParent: string) => number,
  { pairs, level }: SettleQuestion,
): PairSettling[] {
  const average = averagePair(pairs);
  const needed = average === null ? null : neededAgainst(average, level);
  return pairs.map(({ seedParent, pollenParent, flowers }) => {
    const reach = 2 * flowersOf(seedParent);
    const settled =
      needed === null ? unsettled(flowers, reach, 'no-average-pair') : settling(needed, flowers, reach);
    return { seedParent, pollenParent, ...settled };
  });
}

/**
 * How many more flowers would settle it: for fresh against stored pollen, for a vial, for a pair.
 *
 * Answers: is it worth trying to find out? Settled is an 80 % chance that the range leaves out zero if the true
 * difference is 2 in 10; the observed difference is never plugged in, for that would make every lucky season
 * promise an answer. Fresh against stored is asked within pairs (Mantel–Haenszel over pairs of two flowers of each
 * kind); a vial against what is worth a flower and a pair against the average of all pairs, both taken as known
 * (Wilson's range, the harder direction). Out of reach is what takes more than two seasons' flowers: of all plants, for a
 * pair of its seed parent. Flowers of one morning are taken as independent, so spread them over mornings.
 *
 * @param season the season as read, plants told apart
 * @param flowers its used flowers
 * @param question level, worth, model, vials and pairs of the analysis
 * @see Cochran (1954) Biometrics 10:417; Wilson (1927) J Am Stat Assoc 22:209
 * @example
 * settle(season, flowers, question).freshVersusStored[0].more; // flowers, half of them with each kind of pollen
 */
export function settle(season: Season, flowers: readonly Flower[], question: SettleQuestion): Settle {
  const offered = flowersASeason(season);
  const reach = 2 * offered.all;
  const methods = storageOrder(flowers).filter((storage) => storage !== 'fresh');
  return {
    ...SETTLED,
    level: question.level,
    seasonFlowers: offered.all,
    freshVersusStored: methods.map((storage) => storageSettling(flowers, storage, reach, question)),
    vials: vialSettlings(reach, question),
    pairs: pairSettlings(offered.of, question),
  };
}
