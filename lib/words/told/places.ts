/** Where a problem stands in a file, and what is cited from it. */

import type { FileColumn, Problem } from '../../season/season.ts';

/**
 * The letters over a column of a spreadsheet, counted from 0: A to Z, then AA.
 *
 * @example columnLetters(27) // 'AB'
 */
export function columnLetters(index: number): string {
  const before = index < 26 ? '' : columnLetters(Math.floor(index / 26) - 1);
  return before + String.fromCharCode(65 + (index % 26));
}

/** Where the column of a problem stands among a file's columns, counted from 0; -1 where none is meant or it is not there. */
export function columnIndex({ column, details }: Problem, columns: readonly FileColumn[]): number {
  const ours = columns.findIndex((each) => each.column !== null && each.column === details.name);
  return ours >= 0 ? ours : columns.findIndex(({ header }) => header === column);
}

const LONGEST_CITED = 60;

/** A header or cell in quotation marks, on one line and cut where it is long. */
export function cited(text: string | number | null | undefined): string {
  const line = String(text ?? '').replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]+/gu, ' ');
  const letters = [...line];
  return `"${letters.length > LONGEST_CITED ? `${letters.slice(0, LONGEST_CITED - 1).join('')}…` : line}"`;
}

/** The tag or vial that names a problem's row; null where the fault is in that very cell, which the sentence cites. */
export function recordOf(
  { record, details }: Problem,
  columns: readonly FileColumn[],
): { readonly kind: 'tag' | 'vial'; readonly name: string } | null {
  if (record === undefined || details.name === 'cross_id' || details.name === 'vial') return null;
  const kind = columns.some(({ column }) => column === 'cross_id') ? 'tag' : 'vial';
  return { kind, name: cited(record).slice(1, -1) };
}
