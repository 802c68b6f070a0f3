/** Rows of a vials file → pollen lots. */

import { RowCells } from './row-cells.ts';
import type { Vial } from './season.ts';
import type { Sheet } from './sheet.ts';

/** More doses or thaws than any vial has seen: a slip of the pen. */
const MOST_DOSES = 10_000;
const MOST_THAWS = 1_000;

function vialOf(cells: RowCells): Vial | null {
  const vial = cells.name('vial', true);
  const pollenParent = cells.plant('pollen_parent', true);
  const collected = cells.date('collected', true);
  const storage = cells.storage(true);
  const dosesLeft = cells.number('doses_left', { highest: MOST_DOSES, whole: true });
  const dosesFilled = cells.number('doses_filled', { highest: MOST_DOSES, whole: true });
  const thaws = cells.number('thaws', { highest: MOST_THAWS, whole: true });
  if (cells.leftOut || vial === null || pollenParent === null || collected === null || storage === null)
    return null;
  return {
    ...cells.place,
    vial,
    pollenParent,
    collected,
    storage,
    dosesLeft,
    ...(dosesFilled === null ? {} : { dosesFilled }),
    thaws,
    note: cells.text('note'),
  };
}

/** A record and the cells it was read from, which later checks report against. */
export interface ReadVial {
  readonly vial: Vial;
  readonly cells: RowCells;
}

/** The vials of a sheet; every row that gives none has its error in the sheet's problems. */
export function vialRows(sheet: Sheet): ReadVial[] {
  return sheet.rows.flatMap((row) => {
    const cells = new RowCells(sheet, row);
    const vial = cells.leftOut ? null : vialOf(cells);
    return vial === null ? [] : [{ vial, cells }];
  });
}
