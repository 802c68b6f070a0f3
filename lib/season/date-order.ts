/** Which of its numbers is the day: decided once for a column, by the dates in it that can be read in one way only. */

import { dateInOrder, threeNumbers } from './date-cell.ts';
import type { DateOrder } from './season.ts';

/** A cell of a date column and the row it stands in, as a spreadsheet counts. */
export interface DateCell {
  readonly row: number;
  readonly text: string;
}

/** What a column's dates say about their order. */
export type DateOrderFinding =
  /** No cell needs an order: ISO dates, month names, or nothing at all. */
  | { readonly state: 'not-needed' }
  /** One order is left, or all that are left name the same days (then no cell is evidence of it). */
  | {
      readonly state: 'decided';
      readonly order: DateOrder;
      readonly evidence: DateCell | null;
      /** The likeliest other order, which the evidence rules out; null where only its place tells the year. */
      readonly rival: DateOrder | null;
      /** Whether the year was told by changing less than the day. */
      readonly byYear: boolean;
    }
  /** Every cell can be read in these ways, and they differ. */
  | { readonly state: 'unclear'; readonly orders: readonly DateOrder[]; readonly example: DateCell }
  /** No one order reads all cells: each of these rules out what the other needs. */
  | { readonly state: 'mixed'; readonly orders: readonly DateOrder[]; readonly against: readonly DateCell[] };

const ORDERS: readonly DateOrder[] = ['dmy', 'mdy', 'ymd'];

interface Tally {
  readonly order: DateOrder;
  reads: number;
  against: DateCell | null;
}

/** How many cells an order reads, and the first that speaks against it; cells that no order reads say nothing. */
function tallies(cells: readonly DateCell[]): Tally[] {
  const tally: Tally[] = ORDERS.map((order) => ({ order, reads: 0, against: null }));
  for (const cell of cells) {
    const dates = ORDERS.map((order) => dateOf(cell, order));
    if (dates.every((date) => date === null)) continue;
    dates.forEach((date, i) => {
      if (date === null) tally[i].against ??= cell;
      else tally[i].reads += 1;
    });
  }
  return tally;
}

function dateOf(cell: DateCell, order: DateOrder): string | null {
  const numbers = threeNumbers(cell.text);
  return numbers && dateInOrder(numbers, order);
}

/** The first cell that is another day in another order; 05/05/2025 is the same either way. */
function differing(cells: readonly DateCell[], orders: readonly DateOrder[]): DateCell | undefined {
  return cells.find((cell) => new Set(orders.map((order) => dateOf(cell, order))).size > 1);
}

/** The year changes less than the day: so many more different days show where it stands. */
const MORE_DAYS = 2;

/** Where years of two digits stand, first or last, by how many different numbers there are; null where that does not tell. */
function yearPlace(cells: readonly DateCell[]): 'first' | 'last' | null {
  const [firsts, lasts] = [new Set<number>(), new Set<number>()];
  for (const { text } of cells) {
    const numbers = threeNumbers(text);
    if (numbers === null) continue;
    firsts.add(Number(numbers[0]));
    lasts.add(Number(numbers[2]));
  }
  if (firsts.size >= lasts.size + MORE_DAYS) return 'last';
  return lasts.size >= firsts.size + MORE_DAYS ? 'first' : null;
}

/** Those of some orders that put the year where it stands; all where none does. */
function withYear(orders: readonly DateOrder[], place: 'first' | 'last' | null): readonly DateOrder[] {
  const fitting = orders.filter((order) => place === null || (order === 'ymd') === (place === 'first'));
  return fitting.length === 0 ? orders : fitting;
}

/**
 * Finds the order of day, month and year of a column's dates.
 *
 * An order is ruled out by a date that does not exist in it: 25/06/2025 cannot have the month first. Where more than
 * one order is left, a year of two digits shows by changing less than the day; where orders still name different days,
 * only the grower can tell.
 *
 * @example dateOrderOf([{ row: 2, text: '03/04/2025' }, { row: 3, text: '25/04/2025' }]) // decided: dmy, by row 3
 */
export function dateOrderOf(cells: readonly DateCell[]): DateOrderFinding {
  const tally = tallies(cells);
  const tried = tally.filter(({ reads }) => reads > 0);
  if (tried.length === 0) return { state: 'not-needed' };
  const left = tally.filter(({ against }) => against === null).map(({ order }) => order);
  if (left.length === 0) {
    return {
      state: 'mixed',
      orders: tried.map(({ order }) => order),
      against: tried.map(({ against }) => against!),
    };
  }
  if (differing(cells, left) === undefined && left.length > 1)
    return { state: 'decided', order: left[0], evidence: null, rival: null, byYear: false };
  const fitting = withYear(left, yearPlace(cells));
  const example = differing(cells, fitting);
  if (example !== undefined) return { state: 'unclear', orders: fitting, example };
  // What rules out the nearest rival: month first for day first, and the other way round.
  const rival = tally.find(({ order }) => order === (fitting[0] === 'dmy' ? 'mdy' : 'dmy'))!;
  return {
    state: 'decided',
    order: fitting[0],
    evidence: rival.against ?? cells.find(({ text }) => threeNumbers(text) !== null)!,
    rival: rival.against === null ? null : rival.order,
    byYear: fitting.length < left.length,
  };
}
