/** How the dates of each date column are written: decided once a column, told or asked. */

import { COLUMNS, type KnownKind } from './columns.ts';
import {
  type DateForm,
  type DateSystem,
  dateInOrder,
  hasShortYear,
  isSerial,
  readDate,
  serialDate,
  threeNumbers,
} from './date-cell.ts';
import { type DateCell, type DateOrderFinding, dateOrderOf } from './date-order.ts';
import type { Header, PlacedColumn } from './header.ts';
import type { Report } from './problems.ts';
import { type Row, trimmed } from './rows.ts';
import type { DateOrder } from './season.ts';

/** What the grower says about dates. */
export interface DateOptions {
  readonly dateOrder?: DateOrder;
  readonly dateSystem?: DateSystem;
  /** What a workbook says of itself. */
  readonly ownSystem?: DateSystem;
}

/** The distinct texts of a column, each where it stands first. */
function dateCells(rows: readonly Row[], { index }: PlacedColumn): DateCell[] {
  const met = new Set<string>();
  const cells: DateCell[] = [];
  for (const { row, cells: all } of rows) {
    const cell = all[index] ?? '';
    if (cell === '' || met.has(cell)) continue;
    met.add(cell);
    cells.push({ row, text: trimmed(cell) });
  }
  return cells;
}

/** Tells what was decided or must be asked about one date column; the order where it is known. */
function reportDateOrder(finding: DateOrderFinding, { header }: PlacedColumn, report: Report): void {
  if (finding.state === 'decided' && finding.evidence !== null) {
    const { order, evidence, rival, byYear } = finding;
    report('notice', 'date-order-decided', {
      column: header,
      value: evidence.text,
      details: { order, row: evidence.row, rival: rival ?? '', byYear: byYear ? 'yes' : 'no' },
    });
  } else if (finding.state === 'unclear') {
    const { orders, example } = finding;
    const numbers = threeNumbers(example.text)!;
    const readings = orders.map((order) => dateInOrder(numbers, order)!);
    const details = {
      row: example.row,
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
      firstRow: one.row,
      secondOrder,
      secondAgainst: two?.text ?? '',
      secondRow: two?.row ?? one.row,
    };
    report('error', 'date-order-mixed', { column: header, value: one.text, details });
  }
}

function reportTwoDigitYears(cells: readonly DateCell[], { header }: PlacedColumn, report: Report): void {
  const short = cells.find(({ text }) => hasShortYear(text));
  if (short)
    report('notice', 'two-digit-years', { column: header, value: short.text, details: { row: short.row } });
}

interface DateColumn {
  readonly name: string;
  readonly placed: PlacedColumn;
  readonly cells: readonly DateCell[];
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

function dateColumnsOf(rows: readonly Row[], { kind, columns }: Header): DateColumn[] {
  return COLUMNS[kind as KnownKind].flatMap(({ name, cell }) => {
    const placed = columns.get(name);
    if (cell !== 'date' || placed === undefined) return [];
    const cells = dateCells(rows, placed);
    return [{ name, placed, cells, finding: dateOrderOf(cells) }];
  });
}

/** The first of a spreadsheet's own numbers in a column that writes its dates so; undefined where any cell is a date otherwise. */
function firstSerial(cells: readonly DateCell[]): DateCell | undefined {
  const serial = cells.find(({ text }) => isSerial(text));
  if (serial === undefined) return undefined;
  const dated = cells.some(({ text }) => threeNumbers(text) !== null || 'value' in readDate(text, null));
  return dated ? undefined : serial;
}

/** The system of a column of a spreadsheet's own numbers for days, told with the first of them; null where it is none. */
function serialSystem(
  { cells, placed }: DateColumn,
  { dateSystem: said, ownSystem = 1900 }: DateOptions,
  report: Report,
): DateSystem | null {
  const serial = firstSerial(cells);
  if (serial === undefined) return null;
  const system = said ?? ownSystem;
  const date = serialDate(Number.parseInt(serial.text, 10), system);
  const details = { row: serial.row, date, system };
  if (said === undefined)
    report('notice', 'date-serial-read', { column: placed.header, value: serial.text, details });
  return system;
}

/** The order of a column's dates as the grower says, else by the column's own dates, else by its neighbours'. */
function orderOf(
  column: DateColumn,
  columns: readonly DateColumn[],
  said: DateOrder | undefined,
  report: Report,
): DateOrder | null {
  const { placed, finding } = column;
  if (finding.state === 'not-needed') return null;
  const neighbour = neighbourOrder(column, columns);
  if (said !== undefined) return said;
  if (neighbour === null) reportDateOrder(finding, placed, report);
  else
    report('notice', 'date-order-from-neighbour', { column: placed.header, details: { order: neighbour } });
  return neighbour ?? (finding.state === 'decided' ? finding.order : null);
}

/**
 * How the dates of each date column are written, by our name of the column; what was decided is told, and what only the
 * grower can tell is asked. A column without an entry needs no form.
 */
export function dateFormsOf(
  rows: readonly Row[],
  header: Header,
  options: DateOptions,
  report: Report,
): Map<string, DateForm> {
  const forms = new Map<string, DateForm>();
  const columns = dateColumnsOf(rows, header);
  for (const column of columns) {
    reportTwoDigitYears(column.cells, column.placed, report);
    const form = serialSystem(column, options, report) ?? orderOf(column, columns, options.dateOrder, report);
    if (form !== null) forms.set(column.name, form);
  }
  return forms;
}
