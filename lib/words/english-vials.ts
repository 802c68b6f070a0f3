/** What a vial's verdict rests on, in one English sentence. */

import type { NextTest, TestValue } from '../decisions/next-test.ts';
import type { VialAdvice, VialVerdict } from '../decisions/vials.ts';
import { reasonSentence } from './english.ts';
import { counted, counts, inTen, joined, likely } from './numbers.ts';
import { storageLabel } from './storage.ts';
import { firstTest, isOlderThanTried, olderThanTried, standingOf, type VialStanding } from './told/vials.ts';

type Reason = (then: string, yearLater: string) => string;

const REASONS: Readonly<Record<string, Reason>> = {
  'worth-now-and-a-year-later': (then, yearLater) =>
    `${then} to be worth a flower on the day of use, and ${yearLater} a year later.`,
  'worth-now-only': (then, yearLater) =>
    `${then} to be worth a flower on the day of use, but ${yearLater} a year later.`,
  'could-be-either': (then) =>
    `${then} to be worth a flower on the day of use: pollinate a few flowers before you rely on it.`,
  'hardly-worth': (then) => `${then} to be worth a flower on the day of use.`,
};

/** The verdicts as they are called everywhere. */
export const VERDICT_LABELS: Readonly<Record<VialStanding, string>> = {
  keep: 'keep',
  'use-first': 'use first',
  'test-first': 'test first',
  discard: 'discard',
  empty: 'empty',
};

const WITHOUT_NUMBER: Readonly<Record<string, string>> = {
  'no-estimate': 'there is nothing to judge it by: pollinate a few flowers with it first.',
  'worth-not-given':
    'it was not said what fruit set is worth a flower: pollinate a few flowers with it first.',
};

/** Stands beside the verdict of a vial that is older than any pollen of its kind that was tried. */
const MARK = '*';

/**
 * The verdict as it stands beside a vial, marked where it only carries the curve on: "keep", "keep *".
 *
 * @example verdictSaid({ verdict: 'keep', dosesLeft: 3, warnings: ['older-than-tried'] }) // 'keep *'
 */
export function verdictSaid(vial: Pick<VialAdvice, 'verdict' | 'dosesLeft' | 'warnings'>): string {
  const label = VERDICT_LABELS[standingOf(vial)];
  return isOlderThanTried(vial) ? `${label} ${MARK}` : label;
}

/**
 * What the mark means, and of how many vials; empty where none has it.
 *
 * @example
 * const old = { storage: 'frozen', dosesLeft: 3, warnings: ['older-than-tried'], oldestTriedDays: 776 };
 * olderThanTriedSaid([old]) // '* 1 of 1 vials will be older on that day than any such pollen that was tried (frozen: 776…'
 */
export function olderThanTriedSaid(vials: readonly VialAdvice[]): string {
  const found = olderThanTried(vials);
  if (found === null) return '';
  const tried = found.tried.map(
    ({ storage, days: oldest }) => `${storageLabel(storage)}: ${counted(oldest, 'day')}`,
  );
  return (
    `${MARK} ${counts(found.older, found.all)} vials will be older on that day than any such pollen that was tried ` +
    `(${tried.join('; ')}): what is said of them is a guess from the shape of the curve.`
  );
}

/**
 * The vial's own record.
 *
 * @example recordSaid({ fruits: 2, flowers: 9 }) // '2 of its 9 flowers took'
 */
export function recordSaid({ fruits, flowers }: Pick<VialAdvice, 'fruits' | 'flowers'>): string {
  if (flowers === 0) return 'No flower of its own so far';
  if (flowers === 1) return `Its one flower ${fruits === 1 ? 'took' : 'did not take'}`;
  return `${fruits} of its ${flowers} flowers took`;
}

/** Of an empty vial only its record counts, and whether its father has pollen elsewhere. */
function emptySaid(advice: VialAdvice): string {
  const { lastOfParent, pollenParent } = advice;
  const last = lastOfParent ? ` No vial of ${pollenParent} has pollen left: collect new.` : '';
  return `${recordSaid(advice)}. By your list it is empty: no dose is left.${last}`;
}

/**
 * The sentence behind a verdict: the vial's own record, then the probabilities; for the last vial of a father that is to be
 * discarded, the warning besides.
 *
 * @example
 * const judged = { reasonCode: 'worth-now-only', probabilityWorth: 0.8, probabilityWorthYearLater: 0.3 };
 * vialReason({ ...analysis.vials[0], fruits: 2, flowers: 9, ...judged }); // '2 of its 9 flowers took; likely (about 8 in 10) to be worth a flower on the day of use, but …'
 */
export function vialReason(advice: VialAdvice): string {
  const { reasonCode, probabilityWorth, probabilityWorthYearLater, warnings, pollenParent } = advice;
  if (standingOf(advice) === 'empty') return emptySaid(advice);
  const reason = REASONS[reasonCode];
  const last = warnings.includes('last-vial')
    ? ` It is the last vial of ${pollenParent}: collect new pollen before you discard it.`
    : '';
  const record = recordSaid(advice);
  if (reason !== undefined && probabilityWorth !== null && probabilityWorthYearLater !== null) {
    return `${record}; ${reason(likely(probabilityWorth), likely(probabilityWorthYearLater))}${last}`;
  }
  const why = WITHOUT_NUMBER[reasonCode];
  return `${record}${why === undefined ? `. ${reasonSentence(reasonCode)}` : `; ${why}`}${last}`;
}

/** "keep if both take, discard if none does": what the outcomes would make of a verdict that is now another. */
function outcomesSaid({ flowers, outcomes }: TestValue, now: VialVerdict): string {
  const other = outcomes.filter(({ verdict }) => verdict !== now);
  return joined(other.map(({ fruits, verdict }) => `${VERDICT_LABELS[verdict]} ${ifTake(fruits, flowers)}`));
}

/** The value of the test: what each later flower gains on average by what was learnt. */
function gainSaid({ gain }: TestValue): string {
  const inHundred = Math.round(100 * gain);
  if (inHundred === 0) return '; that would gain less than 1 fruit in 100 later flowers';
  return `; that would gain about ${counted(inHundred, 'fruit')} in 100 later flowers`;
}

function ifTake(fruits: number, flowers: number): string {
  if (fruits === 0) return flowers === 1 ? 'if it fails' : 'if none takes';
  if (flowers === 1) return 'if it takes';
  return fruits === flowers ? 'if both take' : 'if one takes';
}

/**
 * What a test of a vial would change: "2 flowers of Lantern Creek with F-09 (Hollow Bell): …".
 *
 * @example
 * const fails = { fruits: 0, probability: 0.4, probabilityWorth: 0.3, verdict: 'discard' };
 * const test = { vial: 'V-04', pollenParent: 'Silberfaden', seedParent: 'Nachtlaterne', verdict: 'test-first', probabilityWorth: 0.4 };
 * testSaid({ ...test, tests: [{ flowers: 1, changes: 0.4, gain: 0.01, outcomes: [fails] }] }); // '1 flower of Nachtlaterne with V-04 (Silberfaden) would change “test first” with a chance…'
 */
export function testSaid({ vial, pollenParent, seedParent, verdict, tests }: NextTest): string {
  const test = tests.at(-1)!;
  return (
    `${counted(test.flowers, 'flower')} of ${seedParent} with ${vial} (${pollenParent}) would change “${VERDICT_LABELS[verdict]}” ` +
    `with a chance of ${inTen(test.changes)} (${outcomesSaid(test, verdict)})${gainSaid(test)}`
  );
}

/**
 * The test to begin with, of the vials to test first the one that gains most: "Begin with this test: 2 flowers of Lantern
 * Creek with F-09 (Hollow Bell) …"; empty where no test would change a verdict.
 *
 * @example
 * const fails = { fruits: 0, probability: 0.4, probabilityWorth: 0.3, verdict: 'discard' };
 * const test = { vial: 'V-04', pollenParent: 'Silberfaden', seedParent: 'Nachtlaterne', verdict: 'test-first', probabilityWorth: 0.4 };
 * nextTestSaid([{ ...test, tests: [{ flowers: 1, changes: 0.4, gain: 0.01, outcomes: [fails] }] }]); // 'Begin with this test: 1 flower of Nachtlaterne with V-04 (Silberfaden) would change “test…'
 */
export function nextTestSaid(tests: readonly NextTest[]): string {
  const first = firstTest(tests);
  return first === undefined ? '' : `Begin with this test: ${testSaid(first)}.`;
}
