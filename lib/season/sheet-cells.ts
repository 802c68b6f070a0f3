/** The XML of one sheet of a workbook → its rows of cells, as text. */

import { type DateSystem, serialDate } from './date-cell.ts';
import type { NumberShown } from './number-formats.ts';
import { walkXml } from './xml.ts';
import { ZipFault } from './zip.ts';

/** What the cells of a sheet refer to. */
export interface SheetContext {
  readonly texts: readonly string[];
  readonly styles: readonly NumberShown[];
  readonly dateSystem: DateSystem;
}

/** A row as the sheet counts them, and its cells from the first column on. */
export interface SheetRow {
  readonly row: number;
  readonly cells: readonly string[];
}

/** What a sheet holds: its rows that have any cell, and how it shows them. */
export interface SheetCells {
  readonly rows: readonly SheetRow[];
  /** How many of these rows are hidden or filtered out. */
  readonly hiddenRows: number;
  /** The ranges of cells that are joined over several rows and filled, as the sheet writes them. */
  readonly merged: readonly string[];
}

/** Columns and rows of a sheet at most (ECMA-376 as programs keep it); and cells, blank ones between others too. */
const MOST_COLUMNS = 16_384;
const MOST_ROWS = 1_048_576;
export const MOST_CELLS = 30_000_000;
/** Days of the 1900 system before its 29 February that never was are a day off, and no day of a season. */
const FIRST_DAY = 61;

/** The column of a cell's address, from 0: 27 of AB12; -1 where it is none. */
export function columnOf(address: string): number {
  const letters = /^[A-Za-z]{1,3}/.exec(address)?.[0].toUpperCase() ?? '';
  let column = 0;
  for (const letter of letters) column = column * 26 + letter.charCodeAt(0) - 64;
  return column > MOST_COLUMNS ? -1 : column - 1;
}

/** A number as a sheet shows it: no more digits than a spreadsheet keeps, and the days of its date styles as dates. */
function numberText(raw: string, shown: NumberShown, system: DateSystem): string {
  const number = Number(raw);
  if (!Number.isFinite(number) || raw.trim() === '') return raw;
  if (shown === 'number' || number < FIRST_DAY || number > 2_958_465)
    return String(Number(number.toPrecision(15)));
  const date = serialDate(number, system);
  return shown === 'month' ? date.slice(0, 7) : date;
}

/** `_x000D_` and the like stand for characters that XML cannot hold (ECMA-376 part 1, 22.4.2.4). */
export function unescaped(text: string): string {
  return text.includes('_x')
    ? text.replace(/_x([0-9A-Fa-f]{4})_/g, (_, code: string) =>
        String.fromCharCode(Number.parseInt(code, 16)),
      )
    : text;
}

/** Reads one sheet, cell by cell. */
class SheetWalk {
  readonly rows: { row: number; cells: string[] }[] = [];
  readonly merges: string[] = [];
  hiddenRows = 0;
  #hidden = false;
  readonly #context: SheetContext;
  #row = 0;
  #cells: string[] = [];
  #column = -1;
  #type = 'n';
  #style: NumberShown = 'number';
  #text = '';
  #reading = false;
  #phonetic = false;
  #count = 0;

  constructor(context: SheetContext) {
    this.#context = context;
  }

  open(name: string, attribute: (name: string) => string | undefined): void {
    if (name === 'row') {
      this.#row = Number(attribute('r') ?? this.#row + 1);
      this.#hidden = /^(?:1|true)$/.test(attribute('hidden') ?? '');
      this.#cells = [];
      this.#column = -1;
      if (!(this.#row >= 1 && this.#row <= MOST_ROWS)) throw new ZipFault('broken');
    } else if (name === 'c') {
      const address = attribute('r');
      this.#column = address === undefined ? this.#column + 1 : columnOf(address);
      if (this.#column < 0 || this.#column >= MOST_COLUMNS) throw new ZipFault('broken');
      this.#type = attribute('t') ?? 'n';
      this.#style = this.#context.styles[Number(attribute('s') ?? 0)] ?? 'number';
      this.#text = '';
    } else if (name === 'mergeCell') this.merges.push(attribute('ref') ?? '');
    else if (name === 'rPh') this.#phonetic = true;
    else if (name === 'v' || name === 't') this.#reading = !this.#phonetic;
  }

  text(text: string): void {
    if (this.#reading) this.#text += text;
  }

  close(name: string): void {
    if (name === 'v' || name === 't') this.#reading = false;
    else if (name === 'rPh') this.#phonetic = false;
    else if (name === 'c') this.#keep(this.#value());
    else if (name === 'row' && this.#cells.length > 0) {
      this.rows.push({ row: this.#row, cells: this.#cells });
      if (this.#hidden) this.hiddenRows += 1;
    }
  }

  #keep(value: string): void {
    if (value === '') return;
    this.#count += this.#column + 1 - this.#cells.length;
    if (this.#count > MOST_CELLS) throw new ZipFault('too-large');
    while (this.#cells.length < this.#column) this.#cells.push('');
    this.#cells[this.#column] = value;
  }

  #value(): string {
    const { texts, dateSystem } = this.#context;
    if (this.#type === 's') return texts[Number(this.#text)] ?? '';
    if (this.#type === 'b') return this.#text === '' ? '' : this.#text === '1' ? 'true' : 'false';
    if (this.#type === 'd') return this.#text;
    return this.#type === 'n' ? numberText(this.#text, this.#style, dateSystem) : unescaped(this.#text);
  }
}

/** A range of cells in one column: its column from 0, its first and last row. */
interface Range {
  readonly column: number;
  readonly first: number;
  readonly last: number;
}

const ONE_COLUMN = /^\$?([A-Z]{1,3})\$?(\d+):\$?([A-Z]{1,3})\$?(\d+)$/i;

/** The range of an address such as C6:C8; null where it spans several columns or is none. */
function oneColumn(ref: string): Range | null {
  const [, from = '', first, to = '', last] = ONE_COLUMN.exec(ref) ?? [];
  const column = columnOf(from);
  if (column < 0 || from.toUpperCase() !== to.toUpperCase()) return null;
  return { column, first: Number(first), last: Math.min(Number(last), MOST_ROWS) };
}

/**
 * Fills the cells of one column that are joined over several rows: a sheet keeps the text in the first and shows it in all.
 * Rows that have no cell of their own stay blank.
 *
 * @returns whether any cell was filled
 */
function filledDown({ column, first, last }: Range, byRow: ReadonlyMap<number, string[]>): boolean {
  const text = byRow.get(first)?.[column] ?? '';
  if (text === '') return false;
  let filled = false;
  for (let row = first + 1; row <= last; row++) {
    const cells = byRow.get(row);
    if (cells === undefined || (cells[column] ?? '') !== '') continue;
    while (cells.length < column) cells.push('');
    cells[column] = text;
    filled = true;
  }
  return filled;
}

/** Reads one sheet. Formulas give the value that was last worked out, faults their own sign (#REF!). */
export function sheetCells(xml: string, context: SheetContext): SheetCells {
  const walk = new SheetWalk(context);
  walkXml(xml, {
    open: (name, attribute) => walk.open(name, attribute),
    close: (name) => walk.close(name),
    text: (text) => walk.text(text),
  });
  const { rows, merges, hiddenRows } = walk;
  if (merges.length === 0) return { rows, hiddenRows, merged: [] };
  const byRow = new Map(rows.map(({ row, cells }) => [row, cells]));
  let steps = 0;
  const merged = merges.filter((ref) => {
    const range = oneColumn(ref);
    steps += range === null ? 0 : range.last - range.first;
    if (steps > MOST_CELLS) throw new ZipFault('too-large');
    return range !== null && filledDown(range, byRow);
  });
  return { rows, hiddenRows, merged };
}
