/** A workbook → the rows of those of its sheets that are understood. */

import type { HeaderMap } from './header.ts';
import { HEADER_SOUGHT_IN, headerRow } from './header-row.ts';
import { isBlankRow, type Row, type Rows } from './rows.ts';
import { readWorkbook, type WorkbookSheet } from './workbook.ts';

/** A sheet with where its header stands among its filled rows. */
interface PlacedSheet extends Pick<WorkbookSheet, 'name' | 'hidden' | 'hiddenRows' | 'merged'> {
  readonly rows: readonly Row[];
  readonly headerAt: number;
  readonly score: number;
}

const NOTHING = {
  encoding: 'xlsx',
  encodingGuessed: false,
  delimiter: '',
  titles: 0,
  openQuote: null,
  holdsNul: true,
} as const;

/** A sheet's filled rows, all as wide as the widest: a sheet has cells that are blank, never cells that are missing. */
function placedSheet({ rows: sheetRows, ...sheet }: WorkbookSheet, map: HeaderMap): PlacedSheet {
  const filled = sheetRows.filter(({ cells }) => !isBlankRow(cells));
  const { index, score } = headerRow(
    filled.slice(0, HEADER_SOUGHT_IN).map(({ cells }) => cells),
    map,
  );
  const width = filled.slice(index).reduce((most, { cells }) => Math.max(most, cells.length), 0);
  const rows = filled.map(({ row, cells }) => ({
    line: row,
    row,
    cells: cells.length < width ? [...cells, ...Array<string>(width - cells.length).fill('')] : cells,
  }));
  return { ...sheet, rows, headerAt: index, score };
}

/**
 * The sheets of a workbook whose headers are understood; the first that holds anything where none is.
 *
 * @returns at least one list of rows; with a fault where the workbook cannot be read
 */
export function workbookRows(bytes: Uint8Array, map: HeaderMap): Rows[] {
  const book = readWorkbook(bytes);
  if ('fault' in book) return [{ ...NOTHING, rows: [], sheet: null, passedOver: [], ...book }];
  const filled = book.sheets.map((sheet) => placedSheet(sheet, map)).filter(({ rows }) => rows.length > 0);
  const understood = filled.filter(({ score }) => score > 1);
  // What a grower has hidden is an older copy or a help for formulas; alone it may be meant.
  const shown = understood.filter(({ hidden }) => !hidden);
  const read = shown.length > 0 ? shown : understood.length > 0 ? understood : filled.slice(0, 1);
  if (read.length === 0) return [{ ...NOTHING, rows: [], sheet: null, passedOver: [], fault: 'file-empty' }];
  const passedOver = filled.filter((sheet) => !read.includes(sheet)).map(({ name }) => name);
  return read.map(({ name, rows, headerAt, hiddenRows, merged }, index) => ({
    ...NOTHING,
    dateSystem: book.dateSystem,
    hiddenRows,
    merged,
    rows: rows.slice(headerAt),
    titles: headerAt,
    sheet: name,
    passedOver: index === 0 ? passedOver : [],
    fault: null,
  }));
}
