/** Days of the calendar as ISO 8601 text (YYYY-MM-DD): no clock, no time zone, no `Date` past this file. */

import type { DateOrder } from './season.ts';

const MS_PER_DAY = 86_400_000;

function daysInMonth(year: number, month: number): number {
  if (month !== 2) return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
}

/**
 * Days since 1970-01-01 of a day that exists in the proleptic Gregorian calendar, else null. In whole numbers, since a
 * `Date` a row would be most of the time that a file takes (Hinnant 2013, "chrono-compatible low-level date
 * algorithms", days_from_civil: the year is counted from 1 March, so that the leap day ends it).
 */
function dayNumber(year: number, month: number, day: number): number | null {
  if (!(year >= 0 && month >= 1 && month <= 12 && day >= 1 && day <= daysInMonth(year, month))) return null;
  const shifted = month <= 2 ? year - 1 : year;
  const era = Math.floor(shifted / 400);
  const yearOfEra = shifted - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146_097 + dayOfEra - 719_468;
}

function isoDay(days: number): string {
  return new Date(days * MS_PER_DAY).toISOString().slice(0, 10);
}

/** The number that digits of a text make; NaN where one of them is no digit. */
function digits(text: string, start: number, end: number): number {
  let number = 0;
  for (let i = start; i < end; i++) {
    const digit = text.charCodeAt(i) - 48;
    number = digit >= 0 && digit <= 9 ? number * 10 + digit : Number.NaN;
  }
  return number;
}

/** Days since 1970-01-01 of an ISO date; null where the text is none, or no such day exists. */
function isoDayNumber(text: string): number | null {
  if (text.length !== 10 || text[4] !== '-' || text[7] !== '-') return null;
  return dayNumber(digits(text, 0, 4), digits(text, 5, 7), digits(text, 8, 10));
}

function parsed(name: string, date: string): number {
  const days = isoDayNumber(date);
  if (days === null)
    throw new RangeError(`${name}: date must be a day that exists, as YYYY-MM-DD, got "${date}"`);
  return days;
}

/**
 * Whether a text is an ISO 8601 calendar date (YYYY-MM-DD) that exists: `2025-02-28` is, `2025-02-30` is not.
 *
 * @example isIsoDate('2024-02-29') // true
 */
export function isIsoDate(text: string): boolean {
  return isoDayNumber(text) !== null;
}

/**
 * The ISO date of year, month (1 to 12) and day, or null where no such day exists.
 *
 * @example isoDate(2025, 2, 30) // null
 */
export function isoDate(year: number, month: number, day: number): string | null {
  const days = dayNumber(year, month, day);
  return days === null ? null : isoDay(days);
}

/**
 * Whole days from one date to another: 0 on the same day, negative where `to` comes first.
 *
 * @throws RangeError where either is not an ISO date that exists
 * @example daysBetween('2024-02-28', '2024-03-01') // 2
 */
export function daysBetween(from: string, to: string): number {
  return parsed('daysBetween', to) - parsed('daysBetween', from);
}

/**
 * The date a number of whole days after another (before it, where `days` is negative).
 *
 * @throws RangeError where `date` is not an ISO date that exists or `days` is not whole
 * @example addDays('2024-12-31', 1) // '2025-01-01'
 */
export function addDays(date: string, days: number): string {
  if (!Number.isInteger(days)) throw new RangeError(`addDays: days must be whole, got ${days}`);
  return isoDay(parsed('addDays', date) + days);
}

/**
 * The same day of the next year; 29 February becomes 28 February, the last of its month.
 *
 * @throws RangeError where `date` is not an ISO date that exists
 * @example addYear('2024-02-29') // '2025-02-28'
 */
export function addYear(date: string): string {
  parsed('addYear', date);
  const [year, month, day] = date.split('-').map(Number);
  return isoDate(year + 1, month, day) ?? isoDate(year + 1, month, day - 1)!;
}

/** The latest of some ISO dates, null of none. ISO dates sort as text. */
export function latestDate(dates: Iterable<string | null>): string | null {
  let latest: string | null = null;
  for (const date of dates) if (date !== null && (latest === null || date > latest)) latest = date;
  return latest;
}

/** The order of a date's three numbers, as the positions of year, month and day. */
export const DATE_ORDERS: Readonly<Record<DateOrder, readonly [year: number, month: number, day: number]>> = {
  dmy: [2, 1, 0],
  mdy: [2, 0, 1],
  ymd: [0, 1, 2],
};
