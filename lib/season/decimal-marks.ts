/** Whether a comma or a point parts the decimals of a column's numbers: decided once a column, by the numbers that tell. */

import { COLUMNS } from './columns.ts';
import type { Header } from './header.ts';
import type { Row } from './rows.ts';

export type DecimalMark = ',' | '.';

/** A mark with one, two, or more than three digits behind it parts decimals; so does one behind a nought. */
const TELLING = /^[+-]?(?:0|\d+(?=[.,](?:\d{1,2}|\d{4,})(?!\d)))([.,])\d+(?![\d.,])/;
/** Of two different marks the second parts the decimals. */
const BOTH = /^[+-]?\d{1,3}(?:(?:\.\d{3})+(,)|(?:,\d{3})+(\.))\d+(?![\d.,])/;

/** The mark that a number shows to part its decimals, or null where it does not tell. */
export function markShown(text: string): DecimalMark | null {
  const both = BOTH.exec(text);
  return ((both ? (both[1] ?? both[2]) : TELLING.exec(text)?.[1]) ?? null) as DecimalMark | null;
}

/** The mark of each column of measurements whose numbers tell it and agree, by our name of the column. */
export function decimalMarksOf(rows: readonly Row[], { kind, columns }: Header): Map<string, DecimalMark> {
  const marks = new Map<string, DecimalMark>();
  if (kind === 'unknown') return marks;
  for (const { name, cell } of COLUMNS[kind]) {
    const index = cell === 'decimal' ? columns.get(name)?.index : undefined;
    if (index === undefined) continue;
    const shown = new Set<DecimalMark>();
    for (const { cells } of rows) {
      const mark = markShown((cells[index] ?? '').trim());
      if (mark !== null) shown.add(mark);
      if (shown.size > 1) break;
    }
    if (shown.size === 1) marks.set(name, [...shown][0]);
  }
  return marks;
}
