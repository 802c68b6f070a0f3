/** One file laid out: its rows, where our columns stand in it, how its dates are written, and what was found on the way. */

import type { CellReading, StorageMap } from './cell-readings.ts';
import { COLUMNS, foldHeader } from './columns.ts';
import type { DateForm, DateSystem } from './date-cell.ts';
import { dateFormsOf } from './date-columns.ts';
import { type DecimalMark, decimalMarksOf } from './decimal-marks.ts';
import { type Header, type HeaderMap, type PlacedColumn, understandHeader } from './header.ts';
import { meaningsByValues } from './header-by-values.ts';
import { reportHeader } from './header-report.ts';
import { otherLetters } from './other-letters.ts';
import { type ProblemParts, problemAt, type Report } from './problems.ts';
import { MOST_BYTES, readRows } from './read.ts';
import type { FileFault, Row, Rows } from './rows.ts';
import { SamePlants } from './same-plants.ts';
import type { DateOrder, FileKind, Place, Problem } from './season.ts';
import { sha256 } from './sha256.ts';
import { MOST_CELLS } from './sheet-cells.ts';
import { KEY_COLUMN } from './spare-rows.ts';
import { MOST_UNZIPPED_BYTES } from './zip.ts';

/** A file to be read: its name as it is to be printed, and its bytes. */
export interface SeasonSource {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** The SHA-256 digest of the bytes in hexadecimal, where the caller has it: Node's own is faster. Worked out where left out. */
  readonly sha256?: string;
  /** What the file is said to be; told by its columns where it is left out. */
  readonly kind?: FileKind;
}

/** What helps to lay out a file. */
export interface SheetOptions {
  readonly dateOrder?: DateOrder;
  /** From which day a spreadsheet's own numbers for days count; 1900 where left out. */
  readonly dateSystem?: DateSystem;
  /** From folded headers to our columns. */
  readonly map: HeaderMap;
  /** Names of one plant, as the grower says; none where left out. */
  readonly same?: SamePlants;
  /** What the grower says that words of storage mean; nothing where left out. */
  readonly storage?: StorageMap;
}

/** A column's place, and its distinct texts with what each was read as: one look-up gives both. */
export interface ColumnReadings {
  readonly index: number;
  readonly known: Map<string, CellReading>;
}

/** A file laid out. Its rows stand below the header; `readable` is false where a fault or a question stops them all. */
export interface Sheet {
  readonly file: string;
  /** The sheet of a workbook; null in other files. */
  readonly part: string | null;
  readonly kind: FileKind;
  readonly sha256: string;
  readonly encoding: string;
  readonly delimiter: string;
  readonly header: Place;
  readonly headers: readonly string[];
  readonly columns: ReadonlyMap<string, PlacedColumn>;
  /** Where the column stands that every record fills; -1 where there is none. */
  readonly keyIndex: number;
  /** How many cells a row must have: to the last column that is needed. Programs leave out blank ones at the end. */
  readonly neededWidth: number;
  /** How the dates of each date column are written, by our name of it. */
  readonly dateForms: ReadonlyMap<string, DateForm>;
  /** What parts decimals in each column of measurements that tells it, by our name of it. */
  readonly decimalMarks: ReadonlyMap<string, DecimalMark>;
  readonly rows: readonly Row[];
  /** The line of the row in which a quotation mark is opened and never closed. */
  readonly openQuoteLine: number | null;
  readonly readable: boolean;
  readonly problems: Problem[];
  /** Whether any cell holds a NUL, which no text has. */
  readonly holdsNul: boolean;
  /** Where each column stands and what each distinct text of it was read as, by our name of the column. */
  readonly readings: ReadonlyMap<string, ColumnReadings>;
  /** Words of the file already told to the grower as guessed. */
  readonly guessedWords: Set<string>;
  /** Names of one plant, as the grower says. */
  readonly same: SamePlants;
  /** What the grower says that words of storage mean. */
  readonly storage: StorageMap;
}

function reportEncoding(
  { encoding, encodingGuessed, rows: [top, ...rows], titles, linesQuoted }: Rows,
  header: Header,
  report: Report,
): void {
  if (titles > 0) report('notice', 'title-lines', { details: { titles } });
  if (linesQuoted) report('notice', 'lines-quoted');
  if (!encodingGuessed) return;
  const { shown, more } = otherLetters(top.cells, rows, header);
  const details = { encoding, cells: shown.join('\n'), more };
  report('notice', 'encoding-guessed', { value: shown[0] ?? null, details });
}

type SaidKind = Exclude<FileKind, 'unknown'> | undefined;

const NO_HEADER: Header = {
  kind: 'unknown',
  columns: new Map(),
  guessed: [],
  unknown: [],
  unclear: [],
  missing: [],
  otherKind: null,
};

/** What the sentences on files that cannot be read need. */
function faultDetails(bytes: Uint8Array, fault: FileFault, format = ''): ProblemParts {
  if (fault === 'other-format' || fault === 'spreadsheet-file') return { details: { format } };
  if (fault === 'own-file') return { details: { own: format } };
  if (fault === 'workbook-too-large') return { details: { most: MOST_UNZIPPED_BYTES, cells: MOST_CELLS } };
  return fault === 'file-too-large' ? { details: { bytes: bytes.length, most: MOST_BYTES } } : {};
}

/** Says which sheets of a workbook are read, where it has others or several of ours. */
function reportSheets({ sheet, passedOver }: Rows, alone: boolean, report: Report): void {
  if (sheet === null || (alone && passedOver.length === 0)) return;
  report('notice', 'sheet-read', { details: { sheet, others: passedOver.join(', ') } });
}

/** Says what a sheet shows otherwise than it is read. */
function reportLooks({ hiddenRows = 0, merged = [] }: Rows, report: Report): void {
  if (hiddenRows > 0) report('notice', 'rows-hidden', { details: { rows: hiddenRows } });
  if (merged.length > 0) report('notice', 'cells-merged', { value: merged.join(', ') });
}

/** The headers understood by themselves, then, where they may mean several columns, by what stands below them. */
function headerOf(headers: readonly string[], rows: readonly Row[], map: HeaderMap, said: SaidKind): Header {
  const header = understandHeader(headers, map, said);
  const byValues = meaningsByValues(headers, rows, header);
  return byValues.size === 0 ? header : understandHeader(headers, map, said, byValues);
}

function keyIndexOf({ kind, columns }: Header): number {
  const key = kind === 'unknown' ? null : KEY_COLUMN[kind];
  return (key === null ? undefined : columns.get(key)?.index) ?? -1;
}

function neededWidthOf({ kind, columns }: Header): number {
  if (kind === 'unknown') return 0;
  const needed = COLUMNS[kind].filter(({ required }) => required);
  return Math.max(...needed.map(({ name }) => (columns.get(name)?.index ?? -1) + 1));
}

/** Whether a sheet of crosses is still to be filled in: each has a tag, none has a day or an outcome. */
function isUnfilled({ kind, columns }: Header, rows: readonly Row[]): boolean {
  const [tag, ...toFill] = ['cross_id', 'pollination_date', 'outcome'].map(
    (name) => columns.get(name)?.index,
  );
  if (kind !== 'crosses' || tag === undefined || rows.length === 0) return false;
  const isBlank = ({ cells }: Row, at: number | undefined) =>
    at !== undefined && (cells[at] ?? '').trim() === '';
  return rows.every((row) => !isBlank(row, tag) && toFill.every((at) => isBlank(row, at)));
}

/** Lays out what one file, or one sheet of a workbook, holds. */
function laidOut(source: SeasonSource, options: SheetOptions, rows: Rows, alone: boolean): Sheet {
  const file = rows.sheet === null || alone ? source.name : `${source.name}, sheet ${rows.sheet}`;
  const said = source.kind === 'unknown' ? undefined : source.kind;
  const top = rows.rows[0] ?? { line: 1, row: 1, cells: [] };
  const place: Place = { file, line: top.line, row: top.row };
  const problems: Problem[] = [];
  const report: Report = (severity, code, parts) =>
    void problems.push(problemAt(place, severity, code, parts));
  const below = rows.fault === null ? rows.rows.slice(1) : [];
  const header = rows.fault === null ? headerOf(top.cells, below, options.map, said) : NO_HEADER;
  const { dateSystem: ownSystem } = rows;
  const dateOptions = { ...options, ...(ownSystem === undefined ? {} : { ownSystem }) };
  let dateForms = new Map<string, DateForm>();
  if (rows.fault !== null) {
    // One of our own is passed over, unless it was said to be something else.
    const severity = rows.fault === 'own-file' && said === undefined ? 'notice' : 'error';
    report(severity, rows.fault, faultDetails(source.bytes, rows.fault, rows.format));
  } else {
    reportSheets(rows, alone, report);
    reportLooks(rows, report);
    reportEncoding(rows, header, report);
    reportHeader(header, top.cells, below, report);
    if (header.kind !== 'unknown') dateForms = dateFormsOf(below, header, dateOptions, report);
    if (below.length === 0 && header.kind !== 'unknown')
      report(header.kind === 'crosses' ? 'error' : 'warning', 'no-rows');
    if (isUnfilled(header, below)) report('error', 'nothing-entered');
  }
  return {
    file,
    part: rows.sheet,
    kind: header.kind === 'unknown' ? (said ?? 'unknown') : header.kind,
    sha256: source.sha256 ?? sha256(source.bytes),
    encoding: rows.encoding,
    delimiter: rows.delimiter,
    header: place,
    headers: top.cells,
    columns: header.columns,
    keyIndex: keyIndexOf(header),
    neededWidth: neededWidthOf(header),
    dateForms,
    decimalMarks: decimalMarksOf(below, header),
    rows: below,
    openQuoteLine: rows.openQuote?.line ?? null,
    readable: !problems.some(({ severity }) => severity === 'error'),
    problems,
    holdsNul: rows.holdsNul,
    readings: new Map([...header.columns].map(([name, { index }]) => [name, { index, known: new Map() }])),
    guessedWords: new Set(),
    same: options.same ?? new SamePlants([]),
    storage: options.storage ?? new Map(),
  };
}

/**
 * Lays out one file: reads its bytes, understands its header, decides how its dates are written. A workbook gives one
 * entry for each of its sheets that is understood, other files one.
 */
export function layOut(source: SeasonSource, options: SheetOptions): Sheet[] {
  const all = readRows(source.bytes, options.map);
  return all.map((rows) => laidOut(source, options, rows, all.length === 1));
}

/** The headers that the grower mapped, folded, as `readSeason` was given them. */
export function foldedMap(map: ReadonlyMap<string, string>): Map<string, string> {
  return new Map(
    [...map]
      .map(([header, column]) => [foldHeader(header), column] as const)
      .filter(([header]) => header !== ''),
  );
}
