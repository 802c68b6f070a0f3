import { type Estimate, type Proportion, unknown } from '../proportions/interval.ts';
import { mantelHaenszel, type Table } from '../proportions/stratified.ts';
import { newcombe } from '../proportions/two-sample.ts';
import { byCodePoint, type Flower } from './flowers.ts';
import type { GrowersRecord } from './plants-apart.ts';
import { proportionOf } from './proportion.ts';

/** A season with its first and last morning. */
export interface SeasonRate extends Proportion {
  readonly season: string;
  readonly from: string;
  readonly to: string;
}

/** What changed from one season to the next. Differences are later minus earlier. */
export interface SeasonChange {
  readonly from: string;
  readonly to: string;
  readonly earlier: Proportion;
  readonly later: Proportion;
  /** All flowers, Newcombe's hybrid score interval. */
  readonly difference: Estimate;
  /** The same pairs with the same kind of pollen in both seasons: Mantel–Haenszel's difference, Sato's interval. */
  readonly likeForLike: Estimate;
  /** Later ÷ earlier over the same strata. */
  readonly commonOddsRatio: Estimate;
  /** Pairs with one kind of pollen that have flowers in both seasons. */
  readonly strataWithBoth: number;
  /** Those among them that have both a fruit and a failure. */
  readonly informativeStrata: number;
}

/** Key `seasons` of the analysis. */
export interface Seasons {
  /** In the order of their first morning. */
  readonly bySeason: readonly SeasonRate[];
  /** In code-point order of their names; rows without a grower stand last, as null. */
  readonly byGrower: readonly (Proportion & { readonly grower: string | null })[];
  readonly bySeasonAndGrower: readonly (SeasonRate & { readonly grower: string | null })[];
  /** From each season to the next; the last entry is what changed since last season. */
  readonly changes: readonly SeasonChange[];
  readonly growers: GrowersRecord;
}

/** Fewer strata with both outcomes than this tell season from pair too badly to print a number. */
const FEWEST_STRATA = 3;

function groupsBy<K>(flowers: readonly Flower[], keyOf: (flower: Flower) => K): Map<K, Flower[]> {
  const groups = new Map<K, Flower[]>();
  for (const flower of flowers) {
    const group = groups.get(keyOf(flower));
    if (group === undefined) groups.set(keyOf(flower), [flower]);
    else group.push(flower);
  }
  return groups;
}

/** A morning's date, without the grower that may stand behind it. */
function dateOf({ morning }: Flower): string {
  return morning.slice(0, 10);
}

function seasonRate(season: string, flowers: readonly Flower[], level: number): SeasonRate {
  const dates = flowers.map(dateOf).sort();
  return { season, from: dates[0]!, to: dates.at(-1)!, ...proportionOf(flowers, level) };
}

function seasonRates(flowers: readonly Flower[], level: number): SeasonRate[] {
  return [...groupsBy(flowers, ({ season }) => season)]
    .map(([season, own]) => seasonRate(season, own, level))
    .sort((a, b) => byCodePoint(a.from, b.from) || byCodePoint(a.season, b.season));
}

function growerGroups(flowers: readonly Flower[]): [string | null, Flower[]][] {
  const rank = (grower: string | null) => (grower === null ? 1 : 0);
  return [...groupsBy(flowers, ({ grower }) => grower)].sort(
    ([a], [b]) => rank(a) - rank(b) || byCodePoint(a ?? '', b ?? ''),
  );
}

/** Fruits and failures of the later and the earlier season, one table for each pair with one kind of pollen. */
function tablesOf(later: readonly Flower[], earlier: readonly Flower[]): Table[] {
  const strata = new Map<number, Map<string, [[number, number], [number, number]]>>();
  const count = (flowers: readonly Flower[], row: 0 | 1) => {
    for (const { pair, storage, fruit } of flowers) {
      const ofPair = strata.get(pair) ?? new Map<string, [[number, number], [number, number]]>();
      strata.set(pair, ofPair);
      const table = ofPair.get(storage) ?? [
        [0, 0],
        [0, 0],
      ];
      ofPair.set(storage, table);
      table[row][1 - fruit]! += 1;
    }
  };
  count(later, 0);
  count(earlier, 1);
  return [...strata.values()]
    .flatMap((ofPair) => [...ofPair.values()])
    .filter(([[a, b], [c, d]]) => a + b > 0 && c + d > 0);
}

function withinStrata(tables: readonly Table[], level: number) {
  const informative = tables.filter(([[a, b], [c, d]]) => a + c > 0 && b + d > 0).length;
  if (informative < FEWEST_STRATA) {
    const because = tables.length === 0 ? 'no-pairs-in-both-seasons' : 'too-few-pairs-in-both-seasons';
    return { informative, likeForLike: unknown(because), commonOddsRatio: unknown(because) };
  }
  const { riskDifference, oddsRatio } = mantelHaenszel(tables, { level });
  const { logSe: _, ...commonOddsRatio } = oddsRatio;
  return { informative, likeForLike: riskDifference, commonOddsRatio };
}

function changeOf(flowers: readonly Flower[], from: SeasonRate, to: SeasonRate, level: number): SeasonChange {
  const of = ({ season }: SeasonRate) => flowers.filter((flower) => flower.season === season);
  const tables = tablesOf(of(to), of(from));
  const { informative, likeForLike, commonOddsRatio } = withinStrata(tables, level);
  const { season: fromSeason, from: _from, to: _to, ...earlier } = from;
  const { season: toSeason, from: __from, to: __to, ...later } = to;
  return {
    from: fromSeason,
    to: toSeason,
    earlier,
    later,
    difference: newcombe(later.fruits, later.flowers, earlier.fruits, earlier.flowers, { level }),
    likeForLike,
    commonOddsRatio,
    strataWithBoth: tables.length,
    informativeStrata: informative,
  };
}

/**
 * Seasons and growers: counts of each, and what changed from one season to the next.
 *
 * Answers: was this season better than the last, and is it the season or what was pollinated in it? Another season has
 * other pairs and other pollen, so `difference` mixes the two; `likeForLike` compares the same pair with the same kind
 * of pollen and needs three such with both outcomes. Not for growers against each other: their plants differ.
 *
 * @param flowers used flowers, plants told apart by grower
 * @param growers the record of `plantsApart`
 * @param options `level` of the ranges, a proportion in (0, 1), 0.95 by default
 * @see Newcombe (1998) Stat Med 17:873; Mantel & Haenszel (1959) JNCI 22:719; Sato (1989) Biometrics 45:1323
 * @example
 * seasons(usedFlowers(season), growers).changes.at(-1)?.difference; // later minus earlier
 */
export function seasons(
  flowers: readonly Flower[],
  growers: GrowersRecord,
  { level = 0.95 }: { readonly level?: number } = {},
): Seasons {
  const bySeason = seasonRates(flowers, level);
  const byGrower = growerGroups(flowers);
  return {
    bySeason,
    byGrower: byGrower.map(([grower, own]) => ({ grower, ...proportionOf(own, level) })),
    bySeasonAndGrower: bySeason.flatMap(({ season }) =>
      byGrower.flatMap(([grower, own]) => {
        const both = own.filter((flower) => flower.season === season);
        return both.length === 0 ? [] : [{ grower, ...seasonRate(season, both, level) }];
      }),
    ),
    changes: bySeason.slice(1).map((to, i) => changeOf(flowers, bySeason[i]!, to, level)),
    growers,
  };
}
