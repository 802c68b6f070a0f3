/** Wording of time. Lengths by the Gregorian calendar: 30.44 days a month, 365.2425 a year (146 097 in 400 years). */
import { describe, expect, it } from 'vitest';
import { days, daysWithRange, shortDays } from '../../lib/words/durations.ts';

describe('days', () => {
  it('leaves short spans in days', () => {
    expect([0, 1, 9, 13].map(days)).toEqual(['0 days', '1 day', '9 days', '13 days']);
  });

  it('gives longer ones a round length and the days it stands for', () => {
    expect(days(14)).toBe('about 2 weeks (14 days)');
    expect(days(44)).toBe('about 6 weeks (44 days)');
    expect(days(92)).toBe('about 3 months (92 days)');
    expect(days(365)).toBe('about 1 year (365 days)');
    expect(days(548)).toBe('about 1½ years (548 days)');
    expect(days(731)).toBe('about 2 years (731 days)');
  });

  it('never says 12 months, and has no gap between months and years', () => {
    expect(days(349)).toBe('about 11 months (349 days)');
    expect(days(351)).toBe('about 1 year (351 days)');
    expect(days(430)).toBe('about 1 year (430 days)');
  });

  it('rounds parts of days', () => {
    expect(days(92.4)).toBe('about 3 months (92 days)');
  });

  it('throws for a negative or endless span', () => {
    expect(() => days(-1)).toThrow('days: count must be 0 or more days, got -1');
    expect(() => days(Number.POSITIVE_INFINITY)).toThrow(RangeError);
  });

  it('is short on an axis', () => {
    expect([1, 7, 30, 91, 365].map(shortDays)).toEqual(['1 day', '7 days', '4 weeks', '3 months', '1 year']);
  });
});

describe('estimated spans', () => {
  it('carry their range', () => {
    expect(daysWithRange({ estimate: 92, lower: 60, upper: 140 })).toBe(
      'about 3 months (92 days; could be 60 to 140 days)',
    );
    expect(daysWithRange({ estimate: 9, lower: 4, upper: 13 })).toBe('about 9 days (could be 4 to 13 days)');
    expect(daysWithRange({ estimate: 92, lower: 60, upper: null })).toBe(
      'about 3 months (92 days; could be 60 days or more)',
    );
  });

  it('say more than the oldest age tried where nothing else is known', () => {
    expect(daysWithRange({ estimate: null, lower: 203, upper: null, because: 'past-oldest-age' })).toBe(
      'more than about 7 months (203 days)',
    );
    expect(daysWithRange({ estimate: null, lower: null, upper: null })).toBe('can’t tell yet');
    expect(daysWithRange({ estimate: 92, lower: null, upper: null })).toBe('about 3 months (92 days)');
  });
});
