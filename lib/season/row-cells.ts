/** The cells of one row by our column names: each read as what it holds, each fault reported where it stands. */

import { type Reading, readNumber, readWord, tidyName } from './cell.ts';
import { asMeant } from './csv-text.ts';
import { readDate, threeNumbers } from './date-cell.ts';
import { type ProblemCode, type ProblemParts, problemAt } from './problems.ts';
import type { Row } from './read.ts';
import type { Place, Problem } from './season.ts';
import type { Sheet } from './sheet.ts';
import { foldWord, isBlank, likelySlip, STORAGES, type WordList, YES_NO } from './values.ts';

/** How far a number may go, and whether a fault in the cell leaves the row out. */
interface NumberRule {
  readonly highest: number;
  readonly whole?: boolean;
  readonly required?: boolean;
}

/** One row of a sheet, read cell by cell. What a cell does not say is null. */
export class RowCells {
  readonly place: Place;
  readonly sheet: Sheet;
  readonly #cells: readonly string[];
  readonly #reported = new Set<string>();
  #leftOut = false;

  constructor(sheet: Sheet, row: Row) {
    this.sheet = sheet;
    this.#cells = row.cells;
    this.place = { file: sheet.file, line: row.line, row: row.row };
    this.#checkShape(row);
  }

  /** Whether a fault leaves the row out. */
  get leftOut(): boolean {
    return this.#leftOut;
  }

  #checkShape({ line, cells }: Row): void {
    const { headers, openQuoteLine } = this.sheet;
    const width = headers.length;
    const surplus = cells.slice(width).find((cell) => cell.trim() !== '');
    if (line === openQuoteLine) this.report('error', 'quote-not-closed');
    else if (cells.length < width || surplus !== undefined) {
      this.report('error', 'row-ragged', {
        value: surplus ?? null,
        details: { cells: cells.length, expected: width },
      });
    } else if (cells.every((cell, index) => cell === headers[index])) this.report('error', 'header-repeated');
    else if (cells.some((cell) => cell.includes('\0'))) this.report('error', 'control-character');
  }

  /** Reports a fault of this row; an error leaves it out. */
  report(severity: Problem['severity'], code: ProblemCode, { column, ...parts }: ProblemParts = {}): void {
    const placed = column ? this.sheet.columns.get(column) : undefined;
    const value = parts.value ?? (column ? this.raw(column) : null);
    const details = { ...(column ? { name: column } : {}), ...parts.details };
    const record = this.raw(this.sheet.kind === 'vials' ? 'vial' : 'cross_id');
    const where = { column: placed?.header ?? column ?? null, value, details, record };
    this.sheet.problems.push(problemAt(this.place, severity, code, where));
    if (column && severity !== 'notice') this.#reported.add(column);
    if (severity === 'error') this.#leftOut = true;
  }

  /** Whether a fault, more than a notice, was found in any of these columns. */
  reported(...columns: readonly string[]): boolean {
    return columns.some((column) => this.#reported.has(column));
  }

  /** The cell as it stands in the file, without the space around it and a mark against formulas; blank where the file has no such column. */
  raw(column: string): string {
    const placed = this.sheet.columns.get(column);
    return placed === undefined ? '' : asMeant((this.#cells[placed.index] ?? '').trim());
  }

  /** The value of a reading; a fault is reported, as an error where the column is required. */
  #valueOf<T>(
    column: string,
    reading: Reading<T>,
    required: boolean,
    details: ProblemParts['details'] = {},
  ): T | null {
    if ('value' in reading) return reading.value;
    this.report(required ? 'error' : 'warning', reading.fault, { column, details });
    return null;
  }

  #blank(column: string, required: boolean): null {
    if (required) this.report('error', 'cell-blank', { column });
    return null;
  }

  text(column: string): string | null {
    const raw = this.raw(column);
    return raw === '' || raw === '?' ? null : raw;
  }

  /** A tag, vial, person or plant as it stands. */
  name(column: string, required = false): string | null {
    const raw = this.raw(column);
    if (raw === '' || raw === '?') return this.#blank(column, required);
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
    const raw = this.raw(column);
    if (isBlank(raw)) return this.#blank(column, required);
    const form = this.sheet.dateForms.get(column) ?? null;
    const reading = readDate(raw, form);
    const ordered = 'fault' in reading && typeof form === 'string' && threeNumbers(raw) !== null;
    return this.#valueOf(column, reading, required, ordered ? { order: form } : {});
  }

  number(column: string, { highest, whole = false, required = false }: NumberRule): number | null {
    const raw = this.raw(column);
    if (isBlank(raw)) return this.#blank(column, required);
    const reading = readNumber(raw, { highest, whole, column });
    if ('converted' in reading) this.#noticeOnce('number-converted', column, String(reading.value));
    return this.#valueOf(column, reading, required, { highest });
  }

  /** A word of a list; an unknown one leaves the row out, since it could be any of them. */
  word<T>(column: string, list: WordList<T>, required = false): T | null {
    const raw = this.raw(column);
    if (raw === '') return this.#blank(column, required);
    const slip = likelySlip(raw, list);
    const value = this.#valueOf(
      column,
      readWord(raw, list),
      true,
      slip === null ? {} : { suggestion: String(slip) },
    );
    if (value !== null && foldWord(raw) !== String(value))
      this.#noticeOnce('word-guessed', column, String(value));
    return value;
  }

  /** A storage method: one of the four known words, or the grower's own as it stands. */
  storage(required: boolean): string | null {
    const raw = this.raw('storage');
    if (raw === '' || raw === '?') return this.#blank('storage', required);
    const known = STORAGES.get(foldWord(raw));
    if (known !== undefined) {
      if (foldWord(raw) !== known) this.#noticeOnce('word-guessed', 'storage', known);
      return known;
    }
    const slip = likelySlip(raw, STORAGES);
    if (slip !== null)
      this.report('warning', 'storage-slip', { column: 'storage', details: { suggestion: slip } });
    return tidyName(raw);
  }

  yesNo(column: string): boolean | null {
    const raw = this.raw(column);
    return isBlank(raw) ? null : this.#valueOf(column, readWord(raw, YES_NO), false);
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
