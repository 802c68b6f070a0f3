/** What the page of everything that `check` can find says around its catalogue. */

import { counted } from './numbers.ts';
import type { CataloguedProblem } from './problem-catalogue.ts';

const SEVERITIES: Readonly<Record<CataloguedProblem['severity'], string>> = {
  error: 'error',
  warning: 'warning',
  notice: 'notice',
  'error or warning': 'error or warning',
};

/** Its captions, cells and what was found. */
export const problemsPage = {
  columns: ['Code', 'What it means, what becomes of it', 'How to mend it'],
  ofFiles: 'Problems of a whole file',
  ofRows: 'Problems of a row',
  cells: ({ code, severity, means, used, mend, example }: CataloguedProblem): readonly string[] => [
    `${code} (${SEVERITIES[severity]})`,
    `${means} ${used}`,
    `${mend} Example: ${example}`,
  ],
  found: (codes: readonly string[]): string =>
    codes.length === 0
      ? 'In the files of this season nothing of this was found.'
      : `In the files of this season ${counted(codes.length, 'code')} of this page ${codes.length === 1 ? 'was' : 'were'} found: ${codes.join(', ')}.`,
};
