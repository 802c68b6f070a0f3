/** What a season holds beside its rates: what is pending, lost tags, controls, harvests, seasons, waves, growers. */

import type { Controls, CorrectedRate } from '../analysis/controls.ts';
import type { FruitSet } from '../analysis/fruit-set.ts';
import type { Look, Pending } from '../analysis/pending.ts';
import type { RawRates } from '../analysis/raw.ts';
import type { SeasonChange, Seasons } from '../analysis/seasons.ts';
import type { Wave } from '../analysis/waves.ts';
import type { Estimate } from '../proportions/interval.ts';
import {
  capitalised,
  counted,
  counts,
  difference,
  joined,
  rate,
  rateInText,
  rateWithRange,
  wholeNumber,
} from './numbers.ts';
import { pollenOf } from './storage.ts';
import { pointOf, turned, withinOne } from './told/estimates.ts';

/** More days than this are not listed one by one. */
const MOST_DAYS = 3;

/** Methods whose rates are said again without the background, most flowers first. */
const MOST_METHODS = 2;

function daysToLook(looks: readonly Look[]): string {
  if (looks.length > MOST_DAYS) {
    return `look from ${looks[0]!.lookOn} to ${looks.at(-1)!.lookOn}, each at its two weeks`;
  }
  const days = looks.map(({ lookOn, flowers }) =>
    looks.length === 1 ? `on ${lookOn}` : `at ${wholeNumber(flowers)} on ${lookOn}`,
  );
  return `look ${joined(days)}`;
}

/**
 * "8 flowers are too young to tell: look on 2025-09-28." Empty where nothing is pending.
 *
 * @example
 * const looks = [{ lookOn: '2025-09-28', flowers: 8, due: false }];
 * pendingSaid({ flowers: 8, due: 0, looks, awaitingHarvest: 0, asOf: '2025-09-20' }); // '8 flowers are marked as too young to tell. Look on 2025-09-28.'
 */
export function pendingSaid({ flowers, due, looks, awaitingHarvest, asOf }: Pending): string {
  const hanging = awaitingHarvest === 0 ? '' : `${counted(awaitingHarvest, 'fruit')} still to be harvested. `;
  if (flowers === 0) return hanging.trim();
  const coming = looks.filter((look) => !look.due);
  const now = due === 0 ? '' : ` ${wholeNumber(due)} could be looked at by ${asOf}: look now.`;
  const later = coming.length === 0 ? '' : ` ${capitalised(daysToLook(coming))}.`;
  const are = flowers === 1 ? 'flower is' : 'flowers are';
  return `${hanging}${wholeNumber(flowers)} ${are} marked as too young to tell.${now}${later}`;
}

/**
 * "Fresh pollen lost 5 tags, so 73 to 78 of 118 took" for each method that lost one; then the gap both ways.
 *
 * @example
 * const [lowest, highest] = [{ fruits: 73, flowers: 118 }, { fruits: 78, flowers: 118 }];
 * lostTagsByMethodSaid({ lostTags: { byStorage: [{ storage: 'fresh', lost: 5, lowest, highest }], difference: [] } }); // 'Fresh pollen lost 5 tags, so 73 to 78 of 118 took.'
 */
export function lostTagsByMethodSaid({ lostTags }: Pick<RawRates, 'lostTags'>): string {
  const lost = lostTags.byStorage.filter((method) => method.lost > 0);
  if (lost.length === 0) return '';
  const methods = lost.map(
    ({ storage, lost: tags, lowest, highest }) =>
      `${pollenOf(storage)} lost ${counted(tags, 'tag')}, so ${wholeNumber(lowest.fruits)} to ${counts(highest.fruits, highest.flowers)} took`,
  );
  const [gap] = lostTags.difference;
  const worst =
    gap === undefined || gap.lowest.estimate === null || gap.highest.estimate === null
      ? ''
      : ` Whatever became of those flowers, over all flowers ${pollenOf(gap.storage)} gave ${gapSaid(gap.lowest, gap.highest)}.`;
  return `${capitalised(methods.join('; '))}.${worst}`;
}

/** "between about 2 fewer in every 10 and about 3 fewer in every 10", or one of them where both are said alike. */
function gapSaid(lowest: Estimate, highest: Estimate): string {
  const [least, most] = [difference(pointOf(lowest)), difference(pointOf(highest))];
  return least === most ? least : `between ${least} and ${most}`;
}

/**
 * "Of the flowers that got no pollen, 0 of 7; could still be as high as 4 in 10." Empty without controls.
 *
 * @example
 * const unpollinated = { fruits: 0, flowers: 7, estimate: 0, lower: 0, upper: 0.354 };
 * controlsSaid({ unpollinated, selfed: { fruits: 0, flowers: 0 }, corrected: [] }); // 'Control flowers that took: without pollen 0 of 7 (could still be as high as 4 in 10).'
 */
export function controlsSaid({ unpollinated, selfed, corrected }: Controls): string {
  const parts = [
    ...(unpollinated.flowers > 0 ? [`without pollen ${rateInText(unpollinated)}`] : []),
    ...(selfed.flowers > 0 ? [`with their own plant’s pollen ${rateInText(selfed)}`] : []),
  ];
  if (parts.length === 0) return '';
  const effects = corrected.filter(({ control }) => control === 'unpollinated').slice(0, MOST_METHODS);
  const less =
    effects.length === 0 ? '' : ` Less what sets without pollen: ${effects.map(correctedSaid).join('; ')}.`;
  return `Control flowers that took: ${joined(parts)}.${less}`;
}

/** A rate below the background's is none: the range still says how much it could be. */
function correctedSaid({ storage, raw, corrected }: CorrectedRate): string {
  return `${pollenOf(storage)}, ${counts(raw.fruits, raw.flowers)} as counted (then ${rate(withinOne(corrected))})`;
}

/**
 * Initial and final fruit set side by side.
 *
 * @example
 * const [initial, final, kept] = [{ fruits: 75, flowers: 162 }, { fruits: 66, flowers: 162 }, { fruits: 66, flowers: 75 }];
 * fruitSetSaid({ initial, final, kept, harvestsRecorded: true }); // 'At the check 75 of 162 flowers had set (initial fruit set), and 66 of 162 came to harvest…'
 */
export function fruitSetSaid({ initial, final, kept, harvestsRecorded }: FruitSet): string {
  if (initial.flowers === 0) return '';
  const start = `At the check ${counts(initial.fruits, initial.flowers)} flowers had set (initial fruit set)`;
  const end = harvestsRecorded ? 'came to harvest' : 'had not dropped';
  const rest =
    kept.flowers === 0 ? '' : `; of the fruits whose end is known, ${counts(kept.fruits, kept.flowers)} did`;
  return `${start}, and ${counts(final.fruits, final.flowers)} ${end} (final fruit set)${rest}.`;
}

/**
 * What changed since last season, counts first; empty with one season only.
 *
 * @example
 * const [earlier, later] = [{ fruits: 30, flowers: 80 }, { fruits: 45, flowers: 90 }];
 * const gap = { difference: { estimate: 0.125, lower: -0.03, upper: 0.27 }, likeForLike: { estimate: null, lower: null, upper: null } };
 * seasonChangeSaid({ changes: [{ from: '2024', to: '2025', earlier, later, ...gap }] }); // 'In 2024 30 of 80 took, in 2025 45 of 90: about 1 more in every 10 (could be 3 more to…'
 */
export function seasonChangeSaid({ changes }: Seasons): string {
  const last = changes.at(-1);
  return last === undefined ? '' : changeSaid(last);
}

function changeSaid({ from, to, earlier, later, difference: gap, likeForLike }: SeasonChange): string {
  const start =
    `In ${from} ${counts(earlier.fruits, earlier.flowers)} took, in ${to} ${counts(later.fruits, later.flowers)}: ` +
    `${difference(turned(gap))} than the season before`;
  if (likeForLike.estimate === null) {
    return `${start}. Too few pairs got the same kind of pollen in both seasons to say whether it was the season or the pairs.`;
  }
  return `${start}; like for like (the same pairs with the same kind of pollen) ${difference(turned(likeForLike))}.`;
}

/**
 * Plants told apart by grower, and names that could not be placed. Empty with one grower.
 *
 * @example growersSaid({ growers: { names: ['Ada Finch', 'Bo Reed'], samePlants: false, toldApart: [], unplaced: [] } }) // '2 growers: Ada Finch and Bo Reed. No plant’s name stands with two of them.'
 */
export function growersSaid({ growers }: Seasons): string {
  const { names, samePlants, toldApart, unplaced } = growers;
  if (names.length < 2) return '';
  const start = `${counted(names.length, 'grower')}: ${joined(names)}.`;
  if (samePlants) return `${start} Plants of the same name count as one plant, as you said.`;
  const shared = new Set(toldApart.map(({ name }) => name)).size;
  const apart =
    shared === 0
      ? ' No plant’s name stands with two of them.'
      : ` ${counted(shared, 'name')} of plants ${shared === 1 ? 'stands' : 'stand'} with more than one of them; they count as different plants and carry the grower’s name.`;
  const open = unplaced.map(({ name, kind }) => `${name} (${kind})`);
  return `${start}${apart}${open.length === 0 ? '' : ` Whose plant is meant is not clear for ${joined(open)}: write it with the grower’s name.`}`;
}

/** Headings of the table of waves. */
export const WAVE_COLUMNS = ['season', 'wave', 'mornings', 'rate and range'] as const;

/**
 * Rows of the table of waves; a season names its grower where there are several.
 *
 * @example
 * const wave = { season: '2025', grower: null, wave: '1', from: '2025-06-03', to: '2025-06-09' };
 * waveRows([{ ...wave, fruits: 11, flowers: 14, estimate: 11 / 14, lower: 0.524, upper: 0.924 }]); // [['2025', '1', '2025-06-03 to 2025-06-09', '11 of 14 (about 8 in 10; could be 5 to 9 in 10)']]
 */
export function waveRows(waves: readonly Wave[]): readonly (readonly string[])[] {
  const several = new Set(waves.map(({ grower }) => grower)).size > 1;
  return waves.map(({ season, grower, wave, from, to, ...own }) => [
    several ? `${season}, ${grower ?? 'grower not named'}` : season,
    wave ?? 'not said',
    from === to ? from : `${from} to ${to}`,
    rateWithRange(own),
  ]);
}
