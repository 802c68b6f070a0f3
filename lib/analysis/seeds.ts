import { type Estimate, type Interval, type Proportion, unknown } from '../proportions/interval.ts';
import { moverProduct } from '../proportions/mover.ts';
import { betaBinomial } from '../regression/beta-binomial.ts';
import { negativeBinomial } from '../regression/negative-binomial.ts';
import { twoSidedQuantile, unsettledBecause } from '../regression/terms.ts';
import { fruitAt, recordsHarvests, type Season } from '../season/season.ts';
import { crossesOf, type NamedCross, pairCoder, storageOrder } from './flowers.ts';
import { proportionOf } from './proportion.ts';

/** Mean seeds a fruit over the fruits whose seeds were counted. */
export interface SeedsPerFruit extends Estimate {
  readonly fruits: number;
  readonly seeds: number;
}

/** Germinated of sown, over the lots (one fruit's sowing each) that give both. */
export interface Germination extends Estimate {
  readonly lots: number;
  readonly germinated: number;
  readonly sown: number;
}

/** What a flower comes to in seeds. */
export interface SeedYield {
  /** Final fruit set: what dropped before harvest gives no seeds. */
  readonly fruitSet: Proportion;
  readonly seedsPerFruit: SeedsPerFruit;
  readonly germination: Germination;
  /** Fruit set × seeds a fruit. */
  readonly seedsPerFlower: Estimate;
  /** Seed a flower: fruit set × seeds a fruit × germination. */
  readonly seedAFlower: Estimate;
}

/** A parameter of spread, or why there is none. */
export interface SpreadEstimate {
  readonly estimate: number | null;
  readonly because?: string;
}

/** Key `seeds` of the analysis. */
export interface Seeds {
  /** 1 ÷ theta of the negative binomial over all counted fruits: variance = mean + mean² × this. */
  readonly overdispersion: SpreadEstimate;
  /** Correlation of two seeds of one lot, from the beta-binomial over all lots. */
  readonly lotCorrelation: SpreadEstimate;
  readonly overall: SeedYield;
  readonly byStorage: readonly (SeedYield & { readonly storage: string })[];
  readonly byPair: readonly (SeedYield & { readonly seedParent: string; readonly pollenParent: string })[];
}

interface Spreads {
  readonly overdispersion: SpreadEstimate;
  readonly lotCorrelation: SpreadEstimate;
}

/** One fruit's sowing. */
export interface Lot {
  readonly germinated: number;
  readonly sown: number;
}

function countsOf(crosses: readonly NamedCross[]): number[] {
  return crosses.flatMap(({ outcome, seeds }) => (outcome === 'fruit' && seeds !== null ? [seeds] : []));
}

/** The sowings of some crosses that give both counts. */
export function lotsOf(crosses: readonly NamedCross[]): Lot[] {
  return crosses.flatMap(({ sown, germinated }) =>
    sown !== null && sown > 0 && germinated !== null ? [{ sown, germinated }] : [],
  );
}

/** A shape that a fit could not tell is 0 where the data vary no more than chance would make them. */
function spreadOf({ estimate, because }: SpreadEstimate): SpreadEstimate {
  if (estimate !== null) return { estimate };
  return because === 'no-overdispersion' ? { estimate: 0 } : { estimate: null, because: because! };
}

function overdispersionOf(counts: readonly number[]): SpreadEstimate {
  if (counts.length < 2) return { estimate: null, because: 'too-few-fruits' };
  if (counts.every((count) => count === 0)) return { estimate: null, because: 'no-seeds' };
  const fit = negativeBinomial({ counts: [...counts], columns: {} });
  const { estimate, because = 'not-settled' } = fit.theta;
  if (unsettledBecause(fit) !== null) return { estimate: null, because: 'not-settled' };
  return spreadOf(estimate === null ? { estimate, because } : { estimate: 1 / estimate });
}

function lotCorrelationOf(lots: readonly Lot[]): SpreadEstimate {
  if (lots.length < 2) return { estimate: null, because: 'too-few-lots' };
  const germinated = lots.reduce((sum, lot) => sum + lot.germinated, 0);
  const sown = lots.reduce((sum, lot) => sum + lot.sown, 0);
  if (germinated === 0 || germinated === sown) return { estimate: null, because: 'lots-all-alike' };
  const fit = betaBinomial({
    successes: lots.map((lot) => lot.germinated),
    trials: lots.map((lot) => lot.sown),
    columns: {},
  });
  const { estimate, because = 'not-settled' } = fit.correlation;
  if (because === 'all-or-none') return { estimate: 1 };
  if (because === 'single-trials') return { estimate: 0 };
  return spreadOf(estimate === null ? { estimate, because } : { estimate });
}

/** estimate · exp(± z se of its logarithm) */
function logRange(estimate: number, logSe: number, level: number): Interval {
  const factor = Math.exp(twoSidedQuantile(level) * logSe);
  return { estimate, lower: estimate / factor, upper: estimate * factor };
}

/** An estimate without a range, because of its spread. */
function withoutRange(estimate: number, because: string): Estimate {
  return { estimate, lower: null, upper: null, because };
}

function seedsPerFruit(counts: readonly number[], spread: SpreadEstimate, level: number): SeedsPerFruit {
  const fruits = counts.length;
  const seeds = counts.reduce((sum, count) => sum + count, 0);
  if (fruits === 0) return { fruits, seeds, ...unknown('no-seed-counts') };
  const mean = seeds / fruits;
  if (mean === 0) return { fruits, seeds, ...withoutRange(0, 'no-seeds') };
  if (spread.estimate === null) return { fruits, seeds, ...withoutRange(mean, spread.because!) };
  // The maximum likelihood mean of a negative binomial is the mean itself, and independent of theta.
  return { fruits, seeds, ...logRange(mean, Math.sqrt((1 / mean + spread.estimate) / fruits), level) };
}

/** A range on the logit scale, which keeps within 0 and 1. */
function logitRange(estimate: number, logitSe: number, level: number): Interval {
  const odds = estimate / (1 - estimate);
  const factor = Math.exp(twoSidedQuantile(level) * logitSe);
  return { estimate, lower: odds / (odds + factor), upper: (odds * factor) / (1 + odds * factor) };
}

/** Germinated of sown over some lots, with a range that knows how much lots differ (`spread`). */
export function germination(lots: readonly Lot[], spread: SpreadEstimate, level: number): Germination {
  const sown = lots.reduce((sum, lot) => sum + lot.sown, 0);
  const germinated = lots.reduce((sum, lot) => sum + lot.germinated, 0);
  const counts = { lots: lots.length, germinated, sown };
  if (sown === 0) return { ...counts, ...unknown('no-germination-counts') };
  const share = germinated / sown;
  if (share === 0 || share === 1) return { ...counts, ...withoutRange(share, 'lots-all-alike') };
  if (spread.estimate === null) return { ...counts, ...withoutRange(share, spread.because!) };
  const correlation = spread.estimate;
  // Variance of germinated ÷ sown: each lot of m seeds has m p (1 − p) (1 + (m − 1) correlation).
  const inflated = lots.reduce((sum, lot) => sum + lot.sown * (1 + (lot.sown - 1) * correlation), 0);
  return {
    ...counts,
    ...logitRange(share, Math.sqrt(inflated / (share * (1 - share))) / sown, level),
  };
}

/** The product of parts; null because of the first part that is, and without a range where a part has none or is 0. */
function product(parts: readonly Estimate[]): Estimate {
  const missing = parts.find(({ estimate }) => estimate === null);
  if (missing !== undefined) return unknown(missing.because!);
  if (parts.some(({ estimate }) => estimate === 0)) return withoutRange(0, 'zero-part');
  const open = parts.find(({ lower, upper }) => lower === null || upper === null);
  if (open !== undefined) {
    const estimate = parts.reduce((value, part) => value * part.estimate!, 1);
    return withoutRange(estimate, open.because!);
  }
  return moverProduct(
    parts.map(({ estimate, lower, upper }) => ({ estimate: estimate!, lower: lower!, upper: upper! })),
  );
}

function yieldOf(
  crosses: readonly NamedCross[],
  { overdispersion, lotCorrelation }: Spreads,
  harvestsRecorded: boolean,
  level: number,
): SeedYield {
  const fruits = crosses.map((cross) => fruitAt(cross, 'final', harvestsRecorded));
  const fruitSet = proportionOf(
    fruits.filter((fruit) => fruit !== null).map((fruit) => ({ fruit })),
    level,
  );
  const perFruit = seedsPerFruit(countsOf(crosses), overdispersion, level);
  const germinated = germination(lotsOf(crosses), lotCorrelation, level);
  return {
    fruitSet,
    seedsPerFruit: perFruit,
    germination: germinated,
    seedsPerFlower: product([fruitSet, perFruit]),
    seedAFlower: product([fruitSet, perFruit, germinated]),
  };
}

/** The crosses of each ordered pair, in the order of its first row. */
function byPairOf(crosses: readonly NamedCross[]): NamedCross[][] {
  const pairOf = pairCoder();
  const pairs: NamedCross[][] = [];
  for (const cross of crosses) {
    const code = pairOf(cross.seedParent, cross.pollenParent);
    pairs[code] ??= [];
    pairs[code].push(cross);
  }
  return pairs;
}

/**
 * Seeds: seeds a fruit, germination, and what a flower comes to in germinated seed.
 *
 * Answers: which pair and which pollen gives the most seedlings a flower? Fruit set is the final one here, since what
 * drops gives no seeds. Fruits differ among themselves more than chance would make them, and so do sowings: the
 * spread of each is estimated once, over all fruits (negative binomial) and all lots (beta-binomial), and serves every
 * group. Differences between pairs are part of that spread, so the ranges are rather too wide than too narrow. Not for
 * comparing storage methods like for like: they went to other pairs.
 *
 * @param season the season as read, plants told apart
 * @param options `level` of the ranges, a proportion in (0, 1), 0.95 by default
 * @returns seeds a fruit with a range on the log scale, germination with one on the logit scale, products by `moverProduct`
 *   (independent parts); without counts null, with one fruit or lot alone without a range; pairs in order of first row
 * @see Lawless (1987) Can J Stat 15:209; Crowder (1978) Applied Statistics 27:34; Zou & Donner (2008) Stat Med 27:1693
 * @example
 * seedYields(season).overall.seedAFlower.estimate; // germinated seeds a pollinated flower
 */
export function seedYields(season: Season, { level = 0.95 }: { readonly level?: number } = {}): Seeds {
  const harvestsRecorded = recordsHarvests(season.crosses);
  const crosses = crossesOf(season);
  const spreads = {
    overdispersion: overdispersionOf(countsOf(crosses)),
    lotCorrelation: lotCorrelationOf(lotsOf(crosses)),
  };
  const of = (own: readonly NamedCross[]) => yieldOf(own, spreads, harvestsRecorded, level);
  const known = crosses.filter((cross) => fruitAt(cross, 'final', harvestsRecorded) !== null);
  return {
    ...spreads,
    overall: of(crosses),
    byStorage: storageOrder(known).map((storage) => ({
      storage,
      ...of(crosses.filter((cross) => cross.storage === storage)),
    })),
    byPair: byPairOf(crosses).map((own) => ({
      seedParent: own[0]!.seedParent,
      pollenParent: own[0]!.pollenParent,
      ...of(own),
    })),
  };
}
