/** Where a problem stands, as a spreadsheet shows it. */

import type { FileColumn, Problem } from '../season/season.ts';
import { cited } from './problem-sentence.ts';

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

/** The column as the spreadsheet shows it: 'column F "storage"'; its name alone where the file does not have it. */
function columnPlace(problem: Problem, columns: readonly FileColumn[]): string {
  if (problem.column === null) return '';
  const index = columnIndex(problem, columns);
  return `, column ${index < 0 ? '' : `${columnLetters(index)} `}${cited(problem.column)}`;
}

/** The tag or vial that names the row; empty where the fault is in that very cell, which the sentence cites. */
function recordPlace({ record, details }: Problem, columns: readonly FileColumn[]): string {
  if (record === undefined || details.name === 'cross_id' || details.name === 'vial') return '';
  const kind = columns.some(({ column }) => column === 'cross_id') ? 'tag' : 'vial';
  return ` (${kind} ${cited(record).slice(1, -1)})`;
}

/** Row, tag and column of a fault in a row: 'Row 11 (tag 10), column F "storage"'. */
export function problemPlace(problem: Problem, columns: readonly FileColumn[]): string {
  return `Row ${problem.row}${recordPlace(problem, columns)}${columnPlace(problem, columns)}`;
}
