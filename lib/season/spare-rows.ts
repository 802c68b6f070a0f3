/** Rows that are no record: totals below a list, tags written out in advance, remarks. */

import { COLUMNS, type KnownKind } from './columns.ts';
import type { PlacedColumn } from './header.ts';
import { trimmed } from './rows.ts';
import { foldWord } from './values.ts';

const TOTALS: ReadonlySet<string> = new Set(
  (
    'sum, total, totals, grand total, subtotal, sub-total, sum total, overall, average, ' +
    'Summe, Summen, Gesamt, Gesamtsumme, Gesamtergebnis, Zwischensumme, Endsumme, insgesamt, Mittelwert, Durchschnitt, ' +
    'suma, sumas, total general, totales, promedio, somme, total général, totaux, sous-total, moyenne, Σ, ∑'
  )
    .split(', ')
    .map(foldWord),
);

/** The column that tells a flower or vial of its own, which a total never fills; none in a list of expected flowers. */
export const KEY_COLUMN: Readonly<Record<KnownKind, string | null>> = {
  crosses: 'pollination_date',
  vials: 'collected',
  flowers: null,
};

/** What names a record, and may be written out before there is one. */
const NAMES: ReadonlySet<string> = new Set(['cross_id', 'vial']);

/** A row that is no record: what it holds, for the sentence that says so. */
export interface SpareRow {
  readonly code: 'total-row' | 'row-nearly-blank';
  readonly column: string | null;
  readonly value: string;
}

/** "Summe:", "Total 2025" and "Σ" are totals; so is "Total fruits", but in a list of plants Total Eclipse may be one. */
function isTotal(cell: string, wholly: boolean): boolean {
  const folded = foldWord(cell.replace(/[\s\d:=.()[\]-]+$/u, ''));
  return TOTALS.has(folded) || (!wholly && TOTALS.has(folded.split(' ')[0]));
}

/** Whether any needed cell but the record's name is filled. */
function holdsAny(
  cells: readonly string[],
  kind: KnownKind,
  columns: ReadonlyMap<string, PlacedColumn>,
): boolean {
  return COLUMNS[kind].some(({ name, required }) => {
    const placed = required && !NAMES.has(name) ? columns.get(name) : undefined;
    return placed !== undefined && trimmed(cells[placed.index] ?? '') !== '';
  });
}

/**
 * Whether a row is no record: the first text in it says that it is a total, or nothing that a record needs stands in it.
 *
 * @param last whether no record stands below it
 * @returns what it is, or null where it is a record, with or without faults
 */
export function spareRow(
  cells: readonly string[],
  kind: KnownKind,
  columns: ReadonlyMap<string, PlacedColumn>,
  last: boolean,
): SpareRow | null {
  const key = KEY_COLUMN[kind];
  const keyed = key === null ? undefined : columns.get(key);
  if (keyed !== undefined && trimmed(cells[keyed.index] ?? '') !== '') return null;
  const first = cells.findIndex((cell) => trimmed(cell) !== '');
  const value = trimmed(cells[first] ?? '');
  const placed = [...columns].find(([, { index }]) => index === first);
  const said = { column: placed?.[0] ?? null, value };
  if ((key !== null || last) && isTotal(value, key === null)) return { code: 'total-row', ...said };
  if (key === null || holdsAny(cells, kind, columns)) return null;
  return { code: 'row-nearly-blank', ...said };
}
