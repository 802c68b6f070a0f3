/** The answers of page one, short: what a later section tells at length. */

import type { HalfAge } from '../analysis/age-curve.ts';
import type { FreshVersusStored } from '../analysis/fresh-versus-stored.ts';
import type { PooledPair } from '../analysis/pairs.ts';
import type { VialAdvice } from '../decisions/vials.ts';
import { pairName } from './choice-figures.ts';
import { days, daysWithRange } from './durations.ts';
import { CANNOT_TELL, capitalised, counts, difference, joined } from './numbers.ts';
import { storedAnswer } from './review.ts';
import { pollenOf } from './storage.ts';
import { safestPair } from './told/review.ts';
import { olderThanTried, type VialStanding, vialsThat } from './told/vials.ts';

/**
 * Fresh against stored pollen where the counts stand above: the difference alone, with the pairs that it rests on.
 *
 * @example storedShort({ ...analysis.freshVersusStored[0], pairsWithBoth: 9, informativePairs: 7 }) // 'Against fresh pollen on the same pairs (7 of 9 can tell), frozen pollen gives about…'
 */
export function storedShort(entry: FreshVersusStored): string {
  const { storage, adjusted, pairsWithBoth, informativePairs } = entry;
  if (adjusted.estimate === null) return storedAnswer(entry);
  return (
    `Against fresh pollen on the same pairs (${counts(informativePairs, pairsWithBoth)} can tell), ${pollenOf(storage)} ` +
    `gives ${difference(adjusted)}.`
  );
}

/**
 * How long pollen keeps, without the counts.
 *
 * @example halfAgeShort({ storage: 'frozen', oldestAgeDays: 776, estimate: null, lower: 776, upper: null }) // 'Frozen pollen had not fallen to half of its fruit set at the oldest age tried, about 2 years…'
 */
export function halfAgeShort(half: HalfAge): string {
  const { storage, estimate, lower, oldestAgeDays } = half;
  const pollen = capitalised(pollenOf(storage));
  if (oldestAgeDays === null) return `${pollen}: no flower has a known pollen age.`;
  if (estimate !== null) return `${pollen} falls to half of its fruit set after ${daysWithRange(half)}.`;
  if (lower === null || lower < oldestAgeDays)
    return `How fast ${pollenOf(storage)} fades one ${CANNOT_TELL}.`;
  return `${pollen} had not fallen to half of its fruit set at the oldest age tried, ${days(oldestAgeDays)}.`;
}

/**
 * The safest bet by its counts.
 *
 * @example pairsShort(analysis.pairs) // 'The safest bet is Nachtlaterne × Silberfaden: 11 of 14 took.'
 */
export function pairsShort(pairs: readonly PooledPair[]): string {
  const { safest } = safestPair(pairs);
  if (safest === undefined) return `The flowers ${CANNOT_TELL} which pair is the safest bet.`;
  return `The safest bet is ${pairName(safest)}: ${counts(safest.fruits, safest.flowers)} took.`;
}

/**
 * What to look at first among the vials, by name; empty where nothing calls for action.
 *
 * @example vialsToActOn(analysis.vials.slice(4)) // ['Test with a few flowers first: V-06 (Abendstern).', 'Discard: V-05 (Abendglocke).']
 */
export function vialsToActOn(vials: readonly VialAdvice[]): readonly string[] {
  const of = (standing: VialStanding) =>
    vialsThat(standing, vials).map(({ vial, pollenParent }) => `${vial} (${pollenParent})`);
  const lines: [string, readonly string[]][] = [
    ['Use first', of('use-first')],
    ['Test with a few flowers first', of('test-first')],
    ['Discard', of('discard')],
  ];
  const named = lines.filter(([, names]) => names.length > 0);
  return [...named.map(([label, names]) => `${label}: ${joined(names)}.`), ...olderShort(vials)];
}

function olderShort(vials: readonly VialAdvice[]): string[] {
  const found = olderThanTried(vials);
  if (found === null) return [];
  return [
    `On the day of use ${counts(found.older, found.all)} vials will be older than any such pollen that was tried: what is said of them is a guess.`,
  ];
}
