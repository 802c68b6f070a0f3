/** The round length of time that people would say for a number of days, before a language says it. */

/** Mean length in days of a month and a year of the Gregorian calendar (146 097 days in 400 years). */
const YEAR = 146_097 / 400;
const MONTH = YEAR / 12;

/** So many weeks, months, or years with or without a half. */
export interface RoundLength {
  readonly unit: 'week' | 'month' | 'year';
  /** "3", "1½". */
  readonly said: string;
  /** Exactly one, as grammar counts. */
  readonly one: boolean;
}

/** The length people would say for whole days; null where days themselves are short enough. */
export function roundLength(count: number): RoundLength | null {
  if (count < 14) return null;
  if (count < 60) return lengthOf('week', Math.round(count / 7));
  const months = Math.round(count / MONTH);
  if (months < 12) return lengthOf('month', months);
  const halves = Math.round((count / YEAR) * 2);
  const said = `${Math.floor(halves / 2)}${halves % 2 === 1 ? '½' : ''}`;
  return { unit: 'year', said, one: halves === 2 };
}

function lengthOf(unit: 'week' | 'month', count: number): RoundLength {
  return { unit, said: String(count), one: count === 1 };
}

/**
 * Whole days of a count.
 *
 * @throws RangeError if `count` is negative or not finite
 */
export function wholeDays(count: number): number {
  if (!(count >= 0 && Number.isFinite(count))) {
    throw new RangeError(`days: count must be 0 or more days, got ${count}`);
  }
  return Math.round(count);
}
