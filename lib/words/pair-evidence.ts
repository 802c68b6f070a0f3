/** Incompatible pairs with their evidence, selfed against crossed flowers, and crosses both ways. */

import type { Compatibility, SelfCompatibility, SuspectedPair } from '../analysis/compatibility.ts';
import type { Reciprocal } from '../analysis/reciprocal.ts';
import type { Estimate } from '../proportions/interval.ts';
import { pairName } from './choice-figures.ts';
import { counted, counts, decimal, difference, likelyBeside, rateInText } from './numbers.ts';

/** Where the pollen stands, by what it did on other plants. */
const EVIDENCE: Readonly<Record<SuspectedPair['evidence'], (pair: SuspectedPair) => string>> = {
  'pollen-took-elsewhere': ({ pollenElsewhere }) =>
    `the same pollen took ${counts(pollenElsewhere.fruits, pollenElsewhere.flowers)} on other plants, so it is not bad pollen`,
  'pollen-failed-elsewhere': ({ pollenElsewhere }) =>
    `the same pollen took ${counts(pollenElsewhere.fruits, pollenElsewhere.flowers)} on other plants, so it could be bad pollen`,
  'pollen-not-tried-elsewhere': () => 'that pollen was tried on no other plant, so it could be bad pollen',
};

/** How many of them had fresh pollen; empty where none had. */
function freshSaid({ all, fresh }: SuspectedPair): string {
  if (fresh.flowers === 0) return '';
  if (fresh.flowers === all.flowers) return ', all with fresh pollen';
  return `, ${counts(fresh.fruits, fresh.flowers)} with fresh pollen`;
}

function suspectSaid(pair: SuspectedPair, line: number): string {
  const self = pair.kind === 'self' ? ', its own pollen,' : '';
  return (
    `${pairName(pair)}${self} counts as incompatible, ${likelyBeside(pair.incompatible, line)}: ` +
    `${counts(pair.all.fruits, pair.all.flowers)} took${freshSaid(pair)}; ${EVIDENCE[pair.evidence](pair)}.`
  );
}

/**
 * Pairs that count as incompatible, a sentence each with its evidence. Empty where none is named.
 *
 * @example
 * const none = { fruits: 0, flowers: 11, estimate: 0, lower: 0, upper: 0.26 };
 * const suspect = { seedParent: 'Abendglocke', pollenParent: 'Abendstern', kind: 'cross', incompatible: 0.83, named: true, all: none, fresh: none };
 * incompatibleSaid({ named: 0.8, pairs: [{ ...suspect, evidence: 'pollen-took-elsewhere', pollenElsewhere: { ...none, fruits: 6, flowers: 10 } }] }); // 'Abendglocke × Abendstern counts as incompatible, likely (about 83 in 100): 0 of 11 took,…'
 */
export function incompatibleSaid({ pairs, named }: Pick<Compatibility, 'pairs' | 'named'>): string {
  return pairs
    .filter((pair) => pair.named)
    .map((pair) => suspectSaid(pair, named))
    .join(' ');
}

/** All plants together that have both selfed and crossed flowers. */
function ofAllPlants({
  selfIncompatibility,
}: Pick<Compatibility, 'selfIncompatibility'>): SelfCompatibility | undefined {
  return selfIncompatibility.find(({ plant }) => plant === null);
}

/**
 * Selfed against crossed flowers of all plants that have both; empty where none has.
 *
 * @example
 * const selfed = { fruits: 1, flowers: 12, estimate: 1 / 12, lower: 0.015, upper: 0.354 };
 * const crossed = { fruits: 20, flowers: 30, estimate: 2 / 3, lower: 0.488, upper: 0.808 };
 * selfingSaid({ selfIncompatibility: [{ plant: null, selfed, crossed }] }); // 'On plants both selfed and crossed with fresh pollen, their own took 1 of 12 (about 1 in…'
 */
export function selfingSaid(compatibility: Pick<Compatibility, 'selfIncompatibility'>): string {
  const all = ofAllPlants(compatibility);
  if (all === undefined) return '';
  return (
    `On plants both selfed and crossed with fresh pollen, their own took ${rateInText(all.selfed)}, that of others ` +
    `${rateInText(all.crossed)}.`
  );
}

/**
 * Both indexes of self-incompatibility under their formulas; empty where nothing can be divided.
 *
 * @example
 * const [selfOverCross, oneMinusSelfOverCross] = [{ estimate: 0.125, lower: 0.02, upper: 0.55 }, { estimate: 0.875, lower: 0.45, upper: 0.98 }];
 * selfIndexesSaid({ selfIncompatibility: [{ plant: null, selfOverCross, oneMinusSelfOverCross }] }); // 'Two indexes of self-incompatibility are in use: 1 − self ÷ cross = 0.88 (could be 0.45 to…'
 */
export function selfIndexesSaid(compatibility: Pick<Compatibility, 'selfIncompatibility'>): string {
  const all = ofAllPlants(compatibility);
  if (all === undefined || all.selfOverCross.estimate === null) return '';
  return (
    `Two indexes of self-incompatibility are in use: 1 − self ÷ cross = ${indexed(all.oneMinusSelfOverCross)}; ` +
    `self ÷ cross = ${indexed(all.selfOverCross)}.`
  );
}

function indexed({ estimate, lower, upper }: Estimate): string {
  const value = decimal(estimate ?? 0, 2);
  return lower === null || upper === null
    ? value
    : `${value} (could be ${decimal(lower, 2)} to ${decimal(upper, 2)})`;
}

/** Fewest flowers in each direction for a pair of crosses to be compared in a sentence. */
const FEWEST_EACH_WAY = 3;

/**
 * The two plants crossed both ways most often, with the difference; empty where none were.
 *
 * @example
 * const first = { seedParent: 'Nachtlaterne', pollenParent: 'Silberfaden', fruits: 11, flowers: 14 };
 * const second = { seedParent: 'Silberfaden', pollenParent: 'Nachtlaterne', fruits: 8, flowers: 13 };
 * reciprocalSaid([{ first, second, difference: { estimate: 0.17, lower: -0.16, upper: 0.46 } }]); // '1 pair of plants was crossed both ways. Most often Nachtlaterne × Silberfaden, 11 of 14,…'
 */
export function reciprocalSaid(crosses: readonly Reciprocal[]): string {
  if (crosses.length === 0) return '';
  const start = `${counted(crosses.length, 'pair')} of plants ${crosses.length === 1 ? 'was' : 'were'} crossed both ways`;
  const [most] = crosses.filter(
    ({ first, second }) => Math.min(first.flowers, second.flowers) >= FEWEST_EACH_WAY,
  );
  if (most === undefined) return `${start}, none often enough to compare.`;
  const { first, second } = most;
  return (
    `${start}. Most often ${pairName(first)}, ${counts(first.fruits, first.flowers)}, against ${pairName(second)}, ` +
    `${counts(second.fruits, second.flowers)}: the second gives ${difference(most.difference)}.`
  );
}
