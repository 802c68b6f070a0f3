/** The codes of what can be wrong with a file, and how one becomes a Problem. Their sentences are in `words/`. */

import type { Place, Problem } from './season.ts';

/** Faults of a whole file. */
export type FileProblemCode =
  | 'file-empty'
  | 'file-too-large'
  | 'file-repeated'
  | 'no-rows'
  | 'nothing-entered'
  | 'not-text'
  | 'spreadsheet-file'
  | 'other-format'
  | 'own-file'
  | 'workbook-broken'
  | 'workbook-locked'
  | 'workbook-too-large'
  | 'sheet-read'
  | 'rows-hidden'
  | 'cells-merged'
  | 'kind-unknown'
  | 'kind-differs'
  | 'column-missing'
  | 'column-unclear'
  | 'column-unknown'
  | 'columns-unknown'
  | 'column-without-header'
  | 'column-guessed'
  | 'date-order-unclear'
  | 'date-order-mixed'
  | 'date-order-decided'
  | 'date-order-from-neighbour'
  | 'date-serial-read'
  | 'two-digit-years'
  | 'encoding-guessed'
  | 'title-lines'
  | 'lines-quoted'
  | 'table-sideways'
  | 'parents-in-one'
  | 'map-header-missing'
  | 'same-name-missing'
  | 'storage-word-missing';

/** Faults of one record. */
export type RowProblemCode =
  | 'row-ragged'
  | 'row-short'
  | 'row-nearly-blank'
  | 'total-row'
  | 'header-repeated'
  | 'quote-not-closed'
  | 'control-character'
  | 'cell-blank'
  | 'cell-error'
  | 'date-does-not-exist'
  | 'date-not-understood'
  | 'date-serial'
  | 'date-implausible'
  | 'date-partial'
  | 'number-not-understood'
  | 'number-negative'
  | 'number-absurd'
  | 'number-converted'
  | 'number-is-date'
  | 'word-not-understood'
  | 'word-guessed'
  | 'storage-own'
  | 'storage-slip'
  | 'tag-repeated'
  | 'tag-conflict'
  | 'vial-repeated'
  | 'vial-conflict'
  | 'flowers-repeated'
  | 'future-date'
  | 'outcome-after-as-of'
  | 'collected-after-pollination'
  | 'fresh-collected-earlier'
  | 'age-missing'
  | 'age-disagrees'
  | 'age-over-ten-years'
  | 'vial-unknown'
  | 'vial-before-collected'
  | 'vial-beyond-doses'
  | 'vial-father-differs'
  | 'vial-storage-differs'
  | 'year-stands-alone'
  | 'own-pollen'
  | 'selfed-with-other-pollen'
  | 'unpollinated-with-pollen'
  | 'checked-before-pollination'
  | 'checked-too-early'
  | 'checked-too-late'
  | 'harvested-before-pollination'
  | 'harvested-too-late'
  | 'harvested-without-fruit'
  | 'seeds-without-fruit'
  | 'more-sown-than-seeds'
  | 'more-germinated-than-sown'
  | 'opens-backwards'
  | 'name-spellings'
  | 'name-slip'
  | 'name-garbled'
  | 'name-tidied';

export type ProblemCode = FileProblemCode | RowProblemCode;

/** What a problem may say beyond its place and code. */
export interface ProblemParts {
  readonly column?: string | null;
  readonly value?: string | null;
  readonly details?: Readonly<Record<string, string | number>>;
  readonly record?: string;
}

/** A problem at a place of a file. */
export function problemAt(
  place: Place,
  severity: Problem['severity'],
  code: ProblemCode,
  { column = null, value = null, details = {}, record }: ProblemParts = {},
): Problem {
  const { file, line, row } = place;
  return { file, line, row, severity, column, value, code, details, ...(record ? { record } : {}) };
}

/** Adds a problem to those of a file, at its header. */
export type Report = (severity: Problem['severity'], code: ProblemCode, parts?: ProblemParts) => void;

const QUESTIONS: ReadonlySet<string> = new Set<ProblemCode>([
  'date-order-unclear',
  'date-order-mixed',
  'column-unclear',
]);

/**
 * The problems that only the grower can settle, with an option: until then their files give no rows.
 *
 * @returns those of the codes `date-order-unclear`, `date-order-mixed` and `column-unclear`, in the order of the files
 * @example
 * questions(season).length; // 0
 */
export function questions(season: {
  readonly files: readonly { readonly problems: readonly Problem[] }[];
}): Problem[] {
  return season.files.flatMap((file) => file.problems.filter((problem) => QUESTIONS.has(problem.code)));
}
