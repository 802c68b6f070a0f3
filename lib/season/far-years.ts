/** Pollinations in a year that stands alone: mostly a slip of the keyboard, 2052 for 2025. */

import type { ReadCross } from './crosses.ts';
import { daysBetween } from './dates.ts';

/** So many days without any pollination part two times of a grower's life (common practice, no source). */
const FAR_DAYS = 5 * 365 + 1;
/** A slip is rare: where more than one flower in so many stands apart, the grower came back after a break. */
const FLOWERS_A_SLIP = 10;
/** Fewer flowers do not tell which date is the odd one. */
const FEWEST_FLOWERS = 4;

function byDate({ cross: a }: ReadCross, { cross: b }: ReadCross): number {
  return a.pollinationDate < b.pollinationDate ? -1 : Number(a.pollinationDate > b.pollinationDate);
}

/**
 * Warns of those of some flowers, ordered outwards from the middle, that stand past the first gap, where they are few.
 *
 * @param most how many flowers may be called a slip
 */
function reportPastGap(outwards: readonly ReadCross[], most: number): void {
  const past = outwards.findIndex(
    ({ cross }, index) =>
      index > 0 &&
      Math.abs(daysBetween(outwards[index - 1].cross.pollinationDate, cross.pollinationDate)) > FAR_DAYS,
  );
  if (past === -1 || outwards.length - past > most) return;
  const nearest = outwards[past - 1].cross.pollinationDate;
  for (const { cells } of outwards.slice(past))
    cells.report('warning', 'year-stands-alone', { column: 'pollination_date', details: { nearest } });
}

/**
 * Warns of each pollination more than five years before or after all others, taking those around the middle one (the
 * median date) for right. Seasons with a long break between them are let be, unless one holds a tenth of the flowers or less.
 */
export function reportFarYears(crosses: readonly ReadCross[]): void {
  if (crosses.length < FEWEST_FLOWERS) return;
  let [first, last] = [crosses[0], crosses[0]];
  for (const each of crosses) {
    if (byDate(each, first) < 0) first = each;
    if (byDate(each, last) > 0) last = each;
  }
  // Most files span a few years: nothing is sorted for them.
  if (daysBetween(first.cross.pollinationDate, last.cross.pollinationDate) <= FAR_DAYS) return;
  const sorted = [...crosses].sort(byDate);
  const middle = sorted.length >> 1;
  const most = Math.max(1, Math.floor(sorted.length / FLOWERS_A_SLIP));
  reportPastGap(sorted.slice(middle), most);
  reportPastGap(sorted.slice(0, middle + 1).reverse(), most);
}
