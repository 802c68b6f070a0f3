/** What a grower's plan would truly give, beside the plans of those who know more and of one who knows less. */

import type { Flower } from '../../lib/analysis/flowers.ts';
import type { Predictor } from '../../lib/analysis/predictor.ts';
import { plan } from '../../lib/decisions/plan.ts';
import type { PlanQuestion } from '../../lib/decisions/plan-sources.ts';
import { daysBetween } from '../../lib/season/dates.ts';
import type { Season } from '../../lib/season/season.ts';
import { alike } from './alike.ts';
import type { Gives } from './frontier-area.ts';
import { areaUnder, givenBy } from './frontier-area.ts';
import type { SimulatedGrower } from './grower-season.ts';
import { oracle } from './grower-truth.ts';

/** A grower's season with what the command says of it. */
interface Given extends PlanQuestion {
  readonly season: Season;
  readonly flowers: readonly Flower[];
}

/** Areas under one plan's frontier, and its ends, at the true rates. */
export interface PlanGives {
  readonly area: number;
  /** The area over tried pairs alone. */
  readonly areaTried: number;
  readonly fruits: number;
  readonly varieties: number;
}

/** The plans that are compared, in this order. */
export const PLANS = [
  'knows all',
  'the plan',
  'without a model',
  'knows the world',
  'knows the priors',
] as const;

/**
 * What the plans give of one who knows all, of the command, of one without a model, of one who knows the world and the files, and of
 * one who knows the true priors and the files, but not how growers choose.
 */
export function planScore(
  grower: SimulatedGrower,
  given: Given,
  { bestKnown, truePriors }: { readonly bestKnown: Predictor; readonly truePriors: Predictor },
): PlanGives[] {
  const { truth, lots } = grower;
  const { useOn, flowers } = given;
  const barren = (mother: string, father: string) => truth.pair(mother, father) === Number.NEGATIVE_INFINITY;
  const unnamed = { useOn, incompatible: () => false };
  const questions: PlanQuestion[] = [
    { predict: oracle(truth, lots), useOn, incompatible: barren },
    given,
    { ...unnamed, predict: alike(flowers) },
    { ...unnamed, predict: bestKnown },
    { ...unnamed, predict: truePriors },
  ];
  return questions.map((question) => planGives(grower, given, question));
}

/** What one plan gives. */
export function planGives(
  grower: SimulatedGrower,
  { season, flowers }: Pick<Given, 'season' | 'flowers'>,
  question: PlanQuestion,
): PlanGives {
  const tried = new Set(
    flowers.map(({ seedParent, pollenParent }) => JSON.stringify([seedParent, pollenParent])),
  );
  const amongTried = {
    ...question,
    incompatible: (mother: string, father: string) =>
      !tried.has(JSON.stringify([mother, father])) || question.incompatible(mother, father),
  };
  const mixes = trueFrontier(grower, season, question);
  return {
    area: areaUnder(mixes),
    areaTried: areaUnder(trueFrontier(grower, season, amongTried)),
    fruits: Math.max(0, ...mixes.map(({ fruits }) => fruits)),
    varieties: Math.max(0, ...mixes.map(({ varieties }) => varieties)),
  };
}

/** What the mixes of a plan truly give. */
function trueFrontier({ truth, lots }: SimulatedGrower, season: Season, question: PlanQuestion): Gives[] {
  const pollens = new Map(
    lots.map((lot) => [lot.vial, { lot, ageDays: daysBetween(lot.collected, question.useOn) }]),
  );
  return plan(season.flowers, season.vials, question).frontier.map(({ allocation }) =>
    givenBy(allocation, ({ seedParent, pollenParent, vial }) =>
      truth.rate(seedParent, pollenParent, vial === null ? null : pollens.get(vial)!),
    ),
  );
}
