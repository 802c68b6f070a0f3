/** The season review's own sentences: what each section answers, counts first. */

import type { Analysis } from '../analyse.ts';
import type { HalfAge } from '../analysis/age-curve.ts';
import type { FreshVersusStored } from '../analysis/fresh-versus-stored.ts';
import type { PooledPair } from '../analysis/pairs.ts';
import type { AgeBand } from '../analysis/raw.ts';
import type { VialAdvice } from '../decisions/vials.ts';
import { pairName } from './choice-figures.ts';
import { days, daysWithRange } from './durations.ts';
import {
  CANNOT_TELL,
  capitalised,
  counted,
  counts,
  decimal,
  difference,
  inTen,
  joined,
  rate,
  wholeNumber,
} from './numbers.ts';
import { agesSaid } from './rate-figures.ts';
import { pollenOf, storageLabel } from './storage.ts';
import { FEWEST_RANKED, flowersRead, methodsInOrder, safestPair, verdictTally } from './told/review.ts';
import type { VialStanding } from './told/vials.ts';

export { FEWEST_RANKED } from './told/review.ts';

const VERDICTS: Readonly<Record<VialStanding, string>> = {
  keep: 'keep',
  'use-first': 'use first',
  'test-first': 'test',
  discard: 'discard',
  empty: 'empty',
};

/**
 * "287 flowers, 30 pairs, 20 vials. Frozen pollen 41 of 120, fresh 78 of 130. Keep 15, use first 1, …"
 *
 * @param vialCount where the vials are known and the verdicts are not yet
 * @example seasonAnswer(analysis) // '175 flowers, 0 pairs, 6 vials. Frozen pollen 31 of 86, fresh 44 of 70, room temperature 0…'
 */
export function seasonAnswer(
  { raw, vials, rows }: Pick<Analysis, 'raw' | 'vials' | 'rows'>,
  vialCount = vials.length,
): string {
  // Rows that could not be read are no flowers: the chart below counts the same.
  const flowers = flowersRead(rows);
  const size = [counted(flowers, 'flower'), counted(raw.byPair.length, 'pair')];
  if (vialCount > 0) size.push(counted(vialCount, 'vial'));
  const verdicts = vials.length > 0 ? [verdictCounts(vials)] : [];
  return [`${size.join(', ')}.`, methodCounts(raw.byStorage), ...verdicts].join(' ');
}

/** The stored method that was used most, then fresh pollen, then the others. */
function methodCounts(byStorage: Analysis['raw']['byStorage']): string {
  const [first, ...rest] = methodsInOrder(byStorage);
  if (first === undefined) return 'No flower has a known outcome yet.';
  return `${[
    `${capitalised(pollenOf(first.storage))} ${counts(first.fruits, first.flowers)}`,
    ...rest.map(({ storage, fruits, flowers }) => `${storageLabel(storage)} ${counts(fruits, flowers)}`),
  ].join(', ')}.`;
}

/**
 * "Keep 15, use first 1, test 3, discard 1."; verdicts that no vial has are left out.
 *
 * @example verdictCounts(analysis.vials) // 'Keep 2, use first 1, test 2, discard 1.'
 */
export function verdictCounts(vials: readonly VialAdvice[]): string {
  const tally = verdictTally(vials).map(([verdict, count]) => `${VERDICTS[verdict]} ${wholeNumber(count)}`);
  return tally.length === 0 ? '' : `${capitalised(tally.join(', '))}.`;
}

/**
 * What "took" means in the whole report.
 *
 * @example tookMeans({ provenance: { options: { endpoint: 'final' } } }) // '“Took” means that a fruit came to harvest; control flowers are counted apart.'
 */
export function tookMeans({ provenance }: Pick<Analysis, 'provenance'>): string {
  const when = provenance.options.endpoint === 'final' ? 'came to harvest' : 'had set at the first check';
  return `“Took” means that a fruit ${when}; control flowers are counted apart.`;
}

/**
 * "We used 272 of 291 rows; 19 left out for 2 reasons."
 *
 * @example rowsAnswer(analysis) // 'We used 162 of 176 rows; 14 left out for 1 reason.'
 */
export function rowsAnswer({ rows }: Pick<Analysis, 'rows'>): string {
  const { read, used, leftOut, byReason } = rows;
  const start = `We used ${wholeNumber(used)} of ${counted(read, 'row')}`;
  if (leftOut === 0) return `${start}: none is left out.`;
  return `${start}; ${wholeNumber(leftOut)} left out for ${counted(byReason.length, 'reason')}.`;
}

/**
 * What the lost tags could hide: "12 tags were lost. As observed 150 of 258 took. Had all 12 flowers failed, 150 of 270; …".
 *
 * @example lostTagsSaid(analysis) // '9 tags were lost. As observed, without them, 75 of 162 took. If those 9 flowers had failed, 75 of 171 would have…'
 */
export function lostTagsSaid({ raw }: Pick<Analysis, 'raw'>): string {
  const { lost, lowest, highest } = raw.lostTags.overall;
  const { fruits, flowers } = raw.overall;
  if (lost === 0) return 'No tag was lost.';
  const hidden = lost === 1 ? 'that flower' : `those ${wholeNumber(lost)} flowers`;
  return (
    `${counted(lost, 'tag')} ${lost === 1 ? 'was' : 'were'} lost. As observed, without ${lost === 1 ? 'it' : 'them'}, ` +
    `${counts(fruits, flowers)} took. If ${hidden} had failed, ${counts(lowest.fruits, lowest.flowers)} would have taken; if ${hidden} had taken, ` +
    `${counts(highest.fruits, highest.flowers)}. The answers lie between the two.`
  );
}

/**
 * Section 3 for one method: counts both ways, then like for like.
 *
 * @param freshIsTold whether the counts of fresh pollen stand right before
 * @example storedAnswer(analysis.freshVersusStored[0]) // 'Frozen pollen took 31 of 86, fresh pollen 44 of 70; like for like (the same pairs), frozen…'
 */
export function storedAnswer(entry: FreshVersusStored, freshIsTold = false): string {
  const { storage, fresh, stored } = entry;
  const start = `${capitalised(pollenOf(storage))} took ${counts(stored.fruits, stored.flowers)}`;
  if (fresh.flowers === 0) return `${start}; there is no fresh pollen to compare it with.`;
  const both = freshIsTold ? start : `${start}, fresh pollen ${counts(fresh.fruits, fresh.flowers)}`;
  if (entry.adjusted.estimate === null) {
    return `${both}${whyNotLikeForLike(entry)}`;
  }
  return `${both}; like for like (the same pairs), ${pollenOf(storage)} gives ${difference(entry.adjusted)}.`;
}

function whyNotLikeForLike({ adjusted, difference: gap, informativePairs }: FreshVersusStored): string {
  if (adjusted.because === 'being-worked-out') {
    return `: over all flowers ${difference(gap)}. Like for like (the same pairs) is still being worked out.`;
  }
  if (informativePairs >= 3) return '. Like for like, the flowers can’t tell yet.';
  const pairs = informativePairs === 0 ? 'No pair' : `Only ${counted(informativePairs, 'pair')}`;
  return `. ${pairs} had both kinds of pollen and both outcomes, so pollen and pair can’t be told apart.`;
}

/**
 * Whether the raw gap and the like-for-like gap tell different stories, and why; empty where they do not. Both numbers stand
 * in the caption above it.
 *
 * @example confoundingSaid({ ...analysis.freshVersusStored[0], adjusted: { estimate: 0.1, lower: -0.1, upper: 0.3 } }) // 'That the two differ fits frozen pollen having gone to harder pairs.'
 */
export function confoundingSaid({ storage, difference: raw, adjusted }: FreshVersusStored): string {
  if (raw.estimate === null || adjusted.estimate === null) return '';
  if (Math.abs(raw.estimate - adjusted.estimate) < 0.1) return '';
  const way = raw.estimate > adjusted.estimate ? 'harder' : 'easier';
  return `That the two differ fits ${pollenOf(storage)} having gone to ${way} pairs.`;
}

/**
 * Section 4 for one method: counts at two ages, the half age with its range, how far the data reach.
 *
 * @example halfAgeAnswer(analysis.halfAge[0], analysis.raw.byAge) // 'Frozen pollen took 5 of 9 at 8 to 14 days and 3 of 18 at 181 to 365 days; it falls to half…'
 */
export function halfAgeAnswer(half: HalfAge, byAge: readonly AgeBand[]): string {
  const { storage, oldestAgeDays } = half;
  const bands = byAge.filter((band) => band.storage === storage && band.estimate !== null);
  const pollen = capitalised(agesSaid(storage, bands));
  if (oldestAgeDays === null) return `${capitalised(pollenOf(storage))}: no flower has a known pollen age.`;
  return `${pollen}; ${fadingSaid(half, days(oldestAgeDays))}`;
}

function fadingSaid(half: HalfAge, oldest: string): string {
  const { estimate, lower, oldestAgeDays } = half;
  if (estimate !== null) {
    return `it falls to half of its fruit set after ${daysWithRange(half)}; the oldest tried was ${oldest}.`;
  }
  if (lower === null) {
    return `it was tried at one age or from one vial only, so one ${CANNOT_TELL} how fast it fades; the oldest tried was ${oldest}.`;
  }
  if (lower < oldestAgeDays!) {
    return `it takes more than ${days(lower)} to fall to half of its fruit set, how much more one ${CANNOT_TELL}; the oldest tried was ${oldest}.`;
  }
  return `it had not fallen to half of its fruit set at the oldest age tried, ${oldest}, and nothing is known past that.`;
}

/**
 * Section 5: the safest bet by its cautious end, and how many pairs have too few flowers.
 *
 * @example pairsAnswer(analysis.pairs) // 'The safest bet is Nachtlaterne × Silberfaden: 11 of 14 took (with fresh pollen about 7 in…'
 */
export function pairsAnswer(pairs: readonly PooledPair[]): string {
  const { safest, few } = safestPair(pairs);
  const unranked =
    few === 0
      ? ''
      : ` ${wholeNumber(few)} of ${counted(pairs.length, 'pair')} ${few === 1 ? 'has' : 'have'} fewer than ${FEWEST_RANKED} flowers: too few to rank.`;
  if (safest === undefined) return `The flowers ${CANNOT_TELL} which pair is the safest bet.${unranked}`;
  return (
    `The safest bet is ${pairName(safest)}: ${counts(safest.fruits, safest.flowers)} took ` +
    `(${basisSaid(safest)} ${rate(safest)}).${unranked}`
  );
}

function basisSaid({ basis }: PooledPair): string {
  return basis.storage === 'fresh'
    ? 'with fresh pollen'
    : `with ${pollenOf(basis.storage)} of ${days(basis.ageDays)}`;
}

/**
 * Section 6: the verdicts, and what they were held against.
 *
 * @example vialsAnswer({ ...analysis, provenance: { options: { useOn: '2026-06-01' } } }) // 'Keep 2, use first 1, test 2, discard 1. Judged for use on 2026-06-01: a vial is worth a…'
 */
export function vialsAnswer({
  vials,
  worth,
  provenance,
}: Pick<Analysis, 'vials' | 'worth' | 'provenance'>): string {
  if (vials.length === 0) return 'No file of vials was given, so there is none to judge.';
  const { useOn } = provenance.options;
  return `${verdictCounts(vials)} Judged for use on ${useOn}: ${worthSaid(worth)}`;
}

function worthSaid(worth: Analysis['worth']): string {
  if (worth.value === null) {
    return 'without fresh flowers to compare with, only you can say what fruit set is worth a flower.';
  }
  const start = `a vial is worth a flower if ${inTen(worth.value)} (${decimal(worth.value, 3)}) or more would take`;
  if (worth.source === 'option') return `${start}, as you set it.`;
  return `${start}, half of what fresh pollen gives on these plants.`;
}

/**
 * Section 9: how the two age scales were weighed.
 *
 * @example scalesSaid({ grower: { ageScales: [{ ageScale: 'days', weight: 0.4 }, { ageScale: 'log1p-days', weight: 0.6 }] } }) // 'How pollen fades is not known from a season or two, so both shapes count: a steady fading…'
 */
export function scalesSaid({ grower }: Analysis['models']): string {
  if (grower.ageScales.length < 2) return '';
  const parts = grower.ageScales.map(
    ({ ageScale, weight }) =>
      `${ageScale === 'days' ? 'a steady fading by the day' : 'a fading that is fast at first'} ${wholeNumber(weight * 100)} in 100`,
  );
  return `How pollen fades is not known from a season or two, so both shapes count: ${joined(parts)}, by how well each fits your flowers.`;
}
