/** How a problem of a file is put: what is wrong and where, then what to do. */

import type { Problem } from '../season/season.ts';

/** The sentence that says what is wrong, and the one that says how to mend it. */
export type ProblemSentence = (problem: Problem) => readonly [message: string, fix: string];

const LONGEST_CITED = 60;

/** A header or cell in quotation marks, on one line and cut where it is long. */
export function cited(text: string | number | null | undefined): string {
  const line = String(text ?? '').replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]+/gu, ' ');
  const letters = [...line];
  return `"${letters.length > LONGEST_CITED ? `${letters.slice(0, LONGEST_CITED - 1).join('')}…` : line}"`;
}

const DATE_ORDERS: Readonly<Record<string, string>> = {
  dmy: 'day-month-year',
  mdy: 'month-day-year',
  ymd: 'year-month-day',
};

/** The order of a date's numbers in words: "day-month-year" for `dmy`. */
export function dateOrderName(order: string | number): string {
  return DATE_ORDERS[order] ?? String(order);
}
