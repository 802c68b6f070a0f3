/** Text of a file → records of cells; the only file that knows csv-parse. */

import { CsvError, parse } from 'csv-parse/sync';
import { plainRecords } from './plain-records.ts';

/** The records of a text as RFC 4180 reads them, and whether a quotation mark was still open at its end. */
export interface Records {
  readonly records: readonly (readonly string[])[];
  /** How many lines stand above each record. */
  readonly lines: ArrayLike<number>;
  readonly quoteOpen: boolean;
}

interface RecordOptions {
  /** Stop after this many records. */
  readonly limit?: number;
  /** False reads quotation marks as ordinary characters. */
  readonly quotes?: boolean;
}

const LOOKED_AT = 20_000;
const LINE_END = /\r\n|\n|\r/g;

/** How many lines of the file a record fills: one, and one more for each line end inside its cells. */
export function linesOf(record: readonly string[]): number {
  let lines = 1;
  for (const cell of record) {
    if (cell.includes('\n') || cell.includes('\r')) lines += cell.match(LINE_END)!.length;
  }
  return lines;
}

/** As `splitRecords`, by csv-parse: it reads anything, slowly. */
export function anyRecords(
  text: string,
  delimiter: string,
  { limit, quotes = true }: RecordOptions,
  spaced = false,
): Records {
  const records: string[][] = [];
  const lines: number[] = [];
  let line = 0;
  try {
    parse(text, {
      delimiter,
      // Guessing would take the first line's end for all of them.
      record_delimiter: ['\r\n', '\n', '\r'],
      bom: true,
      quote: quotes ? '"' : null,
      relax_quotes: true,
      relax_column_count: true,
      ltrim: spaced,
      ...(limit === undefined ? {} : { to: limit }),
      on_record: (record: string[]) => {
        records.push(record);
        lines.push(line);
        line += linesOf(record);
        return null;
      },
    });
    return { records, lines, quoteOpen: false };
  } catch (error) {
    // Everything else csv-parse objects to is relaxed above.
    if (error instanceof CsvError && error.code === 'CSV_QUOTE_NOT_CLOSED')
      return { records, lines, quoteOpen: true };
    throw error;
  }
}

/** Quoted cells after a space, `a, "b, c"`, are seen in the first letters of a text; RFC 4180 knows none. */
function hasSpacedQuotes(text: string, delimiter: string): boolean {
  const sample = text.slice(0, LOOKED_AT);
  for (let at = sample.indexOf(' "'); at >= 0; at = sample.indexOf(' "', at + 1)) {
    let before = at;
    while (before >= 0 && sample[before] === ' ') before--;
    if (sample[before] === delimiter) return true;
  }
  return false;
}

/**
 * Splits a text into records: any mixture of CR, LF and CRLF ends one, a quoted cell may hold line ends, a stray
 * quotation mark is kept as it stands, and records may differ in length. An empty line is a record of one empty cell.
 */
export function splitRecords(text: string, delimiter: string, options: RecordOptions = {}): Records {
  const { limit, quotes = true } = options;
  const spaced = quotes && hasSpacedQuotes(text, delimiter);
  const plain = quotes && !spaced && delimiter.length === 1 ? plainRecords(text, delimiter, limit) : null;
  return plain === null ? anyRecords(text, delimiter, options, spaced) : { ...plain, quoteOpen: false };
}
