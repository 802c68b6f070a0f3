/** Days of the calendar as ISO 8601 text (YYYY-MM-DD): no clock, no time zone, no `Date` past this file. */

import type { DateOrder } from './season.ts';

const MS_PER_DAY = 86_400_000;
const ISO = /^(\d{4})-(\d{2})-(\d{2})$/;

/** Days since 1970-01-01 of a day that exists in the proleptic Gregorian calendar, else null. */
function dayNumber(year: number, month: number, day: number): number | null {
  const time = new Date(0).setUTCFullYear(year, month - 1, day);
  const date = new Date(time);
  const exists =
    date.getUTCFullYear() === year && date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
  return exists ? time / MS_PER_DAY : null;
}

function isoDay(days: number): string {
  return new Date(days * MS_PER_DAY).toISOString().slice(0, 10);
}

function parsed(name: string, date: string): number {
  const parts = ISO.exec(date);
  const days = parts && dayNumber(Number(parts[1]), Number(parts[2]), Number(parts[3]));
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
  const parts = ISO.exec(text);
  return parts !== null && dayNumber(Number(parts[1]), Number(parts[2]), Number(parts[3])) !== null;
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
