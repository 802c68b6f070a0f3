/** Bytes of a file → records with their places: encoding, separator and line ends are settled here. */

import { decodeText, isSpreadsheet } from './encoding.ts';
import type { HeaderMap } from './header.ts';
import { HEADER_SOUGHT_IN, headerRow } from './header-row.ts';
import { otherFormat } from './other-format.ts';
import { ownFile } from './own-files.ts';
import { linesOf, type Records, splitRecords } from './records.ts';
import { isBlankRow, type Row, type Rows } from './rows.ts';
import { workbookRows } from './workbook-rows.ts';

/** A larger file is not read, in bytes: some 1,700,000 flowers, which fit into the 2 GB that a small computer gives to Node. */
export const MOST_BYTES = 100_000_000;

const DELIMITERS = [',', ';', '\t', '|'];
const SAMPLE_LENGTH = 100_000;
/** Stands in no table, so that each line is one cell. */
const UNIT_SEPARATOR = '\u001f';

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

/** The part of a text from one of its lines on (1 the first). */
function fromLine(text: string, line: number): string {
  const ends = /\r\n|\n|\r/g;
  for (let passed = 1; passed < line; passed++) if (ends.exec(text) === null) return '';
  return text.slice(line === 1 ? 0 : ends.lastIndex);
}

/** Records with their places, from a first line and row on. */
function placed({ records, lines }: Records, firstLine: number, firstRow: number): Row[] {
  return records.map((cells, i) => ({ line: firstLine + lines[i], row: firstRow + i, cells }));
}

/** All records; after a quotation mark that is never closed, the lines are read as they stand. */
function allRows(text: string, delimiter: string, firstLine: number): { rows: Row[]; openQuote: Row | null } {
  const read = splitRecords(text, delimiter);
  const rows = placed(read, firstLine, 1);
  if (!read.quoteOpen) return { rows, openQuote: null };
  const last = rows.at(-1);
  const line = last === undefined ? firstLine : last.line + linesOf(last.cells);
  const rest = splitRecords(fromLine(text, line - firstLine + 1), delimiter, { quotes: false });
  const unquoted = placed(rest, line, rows.length + 1);
  return { rows: [...rows, ...unquoted], openQuote: unquoted[0] ?? null };
}

/** The text without quotation marks around whole lines, as a sheet of one column saves them; null where it has none such. */
function withoutLineQuotes(text: string, map: HeaderMap): string | null {
  if (!/^\ufeff?"(?:[^"\r\n]|"")*"[ \t]*[\r\n]/.test(text)) return null;
  const { records, quoteOpen } = splitRecords(text, UNIT_SEPARATOR);
  if (quoteOpen || records.some((cells) => cells.some((cell) => /[\r\n]/.test(cell)))) return null;
  const inner = records.map((cells) => cells[0] ?? '').join('\n');
  const score = (sample: string): number => {
    const delimiter = likelyDelimiter(sample, map);
    return headerRow(splitRecords(sample, delimiter, { limit: HEADER_SOUGHT_IN }).records, map).score;
  };
  return score(inner.slice(0, SAMPLE_LENGTH)) > Math.max(1, score(text.slice(0, SAMPLE_LENGTH)))
    ? inner
    : null;
}

/** A text as rows of cells; title lines above the header and blank rows are passed over. */
function textRows(
  whole: string,
  map: HeaderMap,
): Pick<Rows, 'delimiter' | 'rows' | 'titles' | 'openQuote' | 'linesQuoted'> {
  const inner = withoutLineQuotes(whole, map);
  const text = inner ?? whole;
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
  return { delimiter, rows: kept, titles, openQuote, linesQuoted: inner !== null };
}

/**
 * Reads a file's bytes as rows of cells: one list for a text, one for each sheet of a workbook that is understood.
 * Title lines above the header and blank rows are passed over; every other record is there, however many cells it has.
 *
 * @param map what the grower says that headers mean, which helps to find the header row
 * @returns at least one list; with a fault and without rows where nothing can be read
 */
export function readRows(bytes: Uint8Array, map: HeaderMap): Rows[] {
  const tooLarge = bytes.length > MOST_BYTES;
  if (!tooLarge && isSpreadsheet(bytes)) return workbookRows(bytes, map);
  const format = otherFormat(bytes);
  const { text, encoding, guessed } = decodeText(tooLarge ? bytes.subarray(0, SAMPLE_LENGTH) : bytes);
  const holdsNul = text.includes('\0');
  const base = { encoding, encodingGuessed: guessed, holdsNul, sheet: null, passedOver: [] };
  const nothing = { ...base, delimiter: ',', rows: [], titles: 0, openQuote: null };
  if (tooLarge) return [{ ...nothing, fault: 'file-too-large' }];
  const own = ownFile(text);
  if (own !== null) return [{ ...nothing, fault: 'own-file', format: own }];
  if (format !== null) return [{ ...nothing, fault: 'other-format', format }];
  if (isBinary(text)) return [{ ...nothing, fault: 'not-text' }];
  if (text.trim() === '') return [{ ...nothing, fault: 'file-empty' }];
  const read = textRows(text, map);
  return [{ ...base, ...read, fault: read.rows.length === 0 ? 'file-empty' : null }];
}
