/** What a grower's plan would truly give, beside the plans of those who know more and of one who knows less. */

import type { Flower } from '../../lib/analysis/flowers.ts';
import type { Predictor } from '../../lib/analysis/predictor.ts';
import { plan } from '../../lib/decisions/plan.ts';
import type { PlanQuestion } from '../../lib/decisions/plan-sources.ts';
import type { VialAdvice } from '../../lib/decisions/vials.ts';
import type { Season } from '../../lib/season/season.ts';
import { alike } from './alike.ts';
import type { Gives } from './frontier-area.ts';
import { areaUnder, givenBy } from './frontier-area.ts';
import type { SimulatedGrower } from './grower-season.ts';
import { oracle } from './grower-truth.ts';

/** As much of what the command would say as a plan rests on. */
interface Given extends PlanQuestion {
  readonly season: Season;
  readonly flowers: readonly Flower[];
  readonly advice: readonly VialAdvice[];
}

/**
 * Areas under the frontiers of one who knows all, of the plan, of a plan without a model, and of one who knows the world and the
 * files; all at the true rates: over all pairs, then over the tried ones alone.
 */
export function planScore(grower: SimulatedGrower, given: Given, bestKnown: Predictor) {
  const { truth, lots } = grower;
  const { useOn, flowers } = given;
  const barren = (mother: string, father: string) => truth.pair(mother, father) === Number.NEGATIVE_INFINITY;
  const never = () => false;
  const questions: PlanQuestion[] = [
    { predict: oracle(truth, lots), useOn, incompatible: barren },
    given,
    { predict: alike(flowers), useOn, incompatible: never },
    { predict: bestKnown, useOn, incompatible: never },
  ];
  const tried = new Set(
    flowers.map(({ seedParent, pollenParent }) => JSON.stringify([seedParent, pollenParent])),
  );
  const amongTried = questions.map((question) => ({
    ...question,
    incompatible: (mother: string, father: string) =>
      !tried.has(JSON.stringify([mother, father])) || question.incompatible(mother, father),
  }));
  const frontiers = questions.map((question) => trueFrontier(grower, given, question));
  return {
    area: frontiers.map(areaUnder),
    areaTried: amongTried.map((question) => areaUnder(trueFrontier(grower, given, question))),
    fruits: frontiers.map((mixes) => Math.max(0, ...mixes.map(({ fruits }) => fruits))),
    varieties: frontiers.map((mixes) => Math.max(0, ...mixes.map(({ varieties }) => varieties))),
  };
}

/** What the mixes of a plan truly give. */
function trueFrontier(
  { truth, lots }: SimulatedGrower,
  { season, advice }: Given,
  question: PlanQuestion,
): Gives[] {
  const pollens = new Map(
    advice.map(({ vial, ageDays }) => [vial, { lot: lots.find((lot) => lot.vial === vial)!, ageDays }]),
  );
  return plan(season.flowers, season.vials, question).frontier.map(({ allocation }) =>
    givenBy(allocation, ({ seedParent, pollenParent, vial }) =>
      truth.rate(seedParent, pollenParent, vial === null ? null : pollens.get(vial)!),
    ),
  );
}
