/** What is told about the headers of a file: what was guessed, what is missing, and what only the grower can tell. */

import { COLUMNS, type Column, type KnownKind } from './columns.ts';
import { type Header, headersRecognised } from './header.ts';
import { isOpenHeader } from './header-by-values.ts';
import { likelyColumn } from './likely-column.ts';
import type { Report } from './problems.ts';
import type { Row } from './rows.ts';

/** So many columns that are not used are told one by one; the rest is counted. */
const TOLD_ONE_BY_ONE = 50;

/** What a header of several meanings may well be. */
const OPEN_TO: ReadonlySet<string> = new Set(['pollen_parent', 'storage', 'collected']);

/** Our columns of the file's kind that no header was found for. */
function unplaced({ kind, columns, unclear }: Header): Column[] {
  const asked = new Set(unclear.map(({ column }) => column));
  return COLUMNS[kind as KnownKind].filter(({ name }) => !columns.has(name) && !asked.has(name));
}

/** From unknown headers to the column that each may well mean, where no two of them may mean the same. */
function suggestions(header: Header): Map<string, string> {
  if (header.kind === 'unknown') return new Map();
  const candidates = unplaced(header);
  const likely = new Map<string, string>();
  const times = new Map<string, number>();
  for (const theirs of header.unknown.slice(0, TOLD_ONE_BY_ONE)) {
    const likelyOne = isOpenHeader(theirs)
      ? candidates.find(({ required, name: ours }) => required && OPEN_TO.has(ours))
      : likelyColumn(theirs, candidates);
    const name = likelyOne?.name;
    if (name === undefined) continue;
    likely.set(theirs, name);
    times.set(name, (times.get(name) ?? 0) + 1);
  }
  return new Map([...likely].filter(([, name]) => times.get(name) === 1));
}

function reportUnclear({ unclear }: Header, report: Report): void {
  for (const { column, headers } of unclear) {
    const [first, second] = headers;
    const details = { column, first, second, same: first === second ? 'yes' : 'no' };
    report('error', 'column-unclear', { column: first, details });
  }
}

function reportMissing({ missing, kind }: Header, likely: ReadonlyMap<string, string>, report: Report): void {
  for (const column of missing) {
    const theirs = [...likely].find(([, name]) => name === column)?.[0] ?? '';
    report('error', 'column-missing', { details: { column, kind, suggestion: theirs } });
  }
}

function reportUnknown({ unknown }: Header, likely: ReadonlyMap<string, string>, report: Report): void {
  for (const theirs of unknown.slice(0, TOLD_ONE_BY_ONE)) {
    const suggestion = likely.get(theirs) ?? '';
    report('notice', 'column-unknown', { column: theirs, details: { suggestion } });
  }
  const more = unknown.length - TOLD_ONE_BY_ONE;
  if (more > 0) report('notice', 'columns-unknown', { details: { more } });
}

/** So many of the first column's cells that are headers of ours are a table on its side. */
const HEADERS_OF_A_SIDE = 4;

function isSideways(headers: readonly string[], rows: readonly Row[]): boolean {
  const side = [headers[0] ?? '', ...rows.slice(0, 40).map(({ cells }) => cells[0] ?? '')];
  return headersRecognised(side, new Map()) >= HEADERS_OF_A_SIDE;
}

const BOTH_PARENTS = /\S\s*×\s*\S|\S\s+[xX]\s+\S/;

/** Where both parents are missing and a column holds crosses, that is told with the cell to see it by. */
function reportParents(
  { missing }: Header,
  headers: readonly string[],
  rows: readonly Row[],
  report: Report,
): void {
  if (!missing.includes('seed_parent') || !missing.includes('pollen_parent')) return;
  headers.forEach((header, index) => {
    const filled = rows.slice(0, 50).flatMap(({ cells }) => (cells[index] ?? '').trim() || []);
    const crosses = filled.filter((cell) => BOTH_PARENTS.test(cell));
    if (crosses.length * 2 > filled.length)
      report('error', 'parents-in-one', { column: header.trim(), value: crosses[0] });
  });
}

/** Cells below a blank header belong to nothing. */
function reportWithoutHeader(headers: readonly string[], rows: readonly Row[], report: Report): void {
  const filled = headers.flatMap((header, index) =>
    header.trim() === '' && rows.some(({ cells }) => (cells[index] ?? '').trim() !== '') ? [index + 1] : [],
  );
  for (const position of filled.slice(0, TOLD_ONE_BY_ONE))
    report('notice', 'column-without-header', { details: { position } });
  const more = filled.length - TOLD_ONE_BY_ONE;
  if (more > 0) report('notice', 'columns-unknown', { details: { more } });
}

/**
 * Tells how the headers of a file were understood.
 *
 * @param headers the cells of the header row as they stand
 * @param rows the rows below it
 */
export function reportHeader(
  header: Header,
  headers: readonly string[],
  rows: readonly Row[],
  report: Report,
): void {
  if (header.kind === 'unknown' && isSideways(headers, rows)) {
    report('error', 'table-sideways');
    return;
  }
  if (header.kind === 'unknown') {
    report('error', 'kind-unknown', { details: { headers: headers.map((text) => text.trim()).join(', ') } });
  }
  if (header.otherKind !== null) {
    report('error', 'kind-differs', { details: { said: header.kind, kind: header.otherKind } });
    return;
  }
  const likely = suggestions(header);
  reportParents(header, headers, rows, report);
  reportMissing(header, likely, report);
  reportUnclear(header, report);
  for (const { header: theirs, column } of header.guessed)
    report('notice', 'column-guessed', { column: theirs, details: { column } });
  reportUnknown(header, likely, report);
  reportWithoutHeader(headers, rows, report);
}
