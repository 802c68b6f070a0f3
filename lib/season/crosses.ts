/** Rows of a crosses file → hand-pollinated flowers, as far as one row alone can tell. */

import { RowCells } from './row-cells.ts';
import type { Control, Cross } from './season.ts';
import type { Sheet } from './sheet.ts';
import { CONTROLS, OUTCOMES } from './values.ts';

/** Past these a count is a slip of the pen, not a fruit of a climbing cactus (common practice, no source). */
const MOST_SEEDS = 100_000;
const HEAVIEST_FRUIT_GRAMS = 20_000;
const OLDEST_POLLEN_DAYS = 36_525;

/**
 * A flower and the cells it was read from, which later checks report against. Until the sources of its pollen's age
 * are compared, `ageDays` is what the row itself gives.
 */
export interface ReadCross {
  /** Its own until the season is read: what cannot be is taken from it, its pollen's age is put in. */
  readonly cross: { -readonly [field in keyof Cross]: Cross[field] };
  readonly cells: RowCells;
}

type Pollen = Pick<Cross, 'pollenParent' | 'storage' | 'pollenCollected' | 'ageDays' | 'vial'>;

const NO_POLLEN: Pollen = {
  pollenParent: null,
  storage: null,
  pollenCollected: null,
  ageDays: null,
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
  const named = cells.plant('pollen_parent', control === null);
  if (control === 'selfed' && named !== null && seedParent !== null && named !== seedParent) {
    cells.report('error', 'selfed-with-other-pollen', { column: 'pollen_parent', details: { seedParent } });
  }
  return {
    pollenParent: control === 'selfed' ? (named ?? seedParent) : named,
    storage: cells.storage(true),
    pollenCollected: cells.date('pollen_collected'),
    ageDays: cells.number('pollen_age_days', { highest: OLDEST_POLLEN_DAYS, whole: true }),
    vial: cells.name('vial'),
  };
}

/** A blank season is the calendar year of the pollination. */
function seasonOf(cells: RowCells, pollinationDate: string): string {
  return cells.name('season') ?? pollinationDate.slice(0, 4);
}

function crossOf(cells: RowCells): Cross | null {
  const crossId = cells.name('cross_id', true);
  const pollinationDate = cells.date('pollination_date', true);
  const seedParent = cells.plant('seed_parent', true);
  const control = cells.word('control', CONTROLS) || null;
  const pollen = pollenOf(cells, seedParent, control);
  const outcome = cells.word('outcome', OUTCOMES, true);
  if (crossId === null || pollinationDate === null || seedParent === null || outcome === null) return null;
  const count = { highest: MOST_SEEDS, whole: true };
  // Written out key by key: an object spread together from parts is many times slower to make and to read.
  const { file, line, row } = cells.place;
  const cross: Cross = {
    file,
    line,
    row,
    crossId,
    pollinationDate,
    season: seasonOf(cells, pollinationDate),
    seedParent,
    pollenParent: pollen.pollenParent,
    storage: pollen.storage,
    ageDays: pollen.ageDays,
    pollenCollected: pollen.pollenCollected,
    vial: pollen.vial,
    outcome,
    control,
    grower: cells.name('grower'),
    wave: cells.text('wave'),
    checkedOn: cells.date('checked_on'),
    harvestedOn: cells.date('harvested_on'),
    bagged: cells.yesNo('bagged'),
    seeds: cells.number('seeds', count),
    sown: cells.number('sown', count),
    germinated: cells.number('germinated', count),
    fruitWeightGrams: cells.number('fruit_weight_g', { highest: HEAVIEST_FRUIT_GRAMS }),
    identifiedBy: cells.text('identified_by'),
    note: cells.text('note'),
  };
  return cells.leftOut ? null : cross;
}

/** The flowers of a sheet; every row that gives none has its error in the sheet's problems. */
export function crossRows(sheet: Sheet): ReadCross[] {
  const read: ReadCross[] = [];
  for (const row of sheet.rows) {
    const cells = new RowCells(sheet, row);
    const cross = cells.leftOut ? null : crossOf(cells);
    if (cross !== null) read.push({ cross, cells });
  }
  return read;
}
