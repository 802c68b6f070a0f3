/** How a problem of a file is put: what is wrong and where, then what to do. */

import type { Problem } from '../season/season.ts';

/** The sentence that says what is wrong, and the one that says how to mend it. */
export type ProblemSentence = (problem: Problem) => readonly [message: string, fix: string];

export { cited } from './told/places.ts';

const DATE_ORDERS: Readonly<Record<string, string>> = {
  dmy: 'day-month-year',
  mdy: 'month-day-year',
  ymd: 'year-month-day',
};

/** The order of a date's numbers in words: "day-month-year" for `dmy`. */
export function dateOrderName(order: string | number): string {
  return DATE_ORDERS[order] ?? String(order);
}
