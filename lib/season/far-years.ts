/** Dates in a year that stands alone: mostly a slip of the keyboard, 2052 for 2025. */

import { daysBetween } from './dates.ts';
import type { Records } from './report-names.ts';
import type { RowCells } from './row-cells.ts';

/** So many days without any date part two times of a grower's life (common practice, no source). */
const FAR_DAYS = 5 * 365 + 1;
/** So far apart, two dates have at least this many whole calendar years between them. */
const EMPTY_YEARS = 4;
/** A slip is rare: where more than one date in so many stands apart, the grower came back after a break. */
const DATES_A_SLIP = 10;
/** Fewer dates do not tell which is the odd one. */
const FEWEST_DATES = 4;

/** A date and the cell it stands in. */
interface Dated {
  readonly date: string;
  readonly column: string;
  readonly cells: RowCells;
}

type Visit = (date: string, column: string, cells: RowCells) => void;

function eachPollination({ crosses }: Records, visit: Visit): void {
  for (const { cross, cells } of crosses) visit(cross.pollinationDate, 'pollination_date', cells);
}

/** Every date of the records that may be compared with the pollinations; those of checks and harvests have their own. */
function eachDate(records: Records, visit: Visit): void {
  eachPollination(records, visit);
  for (const { cross, cells } of records.crosses)
    if (cross.pollenCollected !== null) visit(cross.pollenCollected, 'pollen_collected', cells);
  for (const { vial, cells } of records.vials) visit(vial.collected, 'collected', cells);
  for (const { flowers, cells } of records.flowers) {
    if (flowers.opensFrom !== null) visit(flowers.opensFrom, 'opens_from', cells);
    if (flowers.opensTo !== null) visit(flowers.opensTo, 'opens_to', cells);
  }
}

function yearOf(date: string): number {
  let year = 0;
  for (let i = 0; i < 4; i++) year = year * 10 + date.charCodeAt(i) - 48;
  return year;
}

/** Whether a few years in a row have no date though earlier and later ones have: most files end here, unsorted. */
function hasEmptyYears(each: (visit: Visit) => void): boolean {
  const filled = new Uint8Array(10_000);
  each((date) => {
    filled[yearOf(date)] = 1;
  });
  let empty = Number.NEGATIVE_INFINITY;
  for (const year of filled) {
    if (year === 0) empty += 1;
    else if (empty >= EMPTY_YEARS) return true;
    else empty = 0;
  }
  return false;
}

/**
 * Warns of those of some dates, ordered outwards from the middle, that stand past the first gap, where they are few.
 *
 * @param most how many dates may be called a slip
 * @param told whether a date of this column has been looked at before
 */
function reportPastGap(outwards: readonly Dated[], most: number, told: (column: string) => boolean): void {
  const past = outwards.findIndex(
    ({ date }, i) => i > 0 && Math.abs(daysBetween(outwards[i - 1].date, date)) > FAR_DAYS,
  );
  if (past === -1 || outwards.length - past > most) return;
  const nearest = outwards[past - 1].date;
  for (const { column, cells } of outwards.slice(past)) {
    // One fault, one finding: pollen that is said to be too old or too young has been told.
    if (told(column) || cells.reported(column)) continue;
    cells.report('warning', 'year-stands-alone', { column, details: { nearest } });
  }
}

function reportFar(each: (visit: Visit) => void, told: (column: string) => boolean): void {
  if (!hasEmptyYears(each)) return;
  const dates: Dated[] = [];
  each((date, column, cells) => void dates.push({ date, column, cells }));
  if (dates.length < FEWEST_DATES) return;
  const sorted = dates.sort((a, b) => (a.date < b.date ? -1 : Number(a.date > b.date)));
  const middle = sorted.length >> 1;
  const most = Math.max(1, Math.floor(sorted.length / DATES_A_SLIP));
  reportPastGap(sorted.slice(middle), most, told);
  reportPastGap(sorted.slice(0, middle + 1).reverse(), most, told);
}

/**
 * Warns of each pollination more than five years before or after all others, taking those around the middle one (the
 * median date) for right; then of collections and flowerings as far from these and from each other. Seasons with a long
 * break between them are let be, unless one holds a tenth of the dates or less.
 */
export function reportFarYears(records: Records): void {
  reportFar(
    (visit) => eachPollination(records, visit),
    () => false,
  );
  reportFar(
    (visit) => eachDate(records, visit),
    (column) => column === 'pollination_date',
  );
}
