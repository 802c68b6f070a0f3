/** The cells of one row by our column names: each read as what it holds, each fault reported where it stands. */

import { type NumberRule as CellNumberRule, tidyName } from './cell.ts';
import {
  type CellReading,
  dateReading,
  numberReading,
  storageReading,
  wordReading,
  yesNoReading,
} from './cell-readings.ts';
import { asMeant } from './csv-text.ts';
import { type ProblemCode, type ProblemParts, problemAt } from './problems.ts';
import { type Row, trimmed } from './rows.ts';
import type { Place, Problem } from './season.ts';
import type { Sheet } from './sheet.ts';
import { spareRow } from './spare-rows.ts';
import { foldWord, isErrorValue, type WordList } from './values.ts';

/** How far a number may go, and whether a fault in the cell leaves the row out. */
interface NumberRule extends CellNumberRule {
  readonly required?: boolean;
}

const NO_DETAILS = {};

/** One row of a sheet, read cell by cell. What a cell does not say is null. */
export class RowCells {
  readonly sheet: Sheet;
  readonly #row: Row;
  #reported: Set<string> | null = null;
  #leftOut = false;

  constructor(sheet: Sheet, row: Row) {
    this.sheet = sheet;
    this.#row = row;
    this.#checkShape(row);
  }

  get place(): Place {
    return { file: this.sheet.file, line: this.#row.line, row: this.#row.row };
  }

  /** Whether a fault leaves the row out. */
  get leftOut(): boolean {
    return this.#leftOut;
  }

  #checkShape(row: Row): void {
    const { line, cells } = row;
    const { headers, openQuoteLine } = this.sheet;
    const width = headers.length;
    if (line === openQuoteLine) this.report('error', 'quote-not-closed');
    // Most rows have a day, and are passed at the cost of a look at it.
    else if (trimmed(cells[this.sheet.keyIndex] ?? '') === '' && this.#isSpare(row)) return;
    else if (cells.length !== width && this.#isRagged(cells, width)) return;
    else if (cells[0] === headers[0] && cells.every((cell, index) => cell === headers[index]))
      this.report('error', 'header-repeated');
    else if (this.sheet.holdsNul && cells.some((cell) => cell.includes('\0')))
      this.report('error', 'control-character');
  }

  /** Whether the row is no record, such as a total; then it is reported, once. */
  #isSpare(row: Row): boolean {
    const { kind, columns, rows } = this.sheet;
    if (kind === 'unknown') return false;
    const spare = spareRow(row.cells, kind, columns, row === rows.at(-1));
    if (spare === null) return false;
    const { code, column, value } = spare;
    this.report('error', code, { value, ...(column === null ? {} : { column }) });
    return true;
  }

  /** Whether needed cells are missing, or any stand beyond the headers; then it is reported. Blank ones at the end may be. */
  #isRagged(cells: readonly string[], width: number): boolean {
    const surplus = cells.slice(width).find((cell) => cell.trim() !== '');
    const { neededWidth, headers } = this.sheet;
    if (cells.length >= neededWidth && surplus === undefined) {
      const missing = headers.slice(cells.length).find((header) => header.trim() !== '');
      if (missing !== undefined) this.#noticeOnce('row-short', '', missing.trim());
      return false;
    }
    const details = { cells: cells.length, expected: width };
    this.report('error', 'row-ragged', { value: surplus ?? null, details });
    return true;
  }

  /** Reports a fault of this row; an error leaves it out. */
  report(severity: Problem['severity'], code: ProblemCode, { column, ...parts }: ProblemParts = {}): void {
    const placed = column ? this.sheet.columns.get(column) : undefined;
    const value = parts.value ?? (column ? this.raw(column) : null);
    const details = { ...(column ? { name: column } : {}), ...parts.details };
    const record = this.raw(this.sheet.kind === 'vials' ? 'vial' : 'cross_id');
    const where = { column: placed?.header ?? (column || null), value, details, record };
    this.sheet.problems.push(problemAt(this.place, severity, code, where));
    if (column && severity !== 'notice') {
      this.#reported ??= new Set();
      this.#reported.add(column);
    }
    if (severity === 'error') this.#leftOut = true;
  }

  /** Whether a fault, more than a notice, was found in any of these columns. */
  reported(...columns: readonly string[]): boolean {
    const found = this.#reported;
    return found !== null && columns.some((column) => found.has(column));
  }

  /** The cell as it stands in the file, without the space around it and a mark against formulas; blank where the file has no such column. */
  raw(column: string): string {
    const placed = this.sheet.columns.get(column);
    return placed === undefined ? '' : this.#textAt(placed.index);
  }

  #textAt(index: number): string {
    return asMeant(trimmed(this.#row.cells[index] ?? ''));
  }

  /** What a cell was read as, null where it is empty or its column absent: each distinct text of a column is read once. */
  #reading(column: string, read: (raw: string) => CellReading): CellReading | null {
    const readings = this.sheet.readings.get(column);
    if (readings === undefined) return null;
    const raw = this.#textAt(readings.index);
    if (raw === '') return null;
    const met = readings.known.get(raw);
    if (met !== undefined) return met;
    const kept: CellReading = isErrorValue(raw) ? { value: null, fault: 'cell-error' } : read(raw);
    readings.known.set(raw, kept);
    return kept;
  }

  /**
   * The value of a reading; its fault is reported in every row, a guess at its first appearance.
   *
   * @param severe whether a cell that gives no value leaves the row out
   */
  #valueOf(column: string, reading: CellReading, required: boolean, severe = required): CellReading['value'] {
    const { value, blank, guess, fault, details = NO_DETAILS } = reading;
    if (blank) return this.#blank(column, required);
    if (guess !== undefined) this.#noticeOnce(guess, column, String(value));
    if (fault !== undefined)
      this.report(severe && value === null ? 'error' : 'warning', fault, { column, details });
    return value;
  }

  #blank(column: string, required: boolean): null {
    if (!required) return null;
    // Of a flower it may be meant: a control has no pollen.
    const details = this.sheet.kind === 'crosses' ? { kind: 'crosses' } : {};
    this.report('error', 'cell-blank', { column, details });
    return null;
  }

  /** Whether a cell holds a spreadsheet's own error, which is then reported. */
  #isError(raw: string, column: string, required: boolean): boolean {
    if (!isErrorValue(raw)) return false;
    this.report(required ? 'error' : 'warning', 'cell-error', { column });
    return true;
  }

  text(column: string): string | null {
    const raw = this.raw(column);
    return raw === '' || raw === '?' || this.#isError(raw, column, false) ? null : raw;
  }

  /** A tag, vial, person or plant as it stands. */
  name(column: string, required = false): string | null {
    const raw = this.raw(column);
    if (raw === '' || raw === '?') return this.#blank(column, required);
    if (this.#isError(raw, column, required)) return null;
    const tidy = tidyName(raw);
    if (tidy !== raw) this.#noticeOnce('name-tidied', column, tidy);
    return tidy;
  }

  /** A plant, under the name that the grower keeps it. */
  plant(column: string, required = false): string | null {
    const readings = this.sheet.readings.get(column);
    const raw = readings === undefined ? '' : this.#textAt(readings.index);
    const met = raw === '' ? undefined : readings!.known.get(raw);
    if (met !== undefined) return met.value as string;
    const name = this.name(column, required);
    if (name === null) return null;
    const value = this.sheet.same.keptFor(name);
    readings!.known.set(raw, { value });
    return value;
  }

  date(column: string, required = false): string | null {
    const reading = this.#reading(column, (raw) =>
      dateReading(raw, this.sheet.dateForms.get(column) ?? null),
    );
    if (reading === null) return this.#blank(column, required);
    return this.#valueOf(column, reading, required) as string | null;
  }

  number(column: string, rule: NumberRule): number | null {
    const { required = false } = rule;
    const reading = this.#reading(column, (raw) => numberReading(raw, this.#ruleOf(column, rule)));
    if (reading === null) return this.#blank(column, required);
    return this.#valueOf(column, reading, required) as number | null;
  }

  #ruleOf(column: string, rule: NumberRule): NumberRule {
    const mark = this.sheet.decimalMarks.get(column);
    return { ...rule, column, ...(mark === undefined ? {} : { mark }) };
  }

  /** A word of a list; an unknown one leaves the row out, since it could be any of them. */
  word<T extends string | boolean>(column: string, list: WordList<T>, required = false): T | null {
    const reading = this.#reading(column, (raw) => wordReading(raw, list));
    if (reading === null) return this.#blank(column, required);
    return this.#valueOf(column, reading, required, true) as T | null;
  }

  /** A storage method: one of the four known words, or the grower's own as it stands. */
  storage(required: boolean): string | null {
    const reading = this.#reading('storage', (raw) => storageReading(raw, this.sheet.storage));
    if (reading === null) return this.#blank('storage', required);
    return this.#valueOf('storage', reading, required) as string | null;
  }

  yesNo(column: string): boolean | null {
    const reading = this.#reading(column, yesNoReading);
    return reading === null ? null : (this.#valueOf(column, reading, false) as boolean | null);
  }

  /** A guess about a cell is told at its first appearance in the file. */
  #noticeOnce(code: ProblemCode, column: string, meant: string): void {
    // "Yes" and "yes" are one word; a name is told as it stands.
    const word =
      code === 'word-guessed' || code === 'storage-own' ? foldWord(this.raw(column)) : this.raw(column);
    const key = `${code}\n${column}\n${word}`;
    if (this.sheet.guessedWords.has(key)) return;
    this.sheet.guessedWords.add(key);
    this.report('notice', code, { column, details: { meant } });
  }
}
