import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, addYear, daysBetween, isIsoDate, isoDate, latestDate } from '../../lib/season/dates.ts';

/** Julian day number of a Gregorian day (Fliegel & Van Flandern 1968, Communications of the ACM 11:657). */
function julianDay(year: number, month: number, day: number): number {
  const a = Math.trunc((month - 14) / 12);
  return (
    day -
    32075 +
    Math.trunc((1461 * (year + 4800 + a)) / 4) +
    Math.trunc((367 * (month - 2 - a * 12)) / 12) -
    Math.trunc((3 * Math.trunc((year + 4900 + a) / 100)) / 4)
  );
}

const day = fc
  .tuple(
    fc.integer({ min: 1800, max: 2200 }),
    fc.integer({ min: 1, max: 12 }),
    fc.integer({ min: 1, max: 28 }),
  )
  .map((parts) => ({ parts, iso: isoDate(...parts)! }));

describe('dates', () => {
  it('exist as the Gregorian calendar has them: 29 February in 2024 and 2000, not in 2025 or 1900', () => {
    expect(['2024-02-29', '2000-02-29', '2025-12-31'].map(isIsoDate)).toEqual([true, true, true]);
    expect(['2025-02-29', '1900-02-29', '2025-02-30', '2025-04-31'].map(isIsoDate)).toEqual([
      false,
      false,
      false,
      false,
    ]);
    expect(['2025-00-10', '2025-13-01', '2025-01-00', '0000-00-00'].map(isIsoDate)).toEqual([
      false,
      false,
      false,
      false,
    ]);
  });

  it('are written YYYY-MM-DD and in no other way', () => {
    expect(['2025-6-1', '20250601', '2025-06-01T00:00', ' 2025-06-01', ''].map(isIsoDate)).toEqual(
      Array(5).fill(false),
    );
    expect(isoDate(2025, 6, 1)).toBe('2025-06-01');
    expect(isoDate(2025, 2, 30)).toBeNull();
  });

  it('lie as many days apart as their Julian day numbers', () => {
    fc.assert(
      fc.property(day, day, (from, to) => {
        expect(daysBetween(from.iso, to.iso)).toBe(julianDay(...to.parts) - julianDay(...from.parts));
        expect(addDays(from.iso, daysBetween(from.iso, to.iso))).toBe(to.iso);
      }),
      { seed: 1 },
    );
  });

  it('count a leap day: 28 February to 1 March is 2 days in 2024 and 1 day in 2025', () => {
    expect(daysBetween('2024-02-28', '2024-03-01')).toBe(2);
    expect(daysBetween('2025-02-28', '2025-03-01')).toBe(1);
    expect(daysBetween('2025-03-01', '2025-02-28')).toBe(-1);
  });

  it('move by a year to the same day, and from 29 to 28 February', () => {
    expect(addYear('2025-06-14')).toBe('2026-06-14');
    expect(addYear('2024-02-29')).toBe('2025-02-28');
    expect(addYear('2023-02-28')).toBe('2024-02-28');
  });

  it('have a latest one, none of none', () => {
    expect(latestDate(['2025-06-01', null, '2025-11-30', '2024-12-31'])).toBe('2025-11-30');
    expect(latestDate([null])).toBeNull();
  });

  it('refuse what is no date', () => {
    expect(() => daysBetween('2025-02-30', '2025-03-01')).toThrow(
      'daysBetween: date must be a day that exists, as YYYY-MM-DD, got "2025-02-30"',
    );
    expect(() => addDays('2025-03-01', 0.5)).toThrow('addDays: days must be whole, got 0.5');
    expect(() => addYear('soon')).toThrow(RangeError);
  });
});
