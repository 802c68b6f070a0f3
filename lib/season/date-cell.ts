/** Text of a date cell → the day it names, in whatever form a grower writes it; or the code of what is wrong with it. */

import { addDays, DATE_ORDERS, isIsoDate, isoDate } from './dates.ts';
import { monthNumber } from './month-names.ts';
import type { RowProblemCode } from './problems.ts';
import type { DateOrder } from './season.ts';

/** From which day a spreadsheet counts: 1 January 1900, or 1 January 1904 as older ones on a Mac do. */
export type DateSystem = 1900 | 1904;

/** How the dates of a column are written: the order of their numbers, or the system of a spreadsheet's own numbers. */
export type DateForm = DateOrder | DateSystem | null;

const TIME = String.raw`(?:[T ,]+\d{1,2}:\d{2}.*)?$`;
const YEAR_FIRST = new RegExp(String.raw`^(\d{4})[-./ ](\d{1,2})[-./ ](\d{1,2})${TIME}`);
const THREE_NUMBERS = new RegExp(String.raw`^(\d{1,2})[-./ ](\d{1,2})[-./ ](\d{4}|\d{2})${TIME}`);
/** ISO 8601, basic format. */
const COMPACT = /^((?:19|20)\d{2})(\d{2})(\d{2})$/;
/** Day, month as a Roman number, year, as on labels of herbaria (common practice, no source). */
const ROMAN = /^(\d{1,2})[-./ ]+(I{1,3}|IV|VI{0,3}|IX|XI{0,2}|X)[-./ ]+(\d{4}|\d{2})$/i;
const ROMANS = 'I II III IV V VI VII VIII IX X XI XII'.split(' ');
const WEEKDAY = /^(?:\p{L}{2,10}[.,]? +){1,2}(?=\d)/u;
const ORDINAL = '(?:st|nd|rd|th|er|º|ª|o)?';
const DAY_MONTH_NAME = new RegExp(
  String.raw`^(\d{1,2})${ORDINAL}[-./ ,]*(?:de |of )?(\p{L}{3,12})[-./, ]*(?:del? )?['’]?(\d{4}|\d{2})${TIME}`,
  'u',
);
const MONTH_NAME_DAY = new RegExp(
  String.raw`^(\p{L}{3,12})[-./ ]*(\d{1,2})${ORDINAL}[-./, ]+['’]?(\d{4}|\d{2})${TIME}`,
  'u',
);
const YEAR_MONTH_NAME_DAY = new RegExp(String.raw`^(\d{4})[-./ ]+(\p{L}{3,12})[-./ ]+(\d{1,2})${TIME}`, 'u');
/** Month and year, day and month, or a year alone, in numbers. */
const PARTIAL_NUMBERS =
  /^(?:\d{4}[-./ ]\d{1,2}|\d{1,2}[-./ ]\d{4}|\d{1,2}[-./]\d{1,2}[-./]?|(?:19|20)\d{2})$/;
const PARTIAL_NAME = /^(?:\d{1,4}[-./, ]*)?(?:de )?(\p{L}{3,12})[-./, ]*(?:del? )?['’]?(?:\d{1,4})?[.]?$/u;
/** Five digits that are a day from 1954 to 2100, with or without a time of day. */
const SERIAL = /^([2-7]\d{4})(?:[.,]\d+)?$/;
const EARLIEST_YEAR = 1950;
const LATEST_YEAR = 2100;
/** The day 0 of each system; 1900 counts a 29 February that never was, so that days from March 1900 on start a day earlier. */
const DAY_ZERO: Readonly<Record<DateSystem, string>> = { 1900: '1899-12-30', 1904: '1904-01-01' };

/** Two digits are a year from 1970 to 2069. */
export function fullYear(text: string): number {
  const year = Number(text);
  if (text.length > 2) return year;
  return year + (year < 70 ? 2000 : 1900);
}

/** The three numbers of a date whose order its column must tell, or null where the cell is no such date. */
export function threeNumbers(text: string): readonly [string, string, string] | null {
  const parts = THREE_NUMBERS.exec(text) ?? THREE_NUMBERS.exec(text.replace(WEEKDAY, ''));
  return parts && [parts[1], parts[2], parts[3]];
}

/** The ISO date of three numbers read in an order, or null where no such day exists. */
export function dateInOrder(numbers: readonly string[], order: DateOrder): string | null {
  const [year, month, day] = DATE_ORDERS[order].map((position) => numbers[position]);
  // A four-digit number is a year wherever it stands.
  if (month.length > 2 || day.length > 2) return null;
  return isoDate(fullYear(year), Number(month), Number(day));
}

/** Whether a cell is a spreadsheet's own number for a day: 45809 is 1 June 2025 in the 1900 system. */
export function isSerial(text: string): boolean {
  return SERIAL.test(text);
}

/** The ISO date of a spreadsheet's own number for a day; its time of day is dropped. */
export function serialDate(days: number, system: DateSystem): string {
  return addDays(DAY_ZERO[system], Math.floor(days));
}

interface NamedDate {
  readonly year: string;
  readonly month: number;
  readonly day: string;
}

/** The parts of a date whose month is a name, in any of the four languages; null where the cell is no such date. */
function namedDate(text: string): NamedDate | null {
  const roman = ROMAN.exec(text);
  if (roman) return { day: roman[1], month: ROMANS.indexOf(roman[2].toUpperCase()) + 1, year: roman[3] };
  const plain = text.replace(WEEKDAY, '');
  const dayFirst = DAY_MONTH_NAME.exec(plain);
  if (dayFirst && monthNumber(dayFirst[2]) > 0)
    return { day: dayFirst[1], month: monthNumber(dayFirst[2]), year: dayFirst[3] };
  const monthFirst = MONTH_NAME_DAY.exec(text);
  if (monthFirst && monthNumber(monthFirst[1]) > 0)
    return { day: monthFirst[2], month: monthNumber(monthFirst[1]), year: monthFirst[3] };
  const yearFirst = YEAR_MONTH_NAME_DAY.exec(text);
  return yearFirst && monthNumber(yearFirst[2]) > 0
    ? { day: yearFirst[3], month: monthNumber(yearFirst[2]), year: yearFirst[1] }
    : null;
}

/** Whether a date's year has two digits only, so that its century is a guess. */
export function hasShortYear(text: string): boolean {
  return (threeNumbers(text)?.[2] ?? namedDate(text)?.year)?.length === 2;
}

/** Whether a cell names a month, a year or a day of no year: less than a day. */
function isPartial(text: string): boolean {
  if (PARTIAL_NUMBERS.test(text)) return true;
  const named = PARTIAL_NAME.exec(text);
  return named !== null && monthNumber(named[1]) > 0;
}

/** The ISO date that a cell writes in any form, null where the day does not exist, undefined where it is no date. */
function dateWritten(text: string, form: DateForm): string | null | undefined {
  if (isIsoDate(text)) return text;
  const yearFirst = YEAR_FIRST.exec(text) ?? COMPACT.exec(text);
  if (yearFirst) return isoDate(Number(yearFirst[1]), Number(yearFirst[2]), Number(yearFirst[3]));
  const numbers = threeNumbers(text);
  if (numbers) return typeof form === 'string' ? dateInOrder(numbers, form) : null;
  const serial = typeof form === 'number' ? SERIAL.exec(text) : null;
  if (serial) return serialDate(Number(serial[1]), form as DateSystem);
  const named = namedDate(text);
  return named === null ? undefined : isoDate(fullYear(named.year), named.month, Number(named.day));
}

/** What a date cell says, or the code of its fault. */
export type DateReading = { readonly value: string } | { readonly fault: RowProblemCode };

/**
 * The day that a cell names, as an ISO date. A time of day is dropped: a flower has a day, and no time zone moves it.
 *
 * @param form how the dates of its column were found to be written
 * @example readDate('14.6.2025', 'dmy') // { value: '2025-06-14' }
 */
export function readDate(text: string, form: DateForm): DateReading {
  const date = dateWritten(text, form);
  if (date === null) return { fault: 'date-does-not-exist' };
  if (date === undefined) {
    if (isSerial(text)) return { fault: 'date-serial' };
    return { fault: isPartial(text) ? 'date-partial' : 'date-not-understood' };
  }
  const year = Number(date.slice(0, 4));
  return year < EARLIEST_YEAR || year > LATEST_YEAR ? { fault: 'date-implausible' } : { value: date };
}
