import { type Estimate, type Proportion, unknown } from '../proportions/interval.ts';
import { mantelHaenszel, type Table } from '../proportions/stratified.ts';
import { newcombe } from '../proportions/two-sample.ts';
import { conditionalLogistic } from '../regression/conditional-logistic.ts';
import { waldIntervals } from '../regression/terms.ts';
import type { Season } from '../season/season.ts';
import { medianAge } from './age-scale.ts';
import { type Flower, storageOrder, usedFlowers } from './flowers.ts';
import { proportionOf } from './proportion.ts';
import { agedFlowers } from './within-between.ts';

/** Key `freshVersusStored` of the analysis: one entry a stored method. */
export interface FreshVersusStored {
  readonly storage: string;
  readonly fresh: Proportion;
  readonly stored: Proportion;
  /** Fresh minus stored, all flowers (Newcombe's hybrid score interval). */
  readonly difference: Estimate;
  /** Fresh ÷ stored, Mantel–Haenszel over pairs. */
  readonly commonOddsRatio: Estimate;
  /** Fresh ÷ stored, conditional logistic regression within pairs. */
  readonly conditionalOddsRatio: Estimate;
  /** Pairs with at least one fresh and one stored flower whose outcome is known. */
  readonly pairsWithBoth: number;
  /** Those among them that have both a fruit and a failure: the pairs that can tell pollen from pair. */
  readonly informativePairs: number;
  /** Fresh minus stored like for like (within–between model), stored at its median age. */
  readonly adjusted: Estimate;
  /** Median age in days of this method's pollen, at which `adjusted` holds; null without ages. */
  readonly medianAgeDays: number | null;
}

/** Options of the comparison. */
export interface FreshVersusStoredOptions {
  /** Level of the ranges, a proportion in (0, 1), 0.95 by default. */
  readonly level?: number;
  /** The like-for-like difference of a method, given how many pairs can tell pollen from pair. */
  readonly adjusted: (storage: string, informativePairs: number) => Estimate;
}

/** The fresh flowers and those of one stored method. */
interface Comparison {
  readonly fresh: readonly Flower[];
  readonly stored: readonly Flower[];
}

/** Fruits and failures of fresh and of stored flowers, pair by pair, for the pairs that have both kinds. */
function tablesOf({ fresh, stored }: Comparison): Table[] {
  const byPair = new Map<number, [[number, number], [number, number]]>();
  const count = (flowers: readonly Flower[], row: 0 | 1) => {
    for (const { pair, fruit } of flowers) {
      const table = byPair.get(pair) ?? [
        [0, 0],
        [0, 0],
      ];
      table[row][1 - fruit]! += 1;
      byPair.set(pair, table);
    }
  };
  count(fresh, 0);
  count(stored, 1);
  return [...byPair.values()].filter(([[a, b], [c, d]]) => a + b > 0 && c + d > 0);
}

/** Pairs that can tell pollen from pair: both kinds of pollen and both outcomes. */
function informativeOf(tables: readonly Table[]): number {
  return tables.filter(([[a, b], [c, d]]) => a + c > 0 && b + d > 0).length;
}

/** Why no odds ratio within pairs can be had; null where it can. */
function noRatioBecause(tables: readonly Table[]): string | null {
  if (tables.length === 0) return 'no-pairs-with-both';
  return informativeOf(tables) === 0 ? 'no-informative-pairs' : null;
}

function commonOddsRatio(tables: readonly Table[], level: number): Estimate {
  const because = noRatioBecause(tables);
  if (because !== null) return unknown(because);
  const { logSe: _, ...ratio } = mantelHaenszel(tables, { level }).oddsRatio;
  return ratio;
}

/** Odds ratio of fresh pollen within pairs, from exact conditional logistic regression; its range on the log scale. */
function conditionalOddsRatio(
  { fresh, stored }: Comparison,
  tables: readonly Table[],
  level: number,
): Estimate {
  const because = noRatioBecause(tables);
  if (because !== null) return unknown(because);
  const flowers = [...fresh, ...stored];
  const fit = conditionalLogistic({
    successes: flowers.map(({ fruit }) => fruit),
    columns: { fresh: flowers.map(({ storage }) => (storage === 'fresh' ? 1 : 0)) },
    groups: { pair: flowers.map(({ pair }) => pair) },
  });
  const [term] = waldIntervals(fit, { level });
  if (term!.estimate === null) return unknown(term!.because!);
  const [estimate, lower, upper] = [term!.estimate, term!.lower!, term!.upper!].map(Math.exp);
  return { estimate: estimate!, lower: lower!, upper: upper! };
}

function differenceOf(fresh: Proportion, stored: Proportion, level: number): Estimate {
  if (fresh.flowers === 0) return unknown('no-fresh-flower');
  return newcombe(fresh.fruits, fresh.flowers, stored.fruits, stored.flowers, { level });
}

/**
 * Fresh against each stored method: all flowers, and like for like within pairs.
 *
 * Answers: did stored pollen work, and is it the pollen or the pairs it went to? Fresh pollen goes to easy pairs, so
 * `difference` is not the cost of storing; the odds ratios within pairs and `adjusted` are nearer to it. A × B and
 * B × A are two pairs. Not for how fruit set fades with age (`ageCurve`): the odds ratios have no age term.
 *
 * @param season the season as read
 * @param options `level`, and `adjusted`, which gives the like-for-like difference of a method
 * @returns one entry a stored method with a used flower, most flowers first; odds ratios are fresh ÷ stored
 * @throws RangeError where `level` is not between 0 and 1
 * @see Newcombe (1998) Stat Med 17:873; Mantel & Haenszel (1959) JNCI 22:719; Robins, Breslow & Greenland (1986)
 *   Biometrics 42:311; Breslow & Day (1980) Statistical Methods in Cancer Research I, chapter 7
 * @example
 * freshVersusStored(season, { adjusted })[0].storage; // 'frozen'
 */
export function freshVersusStored(
  season: Season,
  { level = 0.95, adjusted }: FreshVersusStoredOptions,
): FreshVersusStored[] {
  const flowers = usedFlowers(season);
  const of = (method: string) => flowers.filter(({ storage }) => storage === method);
  const fresh = of('fresh');
  return storageOrder(flowers)
    .filter((storage) => storage !== 'fresh')
    .map((storage) => compare(storage, { fresh, stored: of(storage) }, level, adjusted));
}

function compare(
  storage: string,
  comparison: Comparison,
  level: number,
  adjusted: FreshVersusStoredOptions['adjusted'],
): FreshVersusStored {
  const tables = tablesOf(comparison);
  const informativePairs = informativeOf(tables);
  const fresh = proportionOf(comparison.fresh, level);
  const stored = proportionOf(comparison.stored, level);
  return {
    storage,
    fresh,
    stored,
    difference: differenceOf(fresh, stored, level),
    commonOddsRatio: commonOddsRatio(tables, level),
    conditionalOddsRatio: conditionalOddsRatio(comparison, tables, level),
    pairsWithBoth: tables.length,
    informativePairs,
    adjusted: adjusted(storage, informativePairs),
    medianAgeDays: medianAge(agedFlowers(comparison.stored), storage),
  };
}
