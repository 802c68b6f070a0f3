/** What was found in a file: what is wrong and where, and what to do about it. */

import type { FileColumn, Problem } from '../../season/season.ts';
import type { ProblemWords } from '../english-problems.ts';
import type { ProblemSentence } from '../problem-sentence.ts';
import { FILE_PROBLEMS } from './file-problems.ts';
import { problemPlace } from './problem-place.ts';
import { ROW_PROBLEMS } from './row-problems.ts';

const FILE_SENTENCES: ReadonlyMap<string, ProblemSentence> = new Map(Object.entries(FILE_PROBLEMS));
const ROW_SENTENCES: ReadonlyMap<string, ProblemSentence> = new Map(Object.entries(ROW_PROBLEMS));

/** The sentences of a problem, without its place; `whole` where they concern the whole file. */
function sentencesOf(problem: Problem): ProblemWords & { readonly whole: boolean } {
  const whole = FILE_SENTENCES.get(problem.code);
  const sentence = whole ?? ROW_SENTENCES.get(problem.code);
  if (sentence === undefined) {
    throw new RangeError(`problemWords: problem must have a code of this project, got "${problem.code}"`);
  }
  const [message, fix] = sentence(problem);
  return { message, fix, whole: whole !== undefined };
}

/**
 * The sentences of a problem. A fault of one row begins with the row that a spreadsheet shows.
 *
 * @throws RangeError where the code is none of this project
 */
export function problemWords(problem: Problem): ProblemWords {
  const { message, fix, whole } = sentencesOf(problem);
  return { message: whole ? message : `Fila ${problem.row}: ${message}`, fix };
}

/** The same with the row's tag, and the column as a spreadsheet shows it. */
export function placedWords(problem: Problem, columns: readonly FileColumn[]): ProblemWords {
  const { message, fix, whole } = sentencesOf(problem);
  return { message: whole ? message : `${problemPlace(problem, columns)}: ${message}`, fix };
}
