/** Key `plan`: how next season's flowers can be split, from most fruits to most varieties. */

import type { ExpectedFlowers, Vial } from '../season/season.ts';
import { frontierOf } from './frontier.ts';
import type { Mix } from './mix.ts';
import { mixTeller } from './mix.ts';
import { namedMixes } from './mix-names.ts';
import type { Limits } from './plan-problem.ts';
import { problemOf } from './plan-problem.ts';
import type { LeftOutVial, PlanQuestion } from './plan-sources.ts';
import { freshPollens, plannedSources, storedPollens } from './plan-sources.ts';
import { type Unmet, unmetWishes } from './unmet-wishes.ts';

/** Key `plan`. */
export interface Plan {
  readonly frontier: readonly Mix[];
  /** Flowers of the flowers file. */
  readonly flowers: number;
  /** Vials without a number of doses, planned as one dose each. */
  readonly blankDoses: readonly string[];
  readonly leftOutVials: readonly LeftOutVial[];
  /** Must-have crosses that cannot have all their flowers. */
  readonly unmet: readonly Unmet[];
  /** Why there is no mix; left out where there is one. */
  readonly because?: string;
}

export interface PlanOptions extends Limits {
  /** Mixes, at most. */
  readonly mixes?: number;
  /** Expected seeds of a set fruit of a pair; null without seed counts. */
  readonly seeds?: ((seedParent: string, pollenParent: string) => number) | null;
}

const MOST_MIXES = 12;

/**
 * Next season's flowers split between most fruits and most varieties.
 *
 * Answers: how many flowers of each seed parent should get which pollen? Each mix is the best there is for its
 * weighting of expected fruits and expected varieties (ordered pairs with at least one fruit); doses and flowers are
 * never exceeded. Not for a season without an expectation of flowers, nor for the order of mornings: see
 * `crossingSheet`.
 *
 * Expected varieties: sum over ordered pairs of 1 − E[Π (1 − p)ⁿ] over the pair's pollens, the mean taken over
 * posterior draws, so that flowers that share an uncertain parent or vial do not count as independent.
 *
 * @param offers rows of the flowers file
 * @param vials the register; a vial without a number of doses is planned with one
 * @param question predictor, day of use, which pairs are named incompatible
 * @param options crosses that must be tried, ceilings, number of mixes, seeds of a fruit
 * @throws RangeError where an option breaks its rule
 * @example
 * plan(season.flowers, season.vials, question).frontier[0].expectedFruits; // the mix with most fruits
 */
export function plan(
  offers: readonly ExpectedFlowers[],
  vials: readonly Vial[],
  question: PlanQuestion,
  options: PlanOptions = {},
): Plan {
  checkPlanOptions(options);
  const { pollens: stored, leftOut } = storedPollens(vials, question);
  const open = offers.filter(({ flowers }) => flowers > 0);
  const pollens = [...freshPollens(open), ...stored];
  const sources = plannedSources(open, pollens, question.incompatible);
  const { problem, pairs } = problemOf(open, pollens, sources, question, options);
  const points = sources.length === 0 ? [] : frontierOf(problem, options.mixes ?? MOST_MIXES);
  const told = mixTeller(sources, problem, question, options.seeds ?? null);
  const last = points.at(-1);
  return {
    frontier: namedMixes(unbeaten(points.map(told))),
    flowers: offers.reduce((sum, { flowers }) => sum + flowers, 0),
    blankDoses: stored.flatMap(({ vial }) => (vial!.dosesLeft === null ? [vial!.vial] : [])),
    leftOutVials: leftOut,
    unmet: unmetWishes(options.must ?? [], last?.counts ?? new Int32Array(0), problem, pairs, {
      open,
      stored,
      sources,
      incompatible: question.incompatible,
    }),
    ...(points.length === 0
      ? { because: open.length === 0 ? 'no-expected-flowers' : 'no-pollen-for-flowers' }
      : {}),
  };
}

function checkPlanOptions({ must = [], ceilings = [], mixes = MOST_MIXES }: PlanOptions): void {
  for (const { flowers } of [...must, ...ceilings]) {
    if (!Number.isInteger(flowers) || flowers < 0) {
      throw new RangeError(`plan: flowers of must and ceilings must be whole numbers from 0, got ${flowers}`);
    }
  }
  if (!Number.isInteger(mixes) || mixes < 2 || mixes > MOST_MIXES) {
    throw new RangeError(`plan: mixes must be a whole number from 2 to ${MOST_MIXES}, got ${mixes}`);
  }
}

/** Mixes that no other beats in both: the search sees fewer draws than are shown, so two may have changed places. */
function unbeaten(mixes: readonly Mix[]): Mix[] {
  const beats = (a: Mix, b: Mix) =>
    a.expectedFruits >= b.expectedFruits &&
    a.expectedVarieties >= b.expectedVarieties &&
    (a.expectedFruits > b.expectedFruits || a.expectedVarieties > b.expectedVarieties);
  return mixes
    .filter((mix) => !mixes.some((other) => beats(other, mix)))
    .sort((a, b) => b.expectedFruits - a.expectedFruits);
}
