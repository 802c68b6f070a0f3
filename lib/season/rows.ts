/** A file as rows of cells: what reading its bytes comes to. */

import type { DateSystem } from './date-cell.ts';
import type { DecodedText } from './encoding.ts';
import type { OtherFormat } from './other-format.ts';
import type { OtherSheet } from './other-program.ts';
import type { OwnFile } from './own-files.ts';

/** One record: `line` is the file's line where it starts, `row` what a spreadsheet shows. */
export interface Row {
  readonly line: number;
  readonly row: number;
  readonly cells: readonly string[];
}

/** Why no row of a file can be read. */
export type FileFault =
  | 'file-empty'
  | 'file-too-large'
  | 'not-text'
  | 'other-format'
  | 'own-file'
  | 'spreadsheet-file'
  | 'workbook-broken'
  | 'workbook-locked'
  | 'workbook-too-large';

/** A file as rows of cells, its blank rows left out. */
export interface Rows {
  readonly encoding: DecodedText['encoding'] | 'xlsx';
  readonly encodingGuessed: boolean;
  readonly delimiter: string;
  /** The first is the header, wherever in the file it stands; empty where the file has no record at all. */
  readonly rows: readonly Row[];
  /** Rows above the header. */
  readonly titles: number;
  /** Whether any cell holds a NUL, which no text has. */
  readonly holdsNul: boolean;
  /** The row in which a quotation mark is opened and never closed. */
  readonly openQuote: Row | null;
  readonly fault: FileFault | null;
  /** What the file is, where it is no table, another program's, or one of ours without flowers. */
  readonly format?: OtherFormat | OtherSheet | OwnFile;
  /** The sheet of a workbook; null in other files. */
  readonly sheet: string | null;
  /** Whether every line stood in quotation marks as a whole. */
  readonly linesQuoted?: boolean;
  /** From which day a workbook counts its numbers for days; absent in other files. */
  readonly dateSystem?: DateSystem;
  /** How many rows of the sheet are hidden; 0 in other files. */
  readonly hiddenRows?: number;
  /** Where cells are joined over several rows, as the sheet writes it; none in other files. */
  readonly merged?: readonly string[];
  /** The sheets of the workbook that are not read, told with the first that is. */
  readonly passedOver: readonly string[];
}

/** A cell without the space around it; most have none, and that is told at a fraction of the cost. */
export function trimmed(cell: string): string {
  const first = cell.charCodeAt(0);
  const last = cell.charCodeAt(cell.length - 1);
  return first > 32 && first < 127 && last > 32 && last < 127 ? cell : cell.trim();
}

/** Whether no cell of a row says anything. */
export function isBlankRow(cells: readonly string[]): boolean {
  for (const cell of cells) if (cell !== '' && trimmed(cell) !== '') return false;
  return true;
}
