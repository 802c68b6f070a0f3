/** Alles, was in einer Datei gefunden werden kann. */

import type { ProblemCode } from '../../season/problems.ts';
import type { CataloguedProblem } from '../problem-catalogue.ts';
import { FILE_ENTRIES } from './catalogue-files.ts';
import { ROW_ENTRIES } from './catalogue-rows.ts';

export function problemCatalogue(): CataloguedProblem[] {
  const all = { ...FILE_ENTRIES, ...ROW_ENTRIES };
  return (Object.keys(all) as ProblemCode[]).map((code) => {
    const [severity, means, used, mend, example] = all[code];
    const concerns = Object.hasOwn(FILE_ENTRIES, code) ? 'file' : 'row';
    return { code, concerns, severity, means, used, mend, example };
  });
}
