/** One simulated season, analysed as `analyse` does it, and whether its 95 % ranges hold the truth. */

import { growerModel } from '../../lib/analysis/grower-model.ts';
import { likeForLike } from '../../lib/analysis/like-for-like.ts';
import type { PooledPair } from '../../lib/analysis/pairs.ts';
import { pairCounts, pooledPairs } from '../../lib/analysis/pairs.ts';
import type { Predictor } from '../../lib/analysis/predictor.ts';
import { predictor } from '../../lib/analysis/predictor.ts';
import { incompatiblePairs, seedParents, seedParentsFor } from '../../lib/analysis/seed-parents.ts';
import type { AgedFlower } from '../../lib/analysis/within-between.ts';
import { vialAdvice } from '../../lib/decisions/vials.ts';
import type { Estimate } from '../../lib/proportions/interval.ts';
import { addYear, latestDate } from '../../lib/season/dates.ts';
import type { SimulatedSeason } from './season-world.ts';

const LEVEL = 0.95;

/** Ranges that hold the truth, ranges given, and answers that were null. */
export interface Tally {
  readonly covered: number;
  readonly given: number;
  readonly nulls: number;
}

/** What is tallied of every season. */
export const KEYS = [
  'vials',
  'vials used',
  'vials unopened',
  'pairs',
  'pairs: least fertile of its season',
  'pairs: most fertile of its season',
  'pairs: incompatible',
  'adjusted',
  'named incompatible, and is',
] as const;

export type ScoreKey = (typeof KEYS)[number];
export type SeasonScore = ReadonlyMap<ScoreKey, Tally>;

function tally(answers: readonly { readonly range: Estimate; readonly truth: number }[]): Tally {
  const given = answers.filter(({ range }) => range.estimate !== null);
  const covered = given.filter(({ range, truth }) => range.lower! <= truth && truth <= range.upper!);
  return { covered: covered.length, given: given.length, nulls: answers.length - given.length };
}

/** Pairs with both kinds of pollen and both outcomes. */
function informativePairs(flowers: readonly AgedFlower[]): number {
  const seen = new Map<number, Set<string>>();
  for (const { pair, storage, fruit } of flowers)
    seen.set(pair, (seen.get(pair) ?? new Set()).add(storage).add(String(fruit)));
  return [...seen.values()].filter(({ size }) => size === 4).length;
}

function pairScore(pooled: readonly PooledPair[], { truth }: SimulatedSeason): [ScoreKey, Tally][] {
  const pairs = pooled.map((range) => ({
    range,
    truth: truth.freshRate(range.seedParent, range.pollenParent),
    barren: truth.barren(range.seedParent, range.pollenParent),
  }));
  const byRate = pairs.filter(({ barren }) => !barren).sort((a, b) => a.truth - b.truth);
  const named = pairs.filter(({ range }) => range.named);
  return [
    ['pairs', tally(pairs)],
    ['pairs: least fertile of its season', tally(byRate.slice(0, 1))],
    ['pairs: most fertile of its season', tally(byRate.slice(-1))],
    ['pairs: incompatible', tally(pairs.filter(({ barren }) => barren))],
    [
      'named incompatible, and is',
      { covered: named.filter(({ barren }) => barren).length, given: named.length, nulls: 0 },
    ],
  ];
}

/** Vials a year after the last pollination, over the seed parents used. */
function vialScore(
  { flowers, vials, truth }: SimulatedSeason,
  predict: Predictor | null,
  pooled: readonly PooledPair[],
): [ScoreKey, Tally][] {
  const parents = seedParents(flowers, []);
  const incompatible = incompatiblePairs(pooled);
  const advice = vialAdvice(vials, predict, {
    useOn: addYear(latestDate(flowers.map(({ morning }) => morning))!),
    worth: null,
    level: LEVEL,
    over: (father) => seedParentsFor(father, parents, incompatible),
    record: (vial) => ({ fruits: 0, flowers: flowers.filter((flower) => flower.vial === vial).length }),
    because: 'model-not-settled',
  });
  const answers = advice.map((range, i) => ({
    range,
    truth: truth.vialRate(vials[i]!, range.ageDays, range.over),
  }));
  return [
    ['vials', tally(answers)],
    ['vials used', tally(answers.filter(({ range }) => range.flowers > 0))],
    ['vials unopened', tally(answers.filter(({ range }) => range.flowers === 0))],
  ];
}

/** Analyses a season and looks at its truth. */
export function seasonScore(season: SimulatedSeason): SeasonScore {
  const { flowers, truth } = season;
  const fitted = growerModel(flowers, { ageScale: null, methods: ['frozen'] });
  const predict = 'draws' in fitted ? predictor(fitted.draws) : null;
  const pooled = pooledPairs(
    pairCounts(flowers),
    predict,
    { storage: 'fresh', ageDays: 0 },
    { level: LEVEL, because: fitted.record.because ?? '' },
  );
  const adjusted = likeForLike(flowers, 'frozen', informativePairs(flowers), {
    ageScale: 'log1p-days',
    level: LEVEL,
  });
  return new Map<ScoreKey, Tally>([
    ...vialScore(season, predict, pooled),
    ...pairScore(pooled, season),
    ['adjusted', tally([{ range: adjusted, truth: truth.difference }])],
  ]);
}
