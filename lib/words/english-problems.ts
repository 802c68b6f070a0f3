/** What was found in a file, in English: what is wrong and where, and what to do about it. */

import type { Problem } from '../season/season.ts';
import { FILE_PROBLEMS } from './english-file-problems.ts';
import { ROW_PROBLEMS } from './english-row-problems.ts';
import type { ProblemSentence } from './problem-sentence.ts';

const FILE_SENTENCES: ReadonlyMap<string, ProblemSentence> = new Map(Object.entries(FILE_PROBLEMS));
const ROW_SENTENCES: ReadonlyMap<string, ProblemSentence> = new Map(Object.entries(ROW_PROBLEMS));

/** A problem in words: `message` says what is wrong and where, `fix` what to do. */
export interface ProblemWords {
  readonly message: string;
  readonly fix: string;
}

/**
 * The English sentences of a problem. A fault of one row begins with the row that a spreadsheet shows.
 *
 * @throws RangeError where the code is none of this project
 * @example
 * problemWords(problem).message // 'Row 14: the pollination date "2025-02-30" does not exist.'
 */
export function problemWords(problem: Problem): ProblemWords {
  const whole = FILE_SENTENCES.get(problem.code);
  const sentence = whole ?? ROW_SENTENCES.get(problem.code);
  if (sentence === undefined) {
    throw new RangeError(`problemWords: problem must have a code of this project, got "${problem.code}"`);
  }
  const [message, fix] = sentence(problem);
  return { message: whole ? message : `Row ${problem.row}: ${message}`, fix };
}
