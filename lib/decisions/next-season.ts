/** Key `plan`: the plan of next season's flowers, with what one must know beside it. */

import type { Flower } from '../analysis/flowers.ts';
import type { Predictor } from '../analysis/predictor.ts';
import { seedsByPair } from '../analysis/seeds-by-pair.ts';
import type { Season } from '../season/season.ts';
import type { Plan } from './plan.ts';
import { plan } from './plan.ts';
import type { Ceiling, Limits, Must } from './plan-problem.ts';

/** Key `plan`, where a flowers file was given. */
export interface NextSeason extends Plan {
  /** Seed parents that no flower with a known outcome stood on so far: judged by what plants differ at all. */
  readonly newSeedParents: readonly string[];
  /** The same of pollen parents that the mixes use. */
  readonly newPollenParents: readonly string[];
  /** Whether the day of use lies before the last day of the files. */
  readonly usedInPast: boolean;
}

/** What the plan needs to know beside the season. */
export interface NextSeasonQuestion extends Limits {
  readonly predict: Predictor | null;
  /** Why there is no model, where `predict` is null. */
  readonly because: string;
  readonly useOn: string | null;
  readonly incompatible: (seedParent: string, pollenParent: string) => boolean;
}

/** Every plant that a season's files name. */
export function plantsOf({ crosses, vials, flowers }: Season): Set<string> {
  return new Set([
    ...crosses.flatMap(({ seedParent, pollenParent }) =>
      pollenParent === null ? [seedParent] : [seedParent, pollenParent],
    ),
    ...vials.map(({ pollenParent }) => pollenParent),
    ...flowers.map(({ seedParent }) => seedParent),
  ]);
}

/**
 * The plan of a season's flowers file.
 *
 * @param season with plants told apart
 * @param flowers its flowers with a known outcome
 * @returns null where no flowers file gives a row
 * @throws RangeError where a limit names a plant that is in none of the files
 */
export function nextSeason(
  season: Season,
  flowers: readonly Flower[],
  { predict, because, useOn, incompatible, must = [], ceilings = [] }: NextSeasonQuestion,
): NextSeason | null {
  checkPlants(season, [...must, ...ceilings]);
  if (season.flowers.length === 0) return null;
  const tried = new Set(flowers.map(({ seedParent }) => seedParent));
  const expected = [...new Set(season.flowers.map(({ seedParent }) => seedParent))];
  const beside = {
    newSeedParents: expected.filter((plant) => !tried.has(plant)),
    usedInPast: useOn !== null && season.asOf !== null && useOn < season.asOf,
  };
  if (predict === null || useOn === null) {
    return { ...noMix(season, because), ...beside, newPollenParents: [] };
  }
  const question = { predict, useOn, incompatible };
  const options = { must, ceilings, seeds: seedsByPair(season) };
  const made = plan(season.flowers, season.vials, question, options);
  const result = { ...made, ...beside, newPollenParents: newFathers(made, flowers) };
  let alone: Plan | null = null;
  freshAlone.set(result, () => {
    alone ??= plan(season.flowers, [], question, options);
    return alone;
  });
  return result;
}

/** What makes the plan without vials, by the plan with them: the fitted model is no part of a result. */
const freshAlone = new WeakMap<NextSeason, () => Plan>();

/**
 * Next season's flowers planned with fresh pollen alone: same model, day of use and wishes, no vials.
 *
 * Answers: what do the vials add to a plan? Nothing is fitted again. While a plan with mixes is kept, so is the model that
 * it rests on.
 *
 * @param made key `plan` of a result of `analyse`, itself and no copy
 * @returns the plan without vials; null where the one with them has no mix
 * @throws RangeError where `analyse` did not make it
 * @example
 * planWithoutVials(analyse(season).plan); // null
 */
export function planWithoutVials(made: NextSeason | null): Plan | null {
  if (made === null || made.frontier.length === 0) return null;
  const make = freshAlone.get(made);
  if (make === undefined) {
    throw new RangeError('planWithoutVials: made must be a plan that analyse gave, itself and no copy');
  }
  return make();
}

/** Key `plan` with the reason for its absence. */
export function planned(
  season: Season,
  flowers: readonly Flower[],
  question: Omit<NextSeasonQuestion, 'must' | 'ceilings'>,
  { must = [], atMost = [] }: { readonly must?: readonly Must[]; readonly atMost?: readonly Ceiling[] },
): { readonly plan: NextSeason | null; readonly planBecause?: string } {
  const plan = nextSeason(season, flowers, { ...question, must, ceilings: atMost });
  return plan === null ? { plan, planBecause: 'no-flowers-file' } : { plan };
}

function noMix({ flowers }: Season, because: string): Plan {
  const total = flowers.reduce((sum, row) => sum + row.flowers, 0);
  return { frontier: [], flowers: total, blankDoses: [], leftOutVials: [], unmet: [], because };
}

function newFathers({ frontier }: Plan, flowers: readonly Flower[]): string[] {
  const tried = new Set(flowers.map(({ pollenParent }) => pollenParent));
  const used = frontier.flatMap(({ allocation }) => allocation.map(({ pollenParent }) => pollenParent));
  return [...new Set(used)].filter((plant) => !tried.has(plant)).sort();
}

function checkPlants(season: Season, limits: readonly (Must | Ceiling)[]): void {
  if (limits.length === 0) return;
  const plants = plantsOf(season);
  for (const { seedParent, pollenParent } of limits) {
    for (const plant of [seedParent, pollenParent]) {
      if (plant === undefined || plants.has(plant)) continue;
      throw new RangeError(`analyse: must and atMost must name plants of the files, got ${plant}`);
    }
  }
}
