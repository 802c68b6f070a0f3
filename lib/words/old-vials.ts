/** The page of old vials: how old they are, each one's story, and which is the last of its father. */

import type { VialAdvice } from '../decisions/vials.ts';
import { days } from './durations.ts';
import { recordSaid, VERDICT_LABELS, verdictSaid } from './english-vials.ts';
import { CANNOT_TELL, capitalised, counted, counts, joined, likely, rate, wholeNumber } from './numbers.ts';
import { storageLabel } from './storage.ts';
import { byRecord, lastVials, oldestFirst, standings, vialAges, vialsThat } from './told/vials.ts';

/**
 * "14 of 20 vials will be older than a year on 2026-09-14; the oldest is F-02 (Copper Tide), about 4 years (1548 days)."
 *
 * @example oldVialsAnswer(analysis.vials, '2026-06-01') // '6 of 6 vials will be older than a year on 2026-06-01; the oldest is V-01 (Silberfaden),…'
 */
export function oldVialsAnswer(vials: readonly VialAdvice[], useOn: string | null): string {
  const ages = vialAges(vials);
  if (useOn === null || ages === null)
    return `No vial could be judged, so there is no age to tell.${emptySaid(vials)}`;
  const { oldest, old, tried, all } = ages;
  return (
    `${counts(old, all)} vials will be older than a year on ${useOn}; the oldest is ${oldest.vial} (${oldest.pollenParent}), ` +
    `${days(oldest.ageDays)}. ${capitalised(counts(tried, all))} have flowers of their own to go by; the others are judged by ` +
    `their father, their age and how they were kept.${emptySaid(vials)}`
  );
}

/** "1 vial is empty."; empty itself where none is. */
function emptySaid(vials: readonly VialAdvice[]): string {
  const empty = vialsThat('empty', vials).length;
  return empty === 0 ? '' : ` ${counted(empty, 'vial')} ${empty === 1 ? 'is' : 'are'} empty.`;
}

/** Headings of the table of stories. */
export const STORY_COLUMNS = [
  'vial',
  'father, storage, age then',
  'its own record',
  'expected then',
  'worth a flower then',
  'a year later',
  'verdict',
] as const;

function chance(probability: number | null): string {
  return probability === null ? CANNOT_TELL : likely(probability);
}

/**
 * A row a vial, the oldest first: "F-01", "Salt Moon, frozen, about 4 years (1504 days)", "10 of its 21 flowers took" …
 *
 * @example storyRows([analysis.vials[1]]) // [['V-02', 'Nachtlaterne, frozen, about 1 year (420 days)', '7 of its 15 flowers took', 'about 4 in 10; could be 2 to 6 in 10', 'likely (about 9 in 10)', 'about as likely as not (about 4 in 10)', 'keep']]
 */
export function storyRows(vials: readonly VialAdvice[]): readonly (readonly string[])[] {
  return oldestFirst(vials).map((vial) => [
    vial.vial,
    `${vial.pollenParent}, ${storageLabel(vial.storage)}, ${vial.ageDays < 0 ? 'not yet collected' : days(vial.ageDays)}`,
    recordSaid(vial),
    rate(vial),
    chance(vial.probabilityWorth),
    chance(vial.probabilityWorthYearLater),
    verdictSaid(vial),
  ]);
}

/**
 * "Last vials of their fathers: F-05 (Lantern Creek, keep) and …": what can't be had again from the freezer.
 *
 * @example lastVialsSaid([{ ...analysis.vials[0], lastOfParent: true }]) // '1 vial is the last of its father: V-01 (Silberfaden, keep). Collect new pollen of a father…'
 */
export function lastVialsSaid(vials: readonly VialAdvice[]): string {
  if (vials.every(({ dosesLeft }) => dosesLeft === 0)) return 'There is no vial with pollen in it.';
  const last = lastVials(vials);
  if (last.length === 0) return 'Every father has another vial besides.';
  const named = last.map(
    ({ vial, pollenParent, verdict }) => `${vial} (${pollenParent}, ${VERDICT_LABELS[verdict]})`,
  );
  return (
    `${counted(last.length, 'vial')} ${last.length === 1 ? 'is the last of its father' : 'are each the last of their father'}: ` +
    `${joined(named)}. Collect new pollen of a father before its last vial goes.`
  );
}

/**
 * "keep 17, test first 3" by whether vials have flowers of their own: counts that show what the verdicts lean on.
 *
 * @example verdictsByRecord(analysis.vials) // [['with flowers of their own', '2', '1', '1', '1'], ['without', '0', '0', '1', '0']]
 */
export function verdictsByRecord(vials: readonly VialAdvice[]): readonly (readonly string[])[] {
  const names = ['with flowers of their own', 'without'];
  return byRecord(vials).map((own, at) => [
    names[at]!,
    ...standings(vials).map((standing) => wholeNumber(vialsThat(standing, own).length)),
  ]);
}
