/** The sentences of every problem of a file. */
import type { FileColumn, Problem } from '../../season/season.ts';
import type { ProblemWords } from '../english-problems.ts';
import type { ProblemSentence } from '../problem-sentence.ts';
import { FILE_PROBLEMS } from './file-problems.ts';
import { problemPlace } from './problem-place.ts';
import { ROW_PROBLEMS } from './row-problems.ts';

const FILE_SENTENCES: ReadonlyMap<string, ProblemSentence> = new Map(Object.entries(FILE_PROBLEMS));
const ROW_SENTENCES: ReadonlyMap<string, ProblemSentence> = new Map(Object.entries(ROW_PROBLEMS));

function sentencesOf(problem: Problem): ProblemWords & { readonly whole: boolean } {
  const whole = FILE_SENTENCES.get(problem.code);
  const sentence = whole ?? ROW_SENTENCES.get(problem.code);
  if (sentence === undefined) {
    throw new RangeError(`problemWords: problem must have a code of this project, got "${problem.code}"`);
  }
  const [message, fix] = sentence(problem);
  return { message, fix, whole: whole !== undefined };
}

/** What is wrong, with the row, and how to mend it. */
export function problemWords(problem: Problem): ProblemWords {
  const { message, fix, whole } = sentencesOf(problem);
  return { message: whole ? message : `Ligne ${problem.row} : ${message}`, fix };
}

/** The same with row, tag and column as the spreadsheet shows them. */
export function placedWords(problem: Problem, columns: readonly FileColumn[]): ProblemWords {
  const { message, fix, whole } = sentencesOf(problem);
  return { message: whole ? message : `${problemPlace(problem, columns)} : ${message}`, fix };
}
