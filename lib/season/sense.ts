/** What in a flower's record cannot be, taken together: each is reported, and the value that cannot stand is dropped. */

import type { ReadCross } from './crosses.ts';
import { daysBetween } from './dates.ts';
import type { RowCells } from './row-cells.ts';
import type { Cross } from './season.ts';

/**
 * A fruit cannot be told from a fading flower before this (common practice, no source: the check is at two weeks). A
 * flower that took nothing may fall after a few days already.
 */
const EARLIEST_CHECK_DAYS = 7;

/** A flower is looked at within weeks and its fruit ripe within months: later is a slip of the year (common practice, no source). */
const LATEST_CHECK_DAYS = 366;
const LATEST_HARVEST_DAYS = 731;

/** What a check takes back of a flower's record; null where it stands. */
type Check = (cross: Cross, cells: RowCells) => Partial<Cross> | null;

const checkedOn: Check = ({ pollinationDate, checkedOn, outcome }, cells) => {
  if (checkedOn === null) return null;
  const days = daysBetween(pollinationDate, checkedOn);
  if (days < 0) {
    cells.report('warning', 'checked-before-pollination', {
      column: 'checked_on',
      details: { pollinationDate },
    });
    return { checkedOn: null };
  }
  if (days > LATEST_CHECK_DAYS) {
    cells.report('warning', 'checked-too-late', {
      column: 'checked_on',
      details: { days, pollinationDate },
    });
    return { checkedOn: null };
  }
  if (days < EARLIEST_CHECK_DAYS && (outcome === 'fruit' || outcome === 'dropped')) {
    cells.report('warning', 'checked-too-early', {
      column: 'checked_on',
      details: { days, pollinationDate },
    });
  }
  return null;
};

const harvestedOn: Check = ({ pollinationDate, harvestedOn, outcome }, cells) => {
  if (harvestedOn === null) return null;
  if (harvestedOn < pollinationDate) {
    cells.report('warning', 'harvested-before-pollination', {
      column: 'harvested_on',
      details: { pollinationDate },
    });
    return { harvestedOn: null };
  }
  const days = daysBetween(pollinationDate, harvestedOn);
  if (days > LATEST_HARVEST_DAYS) {
    cells.report('warning', 'harvested-too-late', {
      column: 'harvested_on',
      details: { days, pollinationDate },
    });
    return { harvestedOn: null };
  }
  if (outcome === 'fruit') return null;
  cells.report('warning', 'harvested-without-fruit', { column: 'harvested_on', details: { outcome } });
  return { harvestedOn: null };
};

const seedsOfFruit: Check = ({ outcome, seeds }, cells) => {
  if (outcome === 'fruit' || seeds === null || seeds === 0) return null;
  cells.report('warning', 'seeds-without-fruit', { column: 'seeds', details: { outcome } });
  return { seeds: null };
};

const sownOfSeeds: Check = ({ seeds, sown }, cells) => {
  if (seeds === null || sown === null || sown <= seeds) return null;
  cells.report('warning', 'more-sown-than-seeds', { column: 'sown', details: { seeds } });
  return { sown: null };
};

const germinatedOfSown: Check = ({ sown, germinated }, cells) => {
  if (sown === null || germinated === null || germinated <= sown) return null;
  cells.report('warning', 'more-germinated-than-sown', { column: 'germinated', details: { sown } });
  return { germinated: null };
};

const ownPollen: Check = ({ seedParent, pollenParent, control }, cells) => {
  if (control === null && seedParent === pollenParent) {
    cells.report('warning', 'own-pollen', { column: 'pollen_parent' });
  }
  return null;
};

const CHECKS: readonly Check[] = [
  checkedOn,
  harvestedOn,
  seedsOfFruit,
  sownOfSeeds,
  germinatedOfSown,
  ownPollen,
];

/** What lies past a day that the grower names had not happened then. */
function asSeenOn(asOf: string): Check {
  return ({ pollinationDate, checkedOn, harvestedOn, outcome }, cells) => {
    if (pollinationDate > asOf) {
      cells.report('error', 'future-date', { column: 'pollination_date', details: { asOf } });
      return null;
    }
    const known = outcome !== 'pending' && outcome !== 'unknown';
    if (known && checkedOn !== null && checkedOn > asOf) {
      cells.report('warning', 'outcome-after-as-of', { column: 'checked_on', details: { asOf } });
      return { outcome: 'pending', harvestedOn: null };
    }
    if (harvestedOn === null || harvestedOn <= asOf) return null;
    cells.report('warning', 'future-date', { column: 'harvested_on', details: { asOf } });
    return { harvestedOn: null };
  };
}

/**
 * Takes from a flower's record what cannot be, each reported at its cell.
 *
 * @param asOf the day up to which things have happened, where the grower names one
 */
export function makeSensible({ cross, cells }: ReadCross, asOf: string | null): void {
  for (const check of CHECKS) {
    const taken = check(cross, cells);
    // Nothing is mostly taken, and assigning nothing costs as much as the check.
    if (taken !== null) Object.assign(cross, taken);
  }
  if (asOf !== null) Object.assign(cross, asSeenOn(asOf)(cross, cells));
}
