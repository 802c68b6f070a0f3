/** What a mix gives and risks. */

import { streamFor } from '../analysis/strangers.ts';
import { mean } from '../analysis/summary.ts';
import { quantileOfSorted } from '../numerics/quantile.ts';
import type { AllocationProblem } from './allocation.ts';
import type { FrontierPoint } from './frontier.ts';
import type { PlannedSource, PlanQuestion } from './plan-sources.ts';
import { chancesAt, evenDraws } from './plan-sources.ts';

/** Seasons to come that are drawn for the range of fruits. */
const SEASONS_DRAWN = 500;

/** Flowers of one seed parent with one pollen. */
export interface AllocationLine {
  readonly seedParent: string;
  readonly pollenParent: string;
  readonly source: 'fresh' | 'vial';
  readonly vial: string | null;
  readonly flowers: number;
  /** First and last morning on which it can be done; null is open. */
  readonly from: string | null;
  readonly to: string | null;
  /** Probability that the cross sets no fruit at all, from this pollen or another of the same plant. */
  readonly noFruit: number;
}

/** The two ends of the frontier, and the mix between them. */
export type MixName = 'most-fruit' | 'balanced' | 'most-varieties';

/** One way to split next season's flowers. */
export interface Mix {
  /** Both ends of the frontier have a name, and one mix between them. */
  readonly name: MixName | null;
  readonly expectedVarieties: number;
  readonly expectedFruits: number;
  /** Null without seed counts. */
  readonly expectedSeeds: number | null;
  /** Fruits in nine of ten seasons to come at least, and in nine of ten at most. */
  readonly fruits: { readonly percentile10: number; readonly percentile90: number };
  readonly allocation: readonly AllocationLine[];
  /** By how much a better mix could still beat it at its own weights: 0 where it is known to be the best. */
  readonly within: number;
}

/** Tells of a mix what it gives and risks, over all draws. */
export function mixTeller(
  sources: readonly PlannedSource[],
  problem: AllocationProblem,
  question: PlanQuestion,
  seeds: ((seedParent: string, pollenParent: string) => number) | null,
): (point: FrontierPoint) => Mix {
  const { predict } = question;
  const all = chancesAt(evenDraws(predict.size, predict.size), question);
  const known = new Map<PlannedSource, Float64Array>();
  const ratesOf = (source: PlannedSource): Float64Array => {
    const rates = known.get(source) ?? all.rates(source);
    known.set(source, rates);
    return rates;
  };
  const failing = failureOf(ratesOf);
  const season = seasonsToCome(question);
  return ({ counts, within }) => {
    const used = sources.flatMap((source, s): UsedSource[] =>
      counts[s]! > 0 ? [{ source, flowers: counts[s]!, pair: problem.sources[s]!.pair }] : [],
    );
    const expected = used.map(({ source, flowers }) => flowers * mean(ratesOf(source)));
    const noFruit = noFruitOf(used, failing);
    return {
      name: null,
      expectedVarieties: [...noFruit.values()].reduce((sum, chance) => sum + 1 - chance, 0),
      expectedFruits: expected.reduce((sum, fruits) => sum + fruits, 0),
      expectedSeeds: seeds
        ? used.reduce((sum, { source }, at) => sum + expected[at]! * seeds(...namesOf(source)), 0)
        : null,
      fruits: season(used),
      allocation: used.map(({ source, flowers, pair }) => lineOf(source, flowers, noFruit.get(pair)!)),
      within,
    };
  };
}

interface UsedSource {
  readonly source: PlannedSource;
  readonly flowers: number;
  /** Code of the ordered pair. */
  readonly pair: number;
}

function namesOf({ offer, pollen }: PlannedSource): [seedParent: string, pollenParent: string] {
  return [offer.seedParent, pollen.pollenParent];
}

function lineOf(source: PlannedSource, flowers: number, noFruit: number): AllocationLine {
  const [seedParent, pollenParent] = namesOf(source);
  const vial = source.pollen.vial?.vial ?? null;
  const kind = vial === null ? 'fresh' : 'vial';
  return { seedParent, pollenParent, source: kind, vial, flowers, ...source.when, noFruit };
}

/** The chance, draw by draw, that so many flowers of a source all fail: kept, for neighbouring mixes share most of theirs. */
function failureOf(
  ratesOf: (source: PlannedSource) => Float64Array,
): (source: PlannedSource, flowers: number) => Float64Array {
  const known = new Map<PlannedSource, Map<number, Float64Array>>();
  return (source, flowers) => {
    const row = known.get(source) ?? new Map<number, Float64Array>();
    known.set(source, row);
    const chances = row.get(flowers) ?? ratesOf(source).map((rate) => (1 - rate) ** flowers);
    row.set(flowers, chances);
    return chances;
  };
}

/** The chance of each pair that all of its flowers fail. */
function noFruitOf(
  used: readonly UsedSource[],
  failing: (source: PlannedSource, flowers: number) => Float64Array,
): Map<number, number> {
  const barren = new Map<number, Float64Array>();
  for (const { source, flowers, pair } of used) {
    const chances = failing(source, flowers);
    const before = barren.get(pair);
    barren.set(pair, before === undefined ? chances : before.map((chance, k) => chance * chances[k]!));
  }
  return new Map([...barren].map(([pair, chances]) => [pair, mean(chances)]));
}

/**
 * Range of fruits in seasons to come: for each of many draws one season is drawn, better or worse than the mean by
 * what seasons vary, then each flower. So the range holds all of it: what is not known of plants, vials and pollen,
 * the season's luck and each flower's. Flowers are taken to stand on different mornings.
 */
function seasonsToCome(question: PlanQuestion): (used: readonly UsedSource[]) => Mix['fruits'] {
  const draws = evenDraws(question.predict.size, SEASONS_DRAWN);
  const chances = chancesAt(draws, question);
  const luck = streamFor('season to come', []);
  const factor = Float64Array.from(draws, (k) => Math.exp(-luck.normal() * question.predict.seasonSd[k]!));
  return (used) => {
    const flowerLuck = streamFor('flowers to come', []);
    const fruits = new Float64Array(draws.length);
    for (const { source, flowers } of used) {
      const rates = chances.ratesIn(source, factor);
      for (let k = 0; k < fruits.length; k += 1) {
        for (let n = 0; n < flowers; n += 1) if (flowerLuck.uniform() < rates[k]!) fruits[k]! += 1;
      }
    }
    fruits.sort();
    return {
      percentile10: Math.floor(quantileOfSorted(fruits, 0.1)),
      percentile90: Math.ceil(quantileOfSorted(fruits, 0.9)),
    };
  };
}
