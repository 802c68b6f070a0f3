/** Rows of a flowers file → what next season is expected to offer. */

import { RowCells } from './row-cells.ts';
import type { ExpectedFlowers } from './season.ts';
import type { Sheet } from './sheet.ts';

/** More flowers than one plant bears: a slip of the pen. */
const MOST_FLOWERS = 100_000;

function flowersOf(cells: RowCells): ExpectedFlowers | null {
  const seedParent = cells.plant('seed_parent', true);
  const flowers = cells.number('flowers', { highest: MOST_FLOWERS, whole: true, required: true });
  const opensFrom = cells.date('opens_from');
  const opensTo = cells.date('opens_to');
  if (cells.leftOut || seedParent === null || flowers === null) return null;
  if (opensFrom === null || opensTo === null || opensFrom <= opensTo) {
    return { ...cells.place, seedParent, flowers, opensFrom, opensTo };
  }
  cells.report('warning', 'opens-backwards', {
    column: 'opens_to',
    details: { from: opensFrom, to: opensTo },
  });
  return { ...cells.place, seedParent, flowers, opensFrom: null, opensTo: null };
}

/** A record and the cells it was read from. */
export interface ReadFlowers {
  readonly flowers: ExpectedFlowers;
  readonly cells: RowCells;
}

/** The expected flowers of a sheet; every row that gives none has its error in the sheet's problems. */
export function flowerRows(sheet: Sheet): ReadFlowers[] {
  const seen = new Map<string, number>();
  return sheet.rows.flatMap((row) => {
    const cells = new RowCells(sheet, row);
    const flowers = cells.leftOut ? null : flowersOf(cells);
    if (flowers === null) return [];
    const key = JSON.stringify([flowers.seedParent, flowers.opensFrom, flowers.opensTo]);
    const first = seen.get(key);
    if (first === undefined) seen.set(key, row.row);
    else cells.report('warning', 'flowers-repeated', { column: 'seed_parent', details: { firstRow: first } });
    return [{ flowers, cells }];
  });
}
