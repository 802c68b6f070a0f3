import { ageAnswers } from './analysis/age-answers.ts';
import { type AgePoint, type HalfAge, oldestAge } from './analysis/age-curve.ts';
import { medianAge } from './analysis/age-scale.ts';
import type { Compatibility } from './analysis/compatibility.ts';
import { compatibility } from './analysis/compatibility.ts';
import type { Controls } from './analysis/controls.ts';
import { controlEffects } from './analysis/controls.ts';
import { fixedModel } from './analysis/fixed.ts';
import type { Flower } from './analysis/flowers.ts';
import { storageOrder, usedFlowers } from './analysis/flowers.ts';
import type { FreshVersusStored } from './analysis/fresh-versus-stored.ts';
import { freshVersusStored } from './analysis/fresh-versus-stored.ts';
import type { FruitSet } from './analysis/fruit-set.ts';
import { fruitSet } from './analysis/fruit-set.ts';
import type { GrowerModelRecord } from './analysis/grower-model.ts';
import { growerModel } from './analysis/grower-model.ts';
import { likeForLike } from './analysis/like-for-like.ts';
import type { AgeScale, FixedModel, ParentsModel } from './analysis/models.ts';
import type { PairBasis, PooledPair } from './analysis/pairs.ts';
import { pairCounts, pooledPairs } from './analysis/pairs.ts';
import { parentsModel } from './analysis/parents.ts';
import type { Pending } from './analysis/pending.ts';
import { pending } from './analysis/pending.ts';
import type { GrowersRecord } from './analysis/plants-apart.ts';
import { plantsApart } from './analysis/plants-apart.ts';
import type { Predictor } from './analysis/predictor.ts';
import { predictor } from './analysis/predictor.ts';
import type { RawRates } from './analysis/raw.ts';
import { rawRates } from './analysis/raw.ts';
import type { Reciprocal } from './analysis/reciprocal.ts';
import { reciprocalCrosses } from './analysis/reciprocal.ts';
import type { RowCounts } from './analysis/rows.ts';
import { rowCounts } from './analysis/rows.ts';
import type { Seasons } from './analysis/seasons.ts';
import { seasons } from './analysis/seasons.ts';
import { incompatiblePairs, seedParents, seedParentsFor } from './analysis/seed-parents.ts';
import type { Seeds } from './analysis/seeds.ts';
import { seedYields } from './analysis/seeds.ts';
import type { Settle } from './analysis/settle.ts';
import { settle } from './analysis/settle.ts';
import type { Wave } from './analysis/waves.ts';
import { waves } from './analysis/waves.ts';
import { agedFlowers } from './analysis/within-between.ts';
import type { Worth } from './analysis/worth.ts';
import { worthOf } from './analysis/worth.ts';
import type { NextSeason } from './decisions/next-season.ts';
import { planned } from './decisions/next-season.ts';
import type { NextTest } from './decisions/next-test.ts';
import { nextTests } from './decisions/next-test.ts';
import type { Ceiling, Must } from './decisions/plan-problem.ts';
import type { VialAdvice, VialQuestion } from './decisions/vials.ts';
import { vialAdvice } from './decisions/vials.ts';
import { checkLevel } from './proportions/interval.ts';
import type { CodedRecord } from './season/coded-copy.ts';
import { addYear, isIsoDate, latestDate } from './season/dates.ts';
import type { Endpoint, FileKind, ReadingAnswers, Season } from './season/season.ts';
import { VERSION } from './version.ts';

/** Options of `analyse`; everything left out gets the default named here. */
export interface AnalyseOptions {
  /** Level of every range, 0.95 by default. */
  readonly level?: number;
  /** ISO date on which stored pollen is to be used; one year after the last pollination by default. */
  readonly useOn?: string;
  /** Age scale of every age model; by default decisions average both and textbook fits use log1p-days. */
  readonly ageScale?: AgeScale;
  /** The lowest fruit set that is worth a flower, a proportion; by default half that of fresh pollen. */
  readonly worth?: number;
  /** Whether plants of different growers that have the same name are one plant; false by default. */
  readonly samePlants?: boolean;
  /** Crosses that every mix of the plan must try, with the fewest flowers of each. */
  readonly must?: readonly Must[];
  /** Most flowers of the plan for a pollen parent, on one seed parent or on all together. */
  readonly atMost?: readonly Ceiling[];
}

/** The options as used, what was said about reading the files among them; null where a default could not be worked out. */
export interface OptionsUsed extends Omit<ReadingAnswers, 'settings'> {
  readonly level: number;
  readonly endpoint: Endpoint;
  readonly asOf: string | null;
  readonly useOn: string | null;
  readonly ageScale: AgeScale | null;
  readonly worth: number | null;
  readonly must: readonly Must[];
  readonly atMost: readonly Ceiling[];
  readonly samePlants: boolean;
}

/** Where the result came from. */
export interface Provenance {
  readonly coded?: CodedRecord;
  readonly version: string;
  readonly options: OptionsUsed;
  readonly files: readonly {
    readonly file: string;
    readonly kind: FileKind;
    readonly sha256: string;
    readonly rows: number;
  }[];
  /** The file of settings that options were taken from, null where there was none. */
  readonly settings: ReadingAnswers['settings'];
}

/** What `analyse` is about to work out, in the order in which it does. */
export type AnalysisStage = 'model' | 'vials' | 'like-for-like' | 'rest';

/** Everything a season tells: the contract's `analyse --json`, with codes where that has sentences. */
export interface Analysis {
  readonly provenance: Provenance;
  readonly rows: RowCounts;
  readonly raw: RawRates;
  readonly seasons: Seasons;
  readonly waves: readonly Wave[];
  readonly pending: Pending;
  readonly fruitSet: FruitSet;
  readonly controls: Controls;
  readonly freshVersusStored: readonly FreshVersusStored[];
  readonly models: {
    readonly fixed: FixedModel;
    readonly parents: ParentsModel;
    readonly grower: GrowerModelRecord;
  };
  readonly ageCurve: readonly AgePoint[];
  readonly halfAge: readonly HalfAge[];
  readonly pairs: readonly PooledPair[];
  readonly reciprocal: readonly Reciprocal[];
  readonly compatibility: Compatibility;
  readonly seeds: Seeds;
  readonly worth: Worth;
  readonly vials: readonly VialAdvice[];
  readonly nextTests: readonly NextTest[];
  readonly settle: Settle;
  /** Null without a flowers file. */
  readonly plan: NextSeason | null;
  /** Why there is no plan; left out where there is one. */
  readonly planBecause?: string;
}

/**
 * The analysis of a season: what happened, how sure one can be, and what to do with each vial.
 *
 * Answers every question of the report, from one season or several, of one grower or several. Plants of different growers
 * that have the same name are told apart as "Name (Grower)", unless `samePlants` says that they are one.
 *
 * @param read what `readSeason` returned
 * @param options level, day of use, age scale, what is worth a flower, whose plants are the same
 * @param begins told of each stage as it begins, for those who wait: some take seconds
 * @returns plain data; what the data cannot tell is null with a code in `because`
 * @throws RangeError where an option breaks its rule
 * @example
 * analyse(season).raw.overall.estimate; // 0.39473...
 */
export function analyse(
  read: Season,
  options: AnalyseOptions = {},
  begins: (stage: AnalysisStage) => void = () => {},
): Analysis {
  const { level = 0.95 } = options;
  checkOptions(options, level);
  const { season, growers } = plantsApart(read, options);
  const flowers = usedFlowers(season);
  const useOn = options.useOn ?? defaultUse(season);
  begins('model');
  const fitted = growerModel(flowers, {
    ageScale: options.ageScale ?? null,
    methods: season.vials.map(({ storage }) => storage),
  });
  const model = 'draws' in fitted ? fitted : null;
  const predict = model && predictor(model.draws, season.vials);
  const because = fitted.record.because ?? 'method-never-tried';
  begins('vials');
  const pairs = pooledPairs(pairCounts(flowers), predict, basisOf(flowers), { level, because });
  const parents = seedParents(flowers, season.flowers);
  const incompatible = incompatiblePairs(pairs);
  const worth = worthOf(options.worth, flowers, predict, parents, incompatible);
  const textbookScale = options.ageScale ?? 'log1p-days';
  const raw = rawRates(season, { level });
  const over = (father: string) => seedParentsFor(father, parents, incompatible);
  const vials = adviceOn(season, flowers, useOn, predict, { worth: worth.value, level, because, over });
  begins('like-for-like');
  const compared = compare(season, flowers, textbookScale, level);
  begins('rest');
  return {
    provenance: provenance(season, options, { level, useOn, worth: worth.value }),
    rows: rowCounts(season),
    raw,
    ...seasonPart(season, flowers, growers, level),
    controls: controlEffects(raw, { level }),
    freshVersusStored: compared,
    models: {
      fixed: fixedModel(season, { level, ageScale: textbookScale }),
      parents: parentsModel(flowers, { ageScale: textbookScale, level }),
      grower: fitted.record,
    },
    ...ageAnswers(flowers, model, predict, { level, because }),
    pairs,
    reciprocal: reciprocalCrosses(flowers, { level }),
    compatibility: compatibility(season, flowers, pairs, { level }),
    seeds: seedYields(season, { level }),
    worth,
    vials,
    nextTests: nextTests(season.vials, { predict, useOn, worth: worth.value, over }),
    settle: settle(season, flowers, { level, worth: worth.value, model, vials, pairs }),
    ...planned(season, flowers, { predict, because, useOn, incompatible }, options),
  };
}

function checkOptions({ useOn, worth }: AnalyseOptions, level: number): void {
  checkLevel('analyse', level);
  if (useOn !== undefined && !isIsoDate(useOn)) {
    throw new RangeError(`analyse: useOn must be a date as YYYY-MM-DD, got ${useOn}`);
  }
  if (worth !== undefined && !(worth > 0 && worth < 1)) {
    throw new RangeError(`analyse: worth must be a proportion between 0 and 1, got ${worth}`);
  }
}

/** One year after the last pollination; null where there is none. */
export function defaultUse(season: Season): string | null {
  const last = latestDate(season.crosses.map(({ pollinationDate }) => pollinationDate));
  return last && addYear(last);
}

const NOTHING_SAID: ReadingAnswers = {
  ...{ dateOrder: null, dateSystem: null, map: [], same: [], storage: [] },
  settings: null,
};

export function provenance(
  season: Season,
  { ageScale, must = [], atMost = [], samePlants = false }: AnalyseOptions,
  used: Pick<OptionsUsed, 'level' | 'useOn' | 'worth'>,
): Provenance {
  const { endpoint, asOf, answers = NOTHING_SAID } = season;
  const { settings, ...reading } = answers;
  return {
    version: VERSION,
    options: { ...used, ageScale: ageScale ?? null, must, atMost, samePlants, endpoint, asOf, ...reading },
    files: season.files.map(({ file, kind, sha256, rows }) => ({ file, kind, sha256, rows })),
    settings,
  };
}

/** Fresh pollen; where there is none, the commonest stored method at its median age. */
function basisOf(flowers: readonly Flower[]): PairBasis {
  const [first] = storageOrder(flowers);
  if (first === undefined || first === 'fresh') return { storage: 'fresh', ageDays: 0 };
  return { storage: first, ageDays: medianAge(agedFlowers(flowers), first) ?? 0 };
}

/** What happened when: seasons, waves, what is still pending, what set and what was harvested. */
export function seasonPart(
  season: Season,
  flowers: readonly Flower[],
  growers: GrowersRecord,
  level: number,
): Pick<Analysis, 'seasons' | 'waves' | 'pending' | 'fruitSet'> {
  return {
    seasons: seasons(flowers, growers, { level }),
    waves: waves(season, { level }),
    pending: pending(season),
    fruitSet: fruitSet(season, { level }),
  };
}

/** The advice on each vial; none without a day of use. */
function adviceOn(
  season: Season,
  flowers: readonly Flower[],
  useOn: string | null,
  predict: Predictor | null,
  options: Omit<VialQuestion, 'useOn' | 'record' | 'oldestTried'>,
): VialAdvice[] {
  if (useOn === null) return [];
  const record = (vial: string) => vialRecord(flowers, vial);
  const oldestTried = (storage: string) => oldestAge(agedFlowers(flowers), storage);
  return vialAdvice(season.vials, predict, { ...options, useOn, record, oldestTried });
}

/** Fresh pollen against each stored method, like for like with the age scale given. */
function compare(
  season: Season,
  flowers: readonly Flower[],
  ageScale: AgeScale,
  level: number,
): FreshVersusStored[] {
  return freshVersusStored(season, {
    level,
    adjusted: (storage, informativePairs) =>
      likeForLike(flowers, storage, informativePairs, { ageScale, level }),
  });
}

function vialRecord(flowers: readonly Flower[], vial: string): { fruits: number; flowers: number } {
  const own = flowers.filter((flower) => flower.vial === vial);
  return { fruits: own.reduce((sum, { fruit }) => sum + fruit, 0), flowers: own.length };
}
