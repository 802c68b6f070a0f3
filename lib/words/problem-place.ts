/** Where a problem stands, as a spreadsheet shows it. */

import type { FileColumn, Problem } from '../season/season.ts';
import { cited, columnIndex, columnLetters, recordOf } from './told/places.ts';

export { columnIndex, columnLetters } from './told/places.ts';

/** The column as the spreadsheet shows it: 'column F "storage"'; its name alone where the file does not have it. */
function columnPlace(problem: Problem, columns: readonly FileColumn[]): string {
  if (problem.column === null) return '';
  const index = columnIndex(problem, columns);
  return `, column ${index < 0 ? '' : `${columnLetters(index)} `}${cited(problem.column)}`;
}

/** The tag or vial that names the row. */
function recordPlace(problem: Problem, columns: readonly FileColumn[]): string {
  const record = recordOf(problem, columns);
  return record === null ? '' : ` (${record.kind} ${record.name})`;
}

/** Row, tag and column of a fault in a row: 'Row 11 (tag 10), column F "storage"'. */
export function problemPlace(problem: Problem, columns: readonly FileColumn[]): string {
  return `Row ${problem.row}${recordPlace(problem, columns)}${columnPlace(problem, columns)}`;
}
