/** One file laid out: its rows, where our columns stand in it, how its dates are written, and what was found on the way. */

import { dateInOrder, threeNumbers } from './cell.ts';
import { COLUMNS, foldHeader, type KnownKind } from './columns.ts';
import { type DateCell, type DateOrderFinding, dateOrderOf } from './date-order.ts';
import { type Header, type HeaderMap, type PlacedColumn, understandHeader } from './header.ts';
import { type ProblemCode, type ProblemParts, problemAt } from './problems.ts';
import { MOST_BYTES, type Row, type Rows, readRows } from './read.ts';
import type { DateOrder, FileKind, Place, Problem } from './season.ts';
import { sha256 } from './sha256.ts';

/** A file to be read: its name as it is to be printed, and its bytes. */
export interface SeasonSource {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** What the file is said to be; told by its columns where it is left out. */
  readonly kind?: FileKind;
}

/** What helps to lay out a file. */
export interface SheetOptions {
  readonly dateOrder?: DateOrder;
  /** From folded headers to our columns. */
  readonly map: HeaderMap;
}

/** A file laid out. Its rows stand below the header; `readable` is false where a fault or a question stops them all. */
export interface Sheet {
  readonly file: string;
  readonly kind: FileKind;
  readonly sha256: string;
  readonly encoding: string;
  readonly delimiter: string;
  readonly header: Place;
  readonly headers: readonly string[];
  readonly columns: ReadonlyMap<string, PlacedColumn>;
  readonly dateOrders: ReadonlyMap<string, DateOrder>;
  readonly rows: readonly Row[];
  /** The line of the row in which a quotation mark is opened and never closed. */
  readonly openQuoteLine: number | null;
  readonly readable: boolean;
  readonly problems: Problem[];
  /** Words of the file already told to the grower as guessed. */
  readonly guessedWords: Set<string>;
}

type Report = (severity: Problem['severity'], code: ProblemCode, parts?: ProblemParts) => void;

function reportEncoding({ encoding, encodingGuessed, rows, titles }: Rows, report: Report): void {
  if (titles > 0) report('notice', 'title-lines', { details: { titles } });
  if (!encodingGuessed) return;
  const special = rows.flatMap(({ cells }) => cells).find((cell) => /[^\p{ASCII}]/u.test(cell));
  report('notice', 'encoding-guessed', { value: special?.trim() ?? null, details: { encoding } });
}

function reportHeader(header: Header, cells: readonly string[], rows: readonly Row[], report: Report): void {
  if (header.kind === 'unknown') {
    report('error', 'kind-unknown', { details: { headers: cells.map((cell) => cell.trim()).join(', ') } });
  }
  for (const column of header.missing) {
    report('error', 'column-missing', { details: { column, kind: header.kind } });
  }
  for (const { column, headers } of header.unclear) {
    report('error', 'column-unclear', {
      column: headers[0],
      details: {
        column,
        first: headers[0],
        second: headers[1],
        same: headers[0] === headers[1] ? 'yes' : 'no',
      },
    });
  }
  for (const { header: theirs, column } of header.guessed) {
    report('notice', 'column-guessed', { column: theirs, details: { column } });
  }
  for (const theirs of header.unknown) report('notice', 'column-unknown', { column: theirs });
  cells.forEach((cell, index) => {
    const filled = cell.trim() === '' && rows.some((row) => (row.cells[index] ?? '').trim() !== '');
    if (filled) report('notice', 'column-without-header', { details: { position: index + 1 } });
  });
}

function dateCells({ rows }: Rows, { index }: PlacedColumn): DateCell[] {
  return rows.slice(1).map(({ line, cells }) => ({ line, text: (cells[index] ?? '').trim() }));
}

/** Tells what was decided or must be asked about one date column; the order where it is known. */
function reportDateOrder(finding: DateOrderFinding, { header }: PlacedColumn, report: Report): void {
  if (finding.state === 'decided' && finding.evidence !== null) {
    const { order, evidence } = finding;
    report('notice', 'date-order-decided', {
      column: header,
      value: evidence.text,
      details: { order, line: evidence.line },
    });
  } else if (finding.state === 'unclear') {
    const { orders, example } = finding;
    const numbers = threeNumbers(example.text)!;
    const readings = orders.map((order) => dateInOrder(numbers, order)!);
    const details = {
      line: example.line,
      firstOrder: orders[0],
      first: readings[0],
      secondOrder: orders[1],
      second: readings[1],
    };
    report('error', 'date-order-unclear', { column: header, value: example.text, details });
  } else if (finding.state === 'mixed') {
    const [one, two] = finding.against;
    const [firstOrder, secondOrder] = finding.orders;
    const details = {
      firstOrder,
      firstAgainst: one.text,
      firstLine: one.line,
      secondOrder,
      secondAgainst: two?.text ?? '',
      secondLine: two?.line ?? one.line,
    };
    report('error', 'date-order-mixed', { column: header, value: one.text, details });
  }
}

function reportTwoDigitYears(cells: readonly DateCell[], { header }: PlacedColumn, report: Report): void {
  const short = cells.find(({ text }) => threeNumbers(text)?.[2].length === 2);
  if (short)
    report('notice', 'two-digit-years', { column: header, value: short.text, details: { line: short.line } });
}

interface DateColumn {
  readonly name: string;
  readonly placed: PlacedColumn;
  readonly finding: DateOrderFinding;
}

/** The order that other columns of the same file were found to have, where they agree and it can read this one too. */
function neighbourOrder({ finding }: DateColumn, columns: readonly DateColumn[]): DateOrder | null {
  if (finding.state !== 'unclear') return null;
  const orders = new Set<DateOrder>();
  for (const { finding: other } of columns) {
    if (other.state === 'mixed') return null;
    if (other.state === 'decided' && other.evidence !== null) orders.add(other.order);
  }
  const [order] = orders;
  return orders.size === 1 && finding.orders.includes(order) ? order : null;
}

function dateColumnsOf(rows: Rows, { kind, columns }: Header): DateColumn[] {
  return COLUMNS[kind as KnownKind].flatMap(({ name, cell }) => {
    const placed = columns.get(name);
    if (cell !== 'date' || placed === undefined) return [];
    return [{ name, placed, finding: dateOrderOf(dateCells(rows, placed)) }];
  });
}

/** The order of dates in each date column: as the grower says, else by the column's own dates, else by its neighbours'. */
function dateOrdersOf(
  rows: Rows,
  header: Header,
  said: DateOrder | undefined,
  report: Report,
): Map<string, DateOrder> {
  const orders = new Map<string, DateOrder>();
  const columns = dateColumnsOf(rows, header);
  for (const column of columns) {
    const { name, placed, finding } = column;
    if (finding.state === 'not-needed') continue;
    reportTwoDigitYears(dateCells(rows, placed), placed, report);
    const neighbour = neighbourOrder(column, columns);
    const order = said ?? neighbour ?? (finding.state === 'decided' ? finding.order : null);
    if (order !== null) orders.set(name, order);
    if (said !== undefined) continue;
    if (neighbour === null) reportDateOrder(finding, placed, report);
    else
      report('notice', 'date-order-from-neighbour', { column: placed.header, details: { order: neighbour } });
  }
  return orders;
}

const NO_HEADER: Header = {
  kind: 'unknown',
  columns: new Map(),
  guessed: [],
  unknown: [],
  unclear: [],
  missing: [],
};

/** What the sentence on a file that is too large needs; no other reads it. */
function sizeDetails(bytes: Uint8Array): ProblemParts {
  return bytes.length > MOST_BYTES ? { details: { bytes: bytes.length, most: MOST_BYTES } } : {};
}

/** Lays out one file: reads its bytes, understands its header, decides its date orders. */
export function layOut(source: SeasonSource, options: SheetOptions): Sheet {
  const rows = readRows(source.bytes, options.map);
  const said = source.kind === 'unknown' ? undefined : source.kind;
  const top = rows.rows[0] ?? { line: 1, row: 1, cells: [] };
  const place: Place = { file: source.name, line: top.line, row: top.row };
  const problems: Problem[] = [];
  const report: Report = (severity, code, parts) =>
    void problems.push(problemAt(place, severity, code, parts));
  const below = rows.fault === null ? rows.rows.slice(1) : [];
  const header = rows.fault === null ? understandHeader(top.cells, options.map, said) : NO_HEADER;
  let dateOrders = new Map<string, DateOrder>();
  if (rows.fault !== null) report('error', rows.fault, sizeDetails(source.bytes));
  else {
    reportEncoding(rows, report);
    reportHeader(header, top.cells, below, report);
    if (header.kind !== 'unknown') dateOrders = dateOrdersOf(rows, header, options.dateOrder, report);
    if (below.length === 0)
      report(header.kind === 'crosses' || header.kind === 'unknown' ? 'error' : 'warning', 'no-rows');
  }
  return {
    file: source.name,
    kind: header.kind === 'unknown' ? (said ?? 'unknown') : header.kind,
    sha256: sha256(source.bytes),
    encoding: rows.encoding,
    delimiter: rows.delimiter,
    header: place,
    headers: top.cells,
    columns: header.columns,
    dateOrders,
    rows: below,
    openQuoteLine: rows.openQuote?.line ?? null,
    readable: !problems.some(({ severity }) => severity === 'error'),
    problems,
    guessedWords: new Set(),
  };
}

/** The headers that the grower mapped, folded, as `readSeason` was given them. */
export function foldedMap(map: ReadonlyMap<string, string>): Map<string, string> {
  return new Map(
    [...map]
      .map(([header, column]) => [foldHeader(header), column] as const)
      .filter(([header]) => header !== ''),
  );
}
