/** Where a problem stands, as a spreadsheet shows it. */
import type { FileColumn, Problem } from '../../season/season.ts';
import { cited, columnIndex, columnLetters, recordOf } from '../told/places.ts';

const RECORDS = { tag: 'étiquette', vial: 'tube' } as const;

function columnPlace(problem: Problem, columns: readonly FileColumn[]): string {
  if (problem.column === null) return '';
  const index = columnIndex(problem, columns);
  return `, colonne ${index < 0 ? '' : `${columnLetters(index)} `}${cited(problem.column)}`;
}

/** Row, tag and column of a fault in a row. */
export function problemPlace(problem: Problem, columns: readonly FileColumn[]): string {
  const record = recordOf(problem, columns);
  const named = record === null ? '' : ` (${RECORDS[record.kind]} ${record.name})`;
  return `Ligne ${problem.row}${named}${columnPlace(problem, columns)}`;
}
