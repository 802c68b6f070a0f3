/** How an age or a span of time is said: a round length that people use, and the days it stands for. */
import type { Estimate } from '../proportions/interval.ts';
import { CANNOT_TELL, counted, wholeNumber } from './numbers.ts';
import { roundLength, wholeDays } from './told/lengths.ts';

/**
 * A number of days in words: "9 days", "about 6 weeks (44 days)", "about 3 months (92 days)", "about 1½ years (548 days)".
 *
 * @param count days, 0 or more; rounded to whole days
 * @throws RangeError if `count` is negative or not finite
 */
export function days(count: number): string {
  const exact = exactDays(count);
  const rounded = roundSaid(count);
  return rounded === null ? exact : `about ${rounded} (${exact})`;
}

function exactDays(count: number): string {
  return counted(wholeDays(count), 'day');
}

/** The same, short, for the marks of an axis: "1 year", "3 months", "9 days". */
export function shortDays(count: number): string {
  return roundSaid(count) ?? exactDays(count);
}

/** The length people would say; null where days themselves are short enough. */
function roundSaid(count: number): string | null {
  const length = roundLength(Math.round(count));
  return length === null ? null : `${length.said} ${length.unit}${length.one ? '' : 's'}`;
}

/**
 * A span that was estimated: "about 3 months (92 days; could be 60 to 140 days)".
 *
 * Where only the lower end is known: "more than about 2 months (60 days)", and without an estimate or a lower
 * end "can't tell yet".
 */
export function daysWithRange(estimate: Estimate): string {
  const { lower, upper } = estimate;
  if (estimate.estimate === null) return lower === null ? CANNOT_TELL : `more than ${days(lower)}`;
  const said = roundSaid(estimate.estimate);
  const exact = exactDays(estimate.estimate);
  const range = dayRange(lower, upper);
  if (range === null) return days(estimate.estimate);
  return said === null ? `about ${exact} (${range})` : `about ${said} (${exact}; ${range})`;
}

function dayRange(lower: number | null, upper: number | null): string | null {
  if (lower === null) return null;
  if (upper === null) return `could be ${wholeNumber(lower)} days or more`;
  return `could be ${wholeNumber(lower)} to ${wholeNumber(upper)} days`;
}
