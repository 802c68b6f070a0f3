/** Text of one cell → a date, a number, a word or a name; or the code of what is wrong with it. */

import { DATE_ORDERS, isIsoDate, isoDate } from './dates.ts';
import type { RowProblemCode } from './problems.ts';
import type { DateOrder } from './season.ts';
import { foldWord, type WordList } from './values.ts';

/** What a cell says, or the code of its fault. */
export type Reading<T> = { readonly value: T } | { readonly fault: RowProblemCode };

const YEAR_FIRST = /^(\d{4})[-./ ](\d{1,2})[-./ ](\d{1,2})(?:[T ]\d{1,2}:\d{2}.*)?$/;
const THREE_NUMBERS = /^(\d{1,2})[-./ ](\d{1,2})[-./ ](\d{4}|\d{2})(?:[T ]\d{1,2}:\d{2}.*)?$/;
const DAY_MONTH_NAME = /^(\d{1,2})[-./ ]*([a-z]{3,9})[-./, ]*(\d{4}|\d{2})$/i;
const MONTH_NAME_DAY = /^([a-z]{3,9})[-./ ]*(\d{1,2})[-./, ]+(\d{4}|\d{2})$/i;
const SPREADSHEET_DAY = /^[34]\d{4}$/;
const MONTHS = 'january february march april may june july august september october november december'.split(
  ' ',
);
const EARLIEST_YEAR = 1950;
const LATEST_YEAR = 2100;

/** Two digits are a year from 1970 to 2069. */
export function fullYear(text: string): number {
  const year = Number(text);
  if (text.length > 2) return year;
  return year + (year < 70 ? 2000 : 1900);
}

/** The three numbers of a date whose order its column must tell, or null where the cell is no such date. */
export function threeNumbers(text: string): readonly [string, string, string] | null {
  const parts = THREE_NUMBERS.exec(text);
  return parts && [parts[1], parts[2], parts[3]];
}

/** The ISO date of three numbers read in an order, or null where no such day exists. */
export function dateInOrder(numbers: readonly string[], order: DateOrder): string | null {
  const [year, month, day] = DATE_ORDERS[order].map((position) => numbers[position]);
  // A four-digit number is a year wherever it stands.
  if (month.length > 2 || day.length > 2) return null;
  return isoDate(fullYear(year), Number(month), Number(day));
}

function monthNumber(name: string): number {
  const lower = name.toLowerCase();
  return lower.length < 3
    ? 0
    : MONTHS.findIndex((month) => month.startsWith(lower) || lower === `${month.slice(0, 3)}t`) + 1;
}

/** The ISO date that a cell writes in any form, null where the day does not exist, undefined where it is no date. */
function dateWritten(text: string, order: DateOrder | null): string | null | undefined {
  if (isIsoDate(text)) return text;
  const yearFirst = YEAR_FIRST.exec(text);
  if (yearFirst) return isoDate(Number(yearFirst[1]), Number(yearFirst[2]), Number(yearFirst[3]));
  const numbers = threeNumbers(text);
  if (numbers) return order === null ? null : dateInOrder(numbers, order);
  const named = DAY_MONTH_NAME.exec(text);
  if (named && monthNumber(named[2]))
    return isoDate(fullYear(named[3]), monthNumber(named[2]), Number(named[1]));
  const american = MONTH_NAME_DAY.exec(text);
  if (american && monthNumber(american[1])) {
    return isoDate(fullYear(american[3]), monthNumber(american[1]), Number(american[2]));
  }
  return undefined;
}

/**
 * The day that a cell names, as an ISO date. A time of day is dropped: a flower has a day, and no time zone moves it.
 *
 * @param order the order of day, month and year that its column was found to have
 * @example readDate('14.6.2025', 'dmy') // { value: '2025-06-14' }
 */
export function readDate(text: string, order: DateOrder | null): Reading<string> {
  const date = dateWritten(text, order);
  if (date === null) return { fault: 'date-does-not-exist' };
  if (date === undefined)
    return { fault: SPREADSHEET_DAY.test(text) ? 'date-serial' : 'date-not-understood' };
  const year = Number(date.slice(0, 4));
  return year < EARLIEST_YEAR || year > LATEST_YEAR ? { fault: 'date-implausible' } : { value: date };
}

/**
 * A number from 0 up to a highest one that still makes sense; a decimal comma is read as a decimal point.
 *
 * @example readNumber('12,5', { highest: 5000 }) // { value: 12.5 }
 */
export function readNumber(
  text: string,
  { highest, whole = false }: { highest: number; whole?: boolean },
): Reading<number> {
  if (!/^[+-]?\d+(?:[.,]\d+)?$/.test(text)) return { fault: 'number-not-understood' };
  // 1,234 may be one and a bit or over a thousand.
  if (/,\d{3}$/.test(text)) return { fault: 'number-not-understood' };
  const value = Number(text.replace(',', '.'));
  if (whole && !Number.isInteger(value)) return { fault: 'number-not-understood' };
  if (value < 0) return { fault: 'number-negative' };
  return value > highest ? { fault: 'number-absurd' } : { value };
}

/** The word of a list that a cell means. */
export function readWord<T>(text: string, list: WordList<T>): Reading<T> {
  const value = list.get(foldWord(text));
  return value === undefined ? { fault: 'word-not-understood' } : { value };
}

/** A name as it is kept: composed Unicode (NFC), no space around it, single spaces within. */
export function tidyName(text: string): string {
  return text.normalize('NFC').replace(/\s+/gu, ' ').trim();
}
