import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dateShift, isFitShift } from '../../lib/season/date-shift.ts';
import { addDays, addYear, daysBetween } from '../../lib/season/dates.ts';

const secret = fc.integer({ min: 0, max: 2 ** 31 }).map((n) => n.toString(16).padStart(64, '0'));
const day = fc.integer({ min: 0, max: 3000 }).map((n) => addDays('2018-01-01', n));

/** Day and month of a date, as the day of a year that is no leap year. */
const dayOfYear = (date: string): number =>
  daysBetween('2023-01-01', `2023${date.slice(4).replace('-02-29', '-02-28')}`);

describe('dateShift', () => {
  it('moves dates far off, keeps the time of the year and the length of the years ahead', () => {
    fc.assert(
      fc.property(secret, fc.array(day, { minLength: 1, maxLength: 20 }), (digits, dates) => {
        const last = [...dates].sort().at(-1)!;
        const days = dateShift({ secret: digits }, dates, last)!;
        const moved = dates.map((date) => addDays(date, days));
        expect(moved.some((date) => dates.includes(date))).toBe(false);
        expect(Math.abs(days)).toBeGreaterThan(365 * 19);
        const off = Math.abs(dayOfYear(last) - dayOfYear(addDays(last, days)));
        expect(Math.min(off, 365 - off)).toBeLessThanOrEqual(42);
        expect(off).toBeGreaterThan(0);
        const ahead = (date: string) => daysBetween(date, addYear(date));
        expect(ahead(addDays(last, days))).toBe(ahead(last));
      }),
      { numRuns: 25 },
    );
  });

  it('depends on the secret', () => {
    const shifts = ['a', 'b', 'c', 'd'].map((digit) =>
      dateShift({ secret: digit.repeat(64) }, ['2025-06-20'], null),
    );
    expect(new Set(shifts).size).toBe(4);
  });

  // From 1950 to 2100 there are 150 years: dates that span 140 of them cannot be moved by 20 years or more.
  it('finds none where the dates reach too far apart', () => {
    expect(dateShift({ secret: 'a'.repeat(64) }, ['1955-01-01', '2095-01-01'], null)).toBeNull();
  });
});

it('takes no shift that leads out of the years that can be read, nor onto a date that it hides', () => {
  expect(isFitShift(['2025-06-20'], 10)).toBe(true);
  expect(isFitShift(['2025-06-20', '2025-06-30'], 10)).toBe(false);
  expect(isFitShift(['2025-06-20'], 365 * 90)).toBe(false);
  expect(isFitShift(['1951-06-20'], -365 * 3)).toBe(false);
});
