/** Where a problem stands, as a spreadsheet shows it. */

import type { FileColumn, Problem } from '../../season/season.ts';
import { cited, columnIndex, columnLetters, recordOf } from '../told/places.ts';

const RECORDS = { tag: 'etiqueta', vial: 'vial' } as const;

/** The column as the spreadsheet shows it: 'columna F "storage"'; its name alone where the file does not have it. */
function columnPlace(problem: Problem, columns: readonly FileColumn[]): string {
  if (problem.column === null) return '';
  const index = columnIndex(problem, columns);
  return `, columna ${index < 0 ? '' : `${columnLetters(index)} `}${cited(problem.column)}`;
}

/** Row, tag and column of a fault in a row: 'Fila 11 (etiqueta 10), columna F "storage"'. */
export function problemPlace(problem: Problem, columns: readonly FileColumn[]): string {
  const record = recordOf(problem, columns);
  const named = record === null ? '' : ` (${RECORDS[record.kind]} ${record.name})`;
  return `Fila ${problem.row}${named}${columnPlace(problem, columns)}`;
}
