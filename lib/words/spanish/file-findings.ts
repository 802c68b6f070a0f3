/** What was found in a file, put together by what mends it. */

import type { FileColumn, Problem, SeasonFile } from '../../season/season.ts';
import type { FileFindings } from '../file-findings.ts';
import { groupsByFix } from '../told/alike-problems.ts';
import { alsoInRows } from './problem-groups.ts';
import { noticeLines } from './problem-notices.ts';
import { placedWords } from './problems.ts';

type Found = Pick<SeasonFile, 'columns' | 'problems'>;

/** A fault in words, with those like it. */
function faultSaid(alike: readonly Problem[], columns: readonly FileColumn[]) {
  return { ...placedWords(alike[0]!, columns), more: alsoInRows(alike) };
}

/** What was found in a file, grouped by what mends it: errors first, then warnings; notices as few lines. */
export function fileFindings(file: Found): FileFindings {
  return {
    groups: [...groupsByFix(file, 'error', faultSaid), ...groupsByFix(file, 'warning', faultSaid)],
    notices: noticeLines(file.problems.filter(({ severity }) => severity === 'notice')),
  };
}
