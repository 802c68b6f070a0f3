/** What the season review tells of methods, pairs and vials: which first, which at all. */

import type { Analysis } from '../../analyse.ts';
import type { PooledPair } from '../../analysis/pairs.ts';
import type { AgeBand } from '../../analysis/raw.ts';
import type { VialAdvice } from '../../decisions/vials.ts';
import { standings, type VialStanding, vialsThat } from './vials.ts';

type Method = Analysis['raw']['byStorage'][number];

/** Methods with flowers: the stored one that was used most, then fresh pollen, then the others. */
export function methodsInOrder(byStorage: readonly Method[]): readonly Method[] {
  const used = byStorage.filter(({ flowers }) => flowers > 0);
  const isFresh = ({ storage }: Method) => storage === 'fresh';
  const [most, ...others] = used.filter((method) => !isFresh(method));
  return [...(most ? [most] : []), ...used.filter(isFresh), ...others];
}

/** How many vials have each verdict, then how many are empty, in their fixed order; what no vial has is left out. */
export function verdictTally(
  vials: readonly Pick<VialAdvice, 'verdict' | 'dosesLeft'>[],
): readonly (readonly [VialStanding, number])[] {
  return standings(vials)
    .map((standing) => [standing, vialsThat(standing, vials).length] as const)
    .filter(([, count]) => count > 0);
}

/** Fewer flowers than this on one pair are not ranked (Spiegelhalter 2005: small groups are not ranked). */
export const FEWEST_RANKED = 5;

/** Pairs as they are told of and drawn: each stands in one group. */
export interface PairGroups {
  /** Crosses that are ranked, the safest first. */
  readonly ranked: readonly PooledPair[];
  /** A plant with its own pollen: no cross to plan, so without a rank. */
  readonly selfed: readonly PooledPair[];
  /** Named incompatible. */
  readonly incompatible: readonly PooledPair[];
  /** Pairs of too few flowers for a rank. */
  readonly few: readonly PooledPair[];
}

/** The groups of pairs; the ranked ones by the cautious end of their range, ties in the order given. */
export function pairGroups(pairs: readonly PooledPair[]): PairGroups {
  const enough = pairs.filter(({ flowers }) => flowers >= FEWEST_RANKED);
  const open = enough.filter(({ named }) => !named);
  const isSelfed = ({ seedParent, pollenParent }: PooledPair) => seedParent === pollenParent;
  return {
    ranked: open.filter((pair) => !isSelfed(pair)).sort((a, b) => (b.lower ?? -1) - (a.lower ?? -1)),
    selfed: open.filter(isSelfed),
    incompatible: enough.filter(({ named }) => named),
    few: pairs.filter(({ flowers }) => flowers < FEWEST_RANKED),
  };
}

/** The safest bet by its cautious end, and how many pairs have too few flowers. */
export function safestPair(pairs: readonly PooledPair[]): {
  readonly safest: PooledPair | undefined;
  readonly few: number;
} {
  const { ranked, few } = pairGroups(pairs);
  return { safest: ranked.find(({ lower }) => lower !== null), few: few.length };
}

/** Bands of fewer flowers are drawn and in the table, but not told as what happened at an age. */
const FEWEST_TOLD = 5;

/** The youngest and the oldest age that are told. */
export function agesTold(bands: readonly AgeBand[]): readonly AgeBand[] {
  const enough = bands.filter(({ flowers }) => flowers >= FEWEST_TOLD);
  const told = enough.length >= 2 ? enough : bands;
  return [...new Set([told[0], told[told.length - 1]])].flatMap((band) => (band ? [band] : []));
}

/** Rows that could be read: what the overview's chart counts too. */
export function flowersRead({ byOutcome }: Analysis['rows']): number {
  return byOutcome.reduce((sum, outcome) => sum + outcome.rows, 0);
}
