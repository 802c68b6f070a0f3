/** The plan as numbers: names become codes, limits counts, chances draws. */

import { mean } from '../analysis/summary.ts';
import type { ExpectedFlowers } from '../season/season.ts';
import type { AllocationProblem } from './allocation.ts';
import type { Chances, PlannedPollen, PlannedSource, PlanQuestion } from './plan-sources.ts';
import { chancesAt, evenDraws } from './plan-sources.ts';

/** A cross that must be tried. */
export interface Must {
  readonly seedParent: string;
  readonly pollenParent: string;
  /** Fewest flowers. */
  readonly flowers: number;
}

/** Most flowers for a pollen parent, on one seed parent or on all together. */
export interface Ceiling {
  readonly seedParent?: string;
  readonly pollenParent: string;
  readonly flowers: number;
}

/** What the grower asks of every mix. */
export interface Limits {
  readonly must?: readonly Must[];
  readonly ceilings?: readonly Ceiling[];
}

/** Draws that the search sees. What is shown of a mix is worked out over all of the predictor's. */
const SEARCH_DRAWS = 200;
/** No flower is taken for certain: the chance that it fails is at least this. */
const LEAST_MISS = 1e-12;

/** Code of an ordered pair; NaN where one of the two is not in the plan. */
export type PairCode = (seedParent: string, pollenParent: string) => number;

/** The problem of sharing out the flowers of some offers among some pollens. */
export function problemOf(
  offers: readonly ExpectedFlowers[],
  pollens: readonly PlannedPollen[],
  sources: readonly PlannedSource[],
  question: PlanQuestion,
  { must = [], ceilings = [] }: Limits,
): { readonly problem: AllocationProblem; readonly pairs: PairCode } {
  const draws = evenDraws(question.predict.size, SEARCH_DRAWS);
  const misses = missesOf(chancesAt(draws, question));
  const fathers = [...new Set(pollens.map(({ pollenParent }) => pollenParent))];
  const fatherCode = new Map(fathers.map((father, code) => [father, code]));
  const mothers = [...new Set(offers.map(({ seedParent }) => seedParent))];
  const motherCode = new Map(mothers.map((mother, code) => [mother, code]));
  const pairs: PairCode = (seedParent, pollenParent) =>
    (motherCode.get(seedParent) ?? Number.NaN) * fathers.length +
    (fatherCode.get(pollenParent) ?? Number.NaN);
  const pairFewest = mothers.flatMap(() => fathers.map(() => 0));
  const pairMost = pairFewest.map(() => Number.POSITIVE_INFINITY);
  const fatherMost = fathers.map(() => Number.POSITIVE_INFINITY);
  for (const { seedParent, pollenParent, flowers } of must)
    raise(pairFewest, pairs(seedParent, pollenParent), flowers);
  for (const { seedParent, pollenParent, flowers } of ceilings) {
    if (seedParent === undefined) lower(fatherMost, fatherCode.get(pollenParent) ?? Number.NaN, flowers);
    else lower(pairMost, pairs(seedParent, pollenParent), flowers);
  }
  const offerCode = new Map(offers.map((offer, code) => [offer, code]));
  const pollenCode = new Map(pollens.map((pollen, code) => [pollen, code]));
  return {
    problem: {
      sources: sources.map((source) => ({
        offer: offerCode.get(source.offer)!,
        pollen: pollenCode.get(source.pollen)!,
        pair: pairs(source.offer.seedParent, source.pollen.pollenParent),
        ...misses(source),
      })),
      flowers: offers.map(({ flowers }) => flowers),
      doses: pollens.map(({ doses }) => doses),
      fathers: pollens.map(({ pollenParent }) => fatherCode.get(pollenParent)!),
      fatherMost,
      pairFewest,
      pairMost,
      draws: draws.length,
    },
    pairs,
  };
}

/** Limits of what is not in the plan are no limits. */
function raise(values: number[], at: number, to: number): void {
  if (at < values.length) values[at] = Math.max(values[at]!, to);
}

function lower(values: number[], at: number, to: number): void {
  if (at < values.length) values[at] = Math.min(values[at]!, to);
}

/** Chances that a flower fails; rows of one seed parent share them. */
function missesOf({ rates }: Chances): (source: PlannedSource) => { miss: Float64Array; rate: number } {
  const known = new Map<string, Map<PlannedPollen, { miss: Float64Array; rate: number }>>();
  return (source) => {
    const row =
      known.get(source.offer.seedParent) ?? new Map<PlannedPollen, { miss: Float64Array; rate: number }>();
    known.set(source.offer.seedParent, row);
    let entry = row.get(source.pollen);
    if (entry === undefined) {
      const miss = rates(source).map((rate) => Math.max(LEAST_MISS, 1 - rate));
      entry = { miss, rate: 1 - mean(miss) };
      row.set(source.pollen, entry);
    }
    return entry;
  };
}
