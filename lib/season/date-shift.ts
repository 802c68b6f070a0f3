/** By how many days the dates of a coded copy are moved. */

import { type CodeKey, keyedDigest } from './code-key.ts';
import { addDays, addYear, daysBetween, latestDate } from './dates.ts';

/** Days of four years: a date moved by a multiple of it falls on the same day of the year. */
const FOUR_YEARS = 1461;
/** Far enough that the seasons of many years stay clear of their own dates. */
const [NEAREST, FARTHEST] = [5, 14];
/** A season stays at about its time of the year. */
const MOST_DAYS_OFF = 40;
const EARLIEST = '1950-01-01';
const LATEST = '2100-12-31';

/** Days to the same day of each of the next two years: a shift must keep them, since vials are judged by them. */
function yearsAhead(date: string): string {
  const next = addYear(date);
  return `${daysBetween(date, next)} ${daysBetween(date, addYear(next))}`;
}

/** Whether every moved date can still be read, and none is one of the dates that it hides. */
export function isFitShift(dates: readonly string[], shiftDays: number): boolean {
  const original = new Set(dates);
  return dates.every((date) => {
    const moved = addDays(date, shiftDays);
    return moved >= EARLIEST && moved <= LATEST && !original.has(moved);
  });
}

/**
 * The shift that a key's secret picks for some dates: about whole fours of years, off by one day to forty, so that
 * seasons stay at their time of the year, leap days fall alike and no date is one of the original ones.
 *
 * @param dates ISO dates, the latest pollination among them
 * @param lastPollination from which the next years are counted
 * @returns whole days; null where the dates reach too far apart for any shift
 */
export function dateShift(
  key: Pick<CodeKey, 'secret'>,
  dates: readonly string[],
  lastPollination: string | null,
): number | null {
  const shifts: { readonly days: number; readonly rank: string }[] = [];
  for (let fours = -FARTHEST; fours <= FARTHEST; fours++) {
    for (let off = -MOST_DAYS_OFF; off <= MOST_DAYS_OFF; off++) {
      const days = fours * FOUR_YEARS + off;
      if (Math.abs(fours) >= NEAREST && off !== 0)
        shifts.push({ days, rank: keyedDigest(key, 'days', String(days)) });
    }
  }
  const last = lastPollination ?? latestDate(dates);
  const fit = shifts.sort((a, b) => (a.rank < b.rank ? -1 : 1)).filter(({ days }) => isFitShift(dates, days));
  const alike = fit.find(({ days }) => last === null || yearsAhead(last) === yearsAhead(addDays(last, days)));
  return (alike ?? fit[0])?.days ?? null;
}
