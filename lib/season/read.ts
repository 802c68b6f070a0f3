/** Bytes of a file → records with their places: encoding, separator and line ends are settled here. */

import { type DecodedText, decodeText, isSpreadsheet } from './encoding.ts';
import { type HeaderMap, headersRecognised } from './header.ts';
import { linesOf, splitRecords } from './records.ts';

/** One record: `line` is the file's line where it starts, `row` what a spreadsheet shows. */
export interface Row {
  readonly line: number;
  readonly row: number;
  readonly cells: readonly string[];
}

/** A file as rows of cells, its blank rows left out. */
export interface Rows {
  readonly encoding: DecodedText['encoding'];
  readonly encodingGuessed: boolean;
  readonly delimiter: string;
  /** The first is the header, wherever in the file it stands; empty where the file has no record at all. */
  readonly rows: readonly Row[];
  /** Rows above the header. */
  readonly titles: number;
  /** The row in which a quotation mark is opened and never closed. */
  readonly openQuote: Row | null;
  readonly fault: 'file-empty' | 'file-too-large' | 'not-text' | 'spreadsheet-file' | null;
}

/** A larger file is not read, in bytes: some 300 000 flowers, far more than a lifetime's. */
export const MOST_BYTES = 20_000_000;

const DELIMITERS = [',', ';', '\t', '|'];
const HEADER_SOUGHT_IN = 30;
const SAMPLE_LENGTH = 100_000;

/** More than one control character in fifty is no text. */
function isBinary(text: string): boolean {
  const sample = text.slice(0, 4096);
  let controls = 0;
  for (let i = 0; i < sample.length; i++) {
    const code = sample.charCodeAt(i);
    if (code < 32 && code !== 9 && code !== 10 && code !== 13) controls++;
  }
  return controls * 50 > sample.length;
}

/** The separator that a leading `sep=;` line names, as some spreadsheets write it, and the text below that line. */
function separatorLine(text: string): { delimiter: string; below: string } | null {
  const line = /^"?sep=(.)"?(?:\r\n|\n|\r|$)/i.exec(text);
  return line && { delimiter: line[1], below: text.slice(line[0].length) };
}

interface HeaderRow {
  readonly index: number;
  readonly score: number;
  readonly width: number;
}

/** The record among the first ones that names the most columns; the first with any text where none names two. */
function headerRow(records: readonly (readonly string[])[], map: HeaderMap): HeaderRow {
  const first = Math.max(
    0,
    records.findIndex((cells) => cells.some((cell) => cell.trim() !== '')),
  );
  let best: HeaderRow = { index: first, score: 0, width: records[first]?.length ?? 0 };
  for (let index = first; index < records.length; index++) {
    const score = headersRecognised(records[index], map);
    if (score > Math.max(best.score, 1)) best = { index, score, width: records[index].length };
  }
  return best;
}

/** The separator under which the header names the most columns, then under which it has the most cells. */
function likelyDelimiter(text: string, map: HeaderMap): string {
  const sample = text.slice(0, SAMPLE_LENGTH);
  let best = { delimiter: ',', score: -1, width: 0 };
  for (const delimiter of DELIMITERS) {
    const header = headerRow(splitRecords(sample, delimiter, { limit: HEADER_SOUGHT_IN }).records, map);
    if (header.score > best.score || (header.score === best.score && header.width > best.width)) {
      best = { delimiter, ...header };
    }
  }
  return best.delimiter;
}

function isBlankRow(cells: readonly string[]): boolean {
  return cells.every((cell) => cell.trim() === '');
}

/** Records with their places, from a first line and row on. */
function placed(records: readonly (readonly string[])[], line: number, row: number): Row[] {
  const rows: Row[] = [];
  for (const cells of records) {
    rows.push({ line, row, cells });
    line += linesOf(cells);
    row += 1;
  }
  return rows;
}

/** The part of a text from one of its lines on (1 the first). */
function fromLine(text: string, line: number): string {
  const ends = /\r\n|\n|\r/g;
  for (let passed = 1; passed < line; passed++) if (ends.exec(text) === null) return '';
  return text.slice(line === 1 ? 0 : ends.lastIndex);
}

/** All records; after a quotation mark that is never closed, the lines are read as they stand. */
function allRows(text: string, delimiter: string, firstLine: number): { rows: Row[]; openQuote: Row | null } {
  const { records, quoteOpen } = splitRecords(text, delimiter);
  const rows = placed(records, firstLine, 1);
  if (!quoteOpen) return { rows, openQuote: null };
  const last = rows.at(-1);
  const line = last === undefined ? firstLine : last.line + linesOf(last.cells);
  const rest = splitRecords(fromLine(text, line - firstLine + 1), delimiter, { quotes: false });
  const unquoted = placed(rest.records, line, rows.length + 1);
  return { rows: [...rows, ...unquoted], openQuote: unquoted[0] ?? null };
}

/**
 * Reads a file's bytes as rows of cells. Title lines above the header and blank rows are passed over; every other
 * record is there, however many cells it has.
 *
 * @param map what the grower says that headers mean, which helps to find the header row
 */
export function readRows(bytes: Uint8Array, map: HeaderMap): Rows {
  const tooLarge = bytes.length > MOST_BYTES;
  const { text, encoding, guessed } = decodeText(tooLarge ? bytes.subarray(0, SAMPLE_LENGTH) : bytes);
  const nothing = {
    encoding,
    encodingGuessed: guessed,
    delimiter: ',',
    rows: [],
    titles: 0,
    openQuote: null,
  };
  if (isSpreadsheet(bytes)) return { ...nothing, fault: 'spreadsheet-file' };
  if (tooLarge) return { ...nothing, fault: 'file-too-large' };
  if (isBinary(text)) return { ...nothing, fault: 'not-text' };
  if (text.trim() === '') return { ...nothing, fault: 'file-empty' };
  const separator = separatorLine(text);
  const below = separator?.below ?? text;
  const delimiter = separator?.delimiter ?? likelyDelimiter(text, map);
  const { rows, openQuote } = allRows(below, delimiter, separator ? 2 : 1);
  const header = headerRow(
    rows.slice(0, HEADER_SOUGHT_IN).map(({ cells }) => cells),
    map,
  );
  const titles = rows.slice(0, header.index).filter(({ cells }) => !isBlankRow(cells)).length;
  const kept = rows.slice(header.index).filter(({ cells }) => !isBlankRow(cells));
  const fault = kept.length === 0 ? 'file-empty' : null;
  return { encoding, encodingGuessed: guessed, delimiter, rows: kept, titles, openQuote, fault };
}
