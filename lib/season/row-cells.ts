/** The cells of one row by our column names: each read as what it holds, each fault reported where it stands. */

import { readNumber, readWord, tidyName } from './cell.ts';
import { asMeant } from './csv-text.ts';
import { readDate, threeNumbers } from './date-cell.ts';
import { type ProblemCode, type ProblemParts, problemAt } from './problems.ts';
import { type Row, trimmed } from './rows.ts';
import type { Place, Problem } from './season.ts';
import type { CellReading, Sheet } from './sheet.ts';
import { foldWord, isBlank, isErrorValue, likelySlip, STORAGES, type WordList, YES_NO } from './values.ts';

/** How far a number may go, and whether a fault in the cell leaves the row out. */
interface NumberRule {
  readonly highest: number;
  readonly whole?: boolean;
  readonly required?: boolean;
}

const BLANK: CellReading = { value: null, blank: true };

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

  #checkShape({ line, cells }: Row): void {
    const { headers, openQuoteLine } = this.sheet;
    const width = headers.length;
    if (line === openQuoteLine) this.report('error', 'quote-not-closed');
    else if (cells.length !== width && this.#isRagged(cells, width)) return;
    else if (cells[0] === headers[0] && cells.every((cell, index) => cell === headers[index]))
      this.report('error', 'header-repeated');
    else if (this.sheet.holdsNul && cells.some((cell) => cell.includes('\0')))
      this.report('error', 'control-character');
  }

  /** Whether cells are missing, or stand beyond the headers; then it is reported. */
  #isRagged(cells: readonly string[], width: number): boolean {
    const surplus = cells.slice(width).find((cell) => cell.trim() !== '');
    if (cells.length >= width && surplus === undefined) return false;
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
    const where = { column: placed?.header ?? column ?? null, value, details, record };
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
    return placed === undefined ? '' : asMeant(trimmed(this.#row.cells[placed.index] ?? ''));
  }

  /**
   * What a cell was read as. Each distinct text of a column is read once; its fault is reported in every row, a guess at
   * its first appearance.
   *
   * @param severe whether a cell that gives no value leaves the row out
   */
  #read(
    column: string,
    required: boolean,
    read: (raw: string) => CellReading,
    severe = required,
  ): CellReading['value'] {
    const raw = this.raw(column);
    if (raw === '') return this.#blank(column, required);
    const known = this.sheet.readings.get(column)!;
    let reading = known.get(raw);
    if (reading === undefined) {
      reading = isErrorValue(raw) ? { value: null, fault: 'cell-error' } : read(raw);
      known.set(raw, reading);
    }
    if (reading.blank) return this.#blank(column, required);
    if (reading.guess !== undefined) this.#noticeOnce(reading.guess, column, String(reading.value));
    if (reading.fault !== undefined) {
      const { fault, details = {} } = reading;
      this.report(severe && reading.value === null ? 'error' : 'warning', fault, { column, details });
    }
    return reading.value;
  }

  #blank(column: string, required: boolean): null {
    if (required) this.report('error', 'cell-blank', { column });
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
    const name = this.name(column, required);
    return name === null ? null : this.sheet.same.keptFor(name);
  }

  date(column: string, required = false): string | null {
    return this.#read(column, required, (raw) => {
      if (isBlank(raw)) return BLANK;
      const form = this.sheet.dateForms.get(column) ?? null;
      const reading = readDate(raw, form);
      if ('value' in reading) return reading;
      const ordered = typeof form === 'string' && threeNumbers(raw) !== null;
      return { value: null, fault: reading.fault, details: ordered ? { order: form } : {} };
    }) as string | null;
  }

  number(column: string, { highest, whole = false, required = false }: NumberRule): number | null {
    return this.#read(column, required, (raw) => {
      if (isBlank(raw)) return BLANK;
      const reading = readNumber(raw, { highest, whole, column });
      if ('fault' in reading) return { value: null, fault: reading.fault, details: { highest } };
      return reading.converted ? { value: reading.value, guess: 'number-converted' } : reading;
    }) as number | null;
  }

  /** A word of a list; an unknown one leaves the row out, since it could be any of them. */
  word<T extends string | boolean>(column: string, list: WordList<T>, required = false): T | null {
    return this.#read(
      column,
      required,
      (raw) => {
        const reading = readWord(raw, list);
        if ('value' in reading) {
          return foldWord(raw) === String(reading.value) ? reading : { ...reading, guess: 'word-guessed' };
        }
        const slip = likelySlip(raw, list);
        return {
          value: null,
          fault: reading.fault,
          details: slip === null ? {} : { suggestion: String(slip) },
        };
      },
      true,
    ) as T | null;
  }

  /** A storage method: one of the four known words, or the grower's own as it stands. */
  storage(required: boolean): string | null {
    return this.#read('storage', required, (raw) => {
      if (raw === '?') return BLANK;
      const known = STORAGES.get(foldWord(raw));
      if (known !== undefined)
        return foldWord(raw) === known ? { value: known } : { value: known, guess: 'word-guessed' };
      const slip = likelySlip(raw, STORAGES);
      const value = tidyName(raw);
      return slip === null ? { value } : { value, fault: 'storage-slip', details: { suggestion: slip } };
    }) as string | null;
  }

  yesNo(column: string): boolean | null {
    return this.#read(column, false, (raw) => {
      if (isBlank(raw)) return BLANK;
      const reading = readWord(raw, YES_NO);
      return 'value' in reading ? reading : { value: null, fault: 'word-not-understood' };
    }) as boolean | null;
  }

  /** A guess about a cell is told at its first appearance in the file. */
  #noticeOnce(code: ProblemCode, column: string, meant: string): void {
    // "Yes" and "yes" are one word; a name is told as it stands.
    const word = code === 'word-guessed' ? foldWord(this.raw(column)) : this.raw(column);
    const key = `${code}\n${column}\n${word}`;
    if (this.sheet.guessedWords.has(key)) return;
    this.sheet.guessedWords.add(key);
    this.report('notice', code, { column, details: { meant } });
  }
}
