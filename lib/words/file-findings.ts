/** What was found in a file, put together by what mends it: errors, then warnings, then what was only noticed. */

import type { SeasonFile } from '../season/season.ts';
import { placedWords } from './english-problems.ts';
import { alsoInRows, problemGroups } from './problem-groups.ts';
import { noticeLines } from './problem-notices.ts';

/** Faults that the same act mends. */
export interface ProblemGroup {
  readonly severity: 'error' | 'warning';
  /** A sentence for each kind of fault; its first row stands for all like it. */
  readonly faults: readonly ProblemFault[];
  readonly fix: string;
}

/** One fault and the others like it. */
export interface ProblemFault {
  readonly message: string;
  /** How many more are like it and in which rows, as a sentence; empty where none is. */
  readonly more: string;
}

/** All that was found in a file, as people read it. */
export interface FileFindings {
  readonly groups: readonly ProblemGroup[];
  /** One line for all columns, one for all words, and so on. */
  readonly notices: readonly string[];
}

type Found = Pick<SeasonFile, 'columns' | 'problems'>;

/** The errors or the warnings of a file, those that the same act mends together. */
function groupsOf({ problems, columns }: Found, severity: ProblemGroup['severity']): ProblemGroup[] {
  const byFix = new Map<string, ProblemFault[]>();
  for (const alike of problemGroups(problems.filter((problem) => problem.severity === severity))) {
    const { message, fix } = placedWords(alike[0]!, columns);
    byFix.set(fix, [...(byFix.get(fix) ?? []), { message, more: alsoInRows(alike) }]);
  }
  return [...byFix].map(([fix, faults]) => ({ severity, faults, fix }));
}

/**
 * What was found in a file, grouped by what mends it: errors first, then warnings; notices as few lines.
 *
 * @param file its columns and its problems, as `readSeason` gives them
 * @example
 * fileFindings(season.files[0]).groups[0].fix; // 'Write it as YYYY-MM-DD, for example 2025-06-14.'
 */
export function fileFindings(file: Found): FileFindings {
  return {
    groups: [...groupsOf(file, 'error'), ...groupsOf(file, 'warning')],
    notices: noticeLines(file.problems.filter(({ severity }) => severity === 'notice')),
  };
}
