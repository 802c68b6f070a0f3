/** What was found in a file, put together by what mends it: errors, then warnings, then what was only noticed. */

import type { FileColumn, Problem, SeasonFile } from '../season/season.ts';
import { placedWords } from './english-problems.ts';
import { alsoInRows } from './problem-groups.ts';
import { noticeLines } from './problem-notices.ts';
import { groupsByFix } from './told/alike-problems.ts';

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

/** A fault in words, with those like it. */
function faultSaid(alike: readonly Problem[], columns: readonly FileColumn[]) {
  return { ...placedWords(alike[0]!, columns), more: alsoInRows(alike) };
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
    groups: [...groupsByFix(file, 'error', faultSaid), ...groupsByFix(file, 'warning', faultSaid)],
    notices: noticeLines(file.problems.filter(({ severity }) => severity === 'notice')),
  };
}
