/** Everything that can be found in a file: what it means, what becomes of the row, how to mend it. */

import type { ProblemCode } from '../season/problems.ts';
import type { CatalogueEntry } from './catalogue-entry.ts';
import { FILE_ENTRIES } from './catalogue-files.ts';
import { ROW_ENTRIES } from './catalogue-rows.ts';

/** An entry with its code and whether it concerns a whole file. */
export interface CataloguedProblem extends CatalogueEntry {
  readonly code: ProblemCode;
  readonly concerns: 'file' | 'row';
}

/**
 * The catalogue of problems, those of whole files first.
 *
 * Answers: what can `readSeason` find in a file, and what does each code mean? Not for one problem at its place:
 * `problemWords` says that.
 *
 * @example
 * problemCatalogue().find(({ code }) => code === 'own-pollen').used; // 'The row counts as a cross.'
 */
export function problemCatalogue(): CataloguedProblem[] {
  const all = { ...FILE_ENTRIES, ...ROW_ENTRIES };
  return (Object.keys(all) as ProblemCode[]).map((code) => {
    const [severity, means, used, mend, example] = all[code];
    const concerns = Object.hasOwn(FILE_ENTRIES, code) ? 'file' : 'row';
    return { code, concerns, severity, means, used, mend, example };
  });
}
