import type { GroupEffect } from '../regression/given-variances.ts';
import { collinearColumns } from '../regression/logistic.ts';
import { type MixedFit, mixedLogistic } from '../regression/mixed-logistic.ts';
import { waldIntervals } from '../regression/terms.ts';
import { onScale } from './age-scale.ts';
import { type Flower, storageOrder } from './flowers.ts';
import type { AgeScale, ModelTerm, ParentEffect, ParentsModel } from './models.ts';
import { type AgedFlower, agedFlowers, withinBetween } from './within-between.ts';

/** Options of the parents' model. */
export interface ParentsModelOptions {
  /** `log1p-days` (the default): the logarithm of one day more than the age; or `days`. */
  readonly ageScale?: AgeScale;
  /** Level of the ranges, a proportion in (0, 1), 0.95 by default. */
  readonly level?: number;
}

/**
 * A standard deviation beyond this, on the logit scale, is no finding: plants one apart would differ 22 000-fold in their
 * odds. It stands where some plants always took and the others never did, and the likelihood rises without end.
 */
const WIDEST_SPREAD = 10;

interface FixedColumns {
  readonly columns: ReadonlyMap<string, Float64Array>;
  readonly left: readonly string[];
}

/**
 * Storage and age within pairs, then each pair's shares and mean ages, less those that are constant or follow from
 * columns before them: where each pair knows one method only, its share is the method itself.
 */
function fixedColumns(flowers: readonly AgedFlower[], ageScale: AgeScale): FixedColumns {
  const order = storageOrder(flowers);
  const reference = order[0]!;
  const all = withinBetween(flowers, order, (ageDays) => onScale(ageDays, ageScale));
  const wanted = (['storage', 'age', 'share', 'meanAge'] as const).flatMap((role) => {
    const without = role === 'storage' || role === 'share' ? reference : 'fresh';
    return all.filter((column) => column.role === role && column.storage !== without);
  });
  const columns = new Map(wanted.map(({ name, values }) => [name, values]));
  const left = collinearColumns({ successes: flowers.map(({ fruit }) => fruit), columns });
  for (const name of left) columns.delete(name);
  return { columns, left };
}

/**
 * Levels of the random effects of each flower. Fresh pollen comes from no vial. Vial and morning are in where there
 * are two levels or more, one of them with two flowers.
 */
function groupsOf(flowers: readonly AgedFlower[]): ReadonlyMap<string, readonly (string | number | null)[]> {
  const groups = new Map<string, readonly (string | number | null)[]>([
    ['seedParent', flowers.map(({ seedParent }) => seedParent)],
    ['pollenParent', flowers.map(({ pollenParent }) => pollenParent)],
    ['pair', flowers.map(({ pair }) => pair)],
  ]);
  const vials = flowers.map(({ storage, vial }) => (storage === 'fresh' ? null : vial));
  const mornings = flowers.map(({ morning }) => morning);
  if (severalLevels(vials)) groups.set('vial', vials);
  if (severalLevels(mornings)) groups.set('morning', mornings);
  return groups;
}

function severalLevels(labels: readonly (string | null)[]): boolean {
  const known = labels.filter((label) => label !== null);
  const levels = new Set(known).size;
  return levels >= 2 && levels < known.length;
}

/** Effects with names: a pair's level is its two parents, seed parent first. */
function namedEffects(effects: readonly GroupEffect[], flowers: readonly AgedFlower[]): ParentEffect[] {
  const pairs = new Map(flowers.map((flower) => [String(flower.pair), flower]));
  return effects.map(({ group, level, estimate, se }) => {
    if (group !== 'pair') return { effect: group, level, estimate, se };
    const { seedParent, pollenParent } = pairs.get(level)!;
    return {
      effect: group,
      level: `${seedParent} × ${pollenParent}`,
      seedParent,
      pollenParent,
      estimate,
      se,
    };
  });
}

function namedTerms(fit: MixedFit, level: number): ModelTerm[] {
  return waldIntervals(fit, { level }).map(({ term, lower, upper, p }, j) => {
    const { estimate, se } = fit.terms[j]!;
    return { term, estimate, se, lower, upper, p };
  });
}

function withoutFit(
  ageScale: AgeScale,
  flowers: number,
  because: string,
  withoutTerms: readonly string[] = [],
): ParentsModel {
  return {
    ageScale,
    flowers,
    terms: [],
    withoutTerms,
    variances: {},
    singular: [],
    withoutEffects: [],
    effects: [],
    logLik: null,
    because,
  };
}

/** Why some flowers cannot have this model at all; null where they may. */
function tooFew(used: readonly Flower[], flowers: readonly AgedFlower[]): string | null {
  if (used.length === 0) return 'no-flowers';
  if (flowers.length === 0) return 'no-aged-flowers';
  if (new Set(flowers.map(({ pair }) => pair)).size < 2) return 'fewer-than-two-pairs';
  return new Set(flowers.map(({ fruit }) => fruit)).size < 2 ? 'one-outcome' : null;
}

/**
 * The parents' model: mixed logistic regression of fruit set with crossed random effects of seed parent, pollen parent
 * (general combining ability) and pair (specific combining ability), and of vial and morning where there are several;
 * textbook, by Laplace's approximation, no prior.
 *
 * Answers: how much do parents and pairs differ, pollen alike? The terms `storage` and `age` hold within pairs, since
 * each pair's share of a method and its mean age are terms of their own (`share`, `mean age`). Not for ranking pairs
 * (`pairs`, which also knows incompatible ones) nor for vials: with one to five flowers a pair Laplace's approximation
 * makes variances too small, and a variance of 0 does not mean that the parents are alike. Rows with a known age
 * only. Fresh pollen is the reference, else the commonest method. A vial or a morning has an effect where there are
 * at least two of them and at least two flowers in one.
 *
 * @param used used flowers, in any order
 * @param options `ageScale` and `level`
 * @returns terms with Wald ranges on the logit scale, variances, conditional modes with conditional standard
 *   deviations; nothing but `because` (`no-flowers`, `no-aged-flowers`, `fewer-than-two-pairs`, `one-outcome`,
 *   `terms-separated`, `spread-without-end`, `not-settled`) where there is no fit
 * @throws RangeError where `level` is not between 0 and 1
 * @see Breslow & Clayton (1993) J Am Stat Assoc 88:9–25; Mundlak (1978) Econometrica 46:69–85
 * @example
 * parentsModel(usedFlowers(season)).variances; // { seedParent: 0.31, pollenParent: 0.12, pair: 0, morning: 0.05 }
 */
export function parentsModel(
  used: readonly Flower[],
  { ageScale = 'log1p-days', level = 0.95 }: ParentsModelOptions = {},
): ParentsModel {
  const flowers = agedFlowers(used);
  const because = tooFew(used, flowers);
  if (because !== null) return withoutFit(ageScale, flowers.length, because);
  const { columns, left } = fixedColumns(flowers, ageScale);
  const successes = flowers.map(({ fruit }) => fruit);
  const fit = mixedLogistic({ successes, columns, groups: groupsOf(flowers) });
  if (!fit.convergence.settled) {
    return withoutFit(ageScale, flowers.length, fit.separated ? 'terms-separated' : 'not-settled', left);
  }
  if (fit.variances.some(({ variance }) => Math.sqrt(variance) > WIDEST_SPREAD)) {
    return withoutFit(ageScale, flowers.length, 'spread-without-end', left);
  }
  const told = <T extends { readonly group: string }>(parts: readonly T[]): readonly T[] =>
    parts.filter(({ group }) => !fit.unidentified.includes(group));
  return {
    ageScale,
    flowers: flowers.length,
    terms: namedTerms(fit, level),
    withoutTerms: left,
    variances: Object.fromEntries(told(fit.variances).map(({ group, variance }) => [group, variance])),
    singular: fit.singular,
    withoutEffects: fit.unidentified,
    effects: namedEffects(told(fit.effects), flowers),
    logLik: fit.logLik,
  };
}
