/** What a vial's verdict rests on, in one English sentence. */

import type { VialAdvice } from '../decisions/vials.ts';
import { reasonSentence } from './english.ts';
import { capitalised, likely } from './numbers.ts';

type Reason = (then: string, yearLater: string) => string;

const REASONS: Readonly<Record<string, Reason>> = {
  'worth-now-and-a-year-later': (then, yearLater) =>
    `${capitalised(then)} to be worth a flower on the day of use, and ${yearLater} a year later.`,
  'worth-now-only': (then, yearLater) =>
    `${capitalised(then)} to be worth a flower on the day of use, but ${yearLater} a year later.`,
  'could-be-either': (then) =>
    `${capitalised(then)} to be worth a flower on the day of use: pollinate a few flowers before you rely on it.`,
  'hardly-worth': (then) => `${capitalised(then)} to be worth a flower on the day of use.`,
};

const WITHOUT_NUMBER: Readonly<Record<string, string>> = {
  'no-estimate': 'There is nothing to judge it by: pollinate a few flowers with it first.',
  'worth-not-given':
    'It was not said what fruit set is worth a flower: pollinate a few flowers with it first.',
};

/**
 * The sentence behind a verdict, with its probabilities; for the last vial of a father that is to be discarded, the
 * warning besides.
 *
 * @example
 * vialReason(advice); // 'Likely (about 8 in 10) to be worth a flower on the day of use, but unlikely (…) a year later.'
 */
export function vialReason(advice: VialAdvice): string {
  const { reasonCode, probabilityWorth, probabilityWorthYearLater, warnings, pollenParent } = advice;
  const reason = REASONS[reasonCode];
  const last = warnings.includes('last-vial')
    ? ` It is the last vial of ${pollenParent}: collect new pollen before you discard it.`
    : '';
  if (reason !== undefined && probabilityWorth !== null && probabilityWorthYearLater !== null) {
    return `${reason(likely(probabilityWorth), likely(probabilityWorthYearLater))}${last}`;
  }
  return `${WITHOUT_NUMBER[reasonCode] ?? reasonSentence(reasonCode)}${last}`;
}
