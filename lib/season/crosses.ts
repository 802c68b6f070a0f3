/** Rows of a crosses file → hand-pollinated flowers, as far as one row alone can tell. */

import { RowCells } from './row-cells.ts';
import type { Control, Cross } from './season.ts';
import type { Sheet } from './sheet.ts';
import { CONTROLS, OUTCOMES } from './values.ts';

/** Past these a count is a slip of the pen, not a fruit of a climbing cactus (common practice, no source). */
const MOST_SEEDS = 100_000;
const HEAVIEST_FRUIT_GRAMS = 20_000;
const OLDEST_POLLEN_DAYS = 36_525;

/** A flower whose pollen age is still to be found, with the age that its row gives. */
export interface CrossRecord extends Omit<Cross, 'ageDays'> {
  readonly ageGiven: number | null;
}

/** A record and the cells it was read from, which later checks report against. */
export interface ReadCross {
  readonly record: CrossRecord;
  readonly cells: RowCells;
}

type Pollen = Pick<CrossRecord, 'pollenParent' | 'storage' | 'pollenCollected' | 'ageGiven' | 'vial'>;

const NO_POLLEN: Pollen = {
  pollenParent: null,
  storage: null,
  pollenCollected: null,
  ageGiven: null,
  vial: null,
};

/** An unpollinated flower had no pollen: what its row says of one is not believed. */
function noPollen(cells: RowCells): Pollen {
  const filled = ['pollen_parent', 'storage', 'pollen_collected', 'pollen_age_days', 'vial'].find(
    (column) => !['', '-', '?', 'none', 'n/a', 'na'].includes(cells.raw(column).toLowerCase()),
  );
  if (filled !== undefined) cells.report('warning', 'unpollinated-with-pollen', { column: filled });
  return NO_POLLEN;
}

function pollenOf(cells: RowCells, seedParent: string | null, control: Control | null): Pollen {
  if (control === 'unpollinated') return noPollen(cells);
  const named = cells.name('pollen_parent', control === null);
  if (control === 'selfed' && named !== null && seedParent !== null && named !== seedParent) {
    cells.report('error', 'selfed-with-other-pollen', { column: 'pollen_parent', details: { seedParent } });
  }
  return {
    pollenParent: named ?? seedParent,
    storage: cells.storage(true),
    pollenCollected: cells.date('pollen_collected'),
    ageGiven: cells.number('pollen_age_days', { highest: OLDEST_POLLEN_DAYS, whole: true }),
    vial: cells.name('vial'),
  };
}

function countsOf(cells: RowCells): Pick<CrossRecord, 'seeds' | 'sown' | 'germinated' | 'fruitWeightGrams'> {
  const count = { highest: MOST_SEEDS, whole: true };
  return {
    seeds: cells.number('seeds', count),
    sown: cells.number('sown', count),
    germinated: cells.number('germinated', count),
    fruitWeightGrams: cells.number('fruit_weight_g', { highest: HEAVIEST_FRUIT_GRAMS }),
  };
}

function recordOf(cells: RowCells): CrossRecord | null {
  const crossId = cells.name('cross_id', true);
  const pollinationDate = cells.date('pollination_date', true);
  const seedParent = cells.name('seed_parent', true);
  const control = cells.word('control', CONTROLS) || null;
  const pollen = pollenOf(cells, seedParent, control);
  const outcome = cells.word('outcome', OUTCOMES, true);
  const rest = {
    control,
    grower: cells.name('grower'),
    wave: cells.text('wave'),
    checkedOn: cells.date('checked_on'),
    harvestedOn: cells.date('harvested_on'),
    bagged: cells.yesNo('bagged'),
    ...countsOf(cells),
    identifiedBy: cells.text('identified_by'),
    note: cells.text('note'),
  };
  if (
    cells.leftOut ||
    crossId === null ||
    pollinationDate === null ||
    seedParent === null ||
    outcome === null
  ) {
    return null;
  }
  const season = cells.name('season') ?? pollinationDate.slice(0, 4);
  return { ...cells.place, crossId, pollinationDate, season, seedParent, ...pollen, outcome, ...rest };
}

/** The flowers of a sheet; every row that gives none has its error in the sheet's problems. */
export function crossRows(sheet: Sheet): ReadCross[] {
  return sheet.rows.flatMap((row) => {
    const cells = new RowCells(sheet, row);
    const record = recordOf(cells);
    return record === null ? [] : [{ record, cells }];
  });
}
