/** The texts of a file that hold other letters than plain ones, for the grower to confirm how they were read. */

import { tidyName } from './cell.ts';
import { COLUMNS } from './columns.ts';
import type { Header } from './header.ts';
import type { Row } from './rows.ts';

/** So many are shown; the rest is counted. */
const SHOWN = 25;
const PLAIN = /^[\t\n\r -~]*$/;

/** Distinct texts to confirm: those shown, and how many more there are. */
export interface OtherLetters {
  readonly shown: readonly string[];
  readonly more: number;
}

/** Where names of plants, vials and people stand: they matter most. */
function nameColumns({ kind, columns }: Header): number[] {
  if (kind === 'unknown') return [];
  return COLUMNS[kind].flatMap(({ name, cell }) =>
    cell === 'name' && columns.has(name) ? [columns.get(name)!.index] : [],
  );
}

/** Every distinct text with other letters: names first, then headers and whatever else, in the order of the file. */
export function otherLetters(headers: readonly string[], rows: readonly Row[], header: Header): OtherLetters {
  const found = new Set<string>();
  const note = (cell: string | undefined): void => {
    if (cell !== undefined && !PLAIN.test(cell)) found.add(tidyName(cell));
  };
  const names = nameColumns(header);
  for (const { cells } of rows) for (const index of names) note(cells[index]);
  headers.forEach(note);
  for (const { cells } of rows) cells.forEach(note);
  return { shown: [...found].slice(0, SHOWN), more: Math.max(0, found.size - SHOWN) };
}
