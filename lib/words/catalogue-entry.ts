/** How an entry of the catalogue of problems is put. */

/** Everything that can be found in a file under one code. */
export interface CatalogueEntry {
  /** How much it matters; some faults leave the row out only where the column is needed. */
  readonly severity: 'error' | 'warning' | 'notice' | 'error or warning';
  readonly means: string;
  /** What becomes of the row, or of all rows. */
  readonly used: string;
  readonly mend: string;
  /** What may stand in the file. */
  readonly example: string;
}

/** An entry as its parts follow each other. */
export type EntryParts = readonly [
  severity: CatalogueEntry['severity'],
  means: string,
  used: string,
  mend: string,
  example: string,
];

/** What becomes of rows, said alike everywhere. */
export const LEFT_OUT = 'The row is left out.';
export const USED = 'The row is used.';
export const NO_ROW = 'No row of the file is used.';
export const ALL_USED = 'All rows are used.';
export const IF_NEEDED = 'The row is left out where the column is needed; else it is used without the cell.';
export const WITHOUT_CELL = 'The row is used without that cell.';
