/** Results as the command prints them: sentences joined to their codes. */

import type { Analysis } from '../analyse.ts';
import { leftOutRows, undecidedFlowers } from '../analysis/rows.ts';
import type { VialAdvice } from '../decisions/vials.ts';
import type { Problem, Season, SeasonFile } from '../season/season.ts';
import * as english from '../words/index.ts';
import type { Words } from '../words/languages.ts';

/** A problem as `check --json` shows it. */
export interface ProblemJson {
  readonly severity: Problem['severity'];
  readonly line: number;
  readonly row: number;
  readonly column: string | null;
  readonly value: string | null;
  readonly code: string;
  readonly message: string;
  readonly fix: string;
}

/** A file as `check --json` shows it. */
export interface FileJson extends Omit<SeasonFile, 'problems' | 'columns'> {
  /** Why rows are left out; they add up to `leftOut`. */
  readonly leftOutBy: readonly {
    readonly reason: string;
    readonly reasonCode: string;
    readonly rows: number;
  }[];
  readonly problems: readonly ProblemJson[];
}

type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };

function problemJson(problem: Problem, words: Words): ProblemJson {
  const { severity, line, row, column, value, code } = problem;
  const { message, fix } = words.problemWords(problem);
  return { severity, line, row, column, value, code, message, fix };
}

/** What was found in each file. */
export function filesJson(season: Season, words: Words = english): FileJson[] {
  const undecided = undecidedFlowers(season);
  return season.files.map((file) => {
    const { kind, sha256, encoding, delimiter, rows, used, leftOut } = file;
    const problems = file.problems.map((problem) => problemJson(problem, words));
    const leftOutBy = leftOutRows(file, undecided).map(({ reason, rows: by }) => ({
      reason: words.reasonSentence(reason),
      reasonCode: reason,
      rows: by,
    }));
    return { file: file.file, kind, sha256, encoding, delimiter, rows, used, leftOut, leftOutBy, problems };
  });
}

/** The entries of an object, with the sentence of each code that it carries beside it. */
function worded(key: string, value: unknown, words: Words): [string, Json][] {
  if (/^(because|reason|.+Because)$/.test(key) && typeof value === 'string') {
    return [
      [key, words.reasonSentence(value)],
      [`${key}Code`, value],
    ];
  }
  return [[key, wordedJson(value, words)]];
}

/** A copy of plain data in which every `because` (`planBecause`, `reason`) is a sentence beside its code. Fails on what JSON can't hold. */
function wordedJson(value: unknown, words: Words): Json {
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return value;
  if (typeof value === 'number' && Number.isFinite(value)) return value;
  if (Array.isArray(value)) return value.map((entry) => wordedJson(entry, words));
  if (typeof value === 'object') return wordedObject(value, words);
  throw new TypeError(
    `analysisJson: a result must hold finite numbers, text, lists and objects, got ${value}`,
  );
}

function wordedObject(value: object, words: Words): { readonly [key: string]: Json } {
  const present = Object.entries(value).filter(([, entry]) => entry !== undefined);
  return Object.fromEntries(present.flatMap(([key, entry]) => worded(key, entry, words)));
}

/** One vial's advice with the sentence of its verdict. */
function vialJson(advice: VialAdvice, words: Words): Json {
  const { reasonCode, ...rest } = advice;
  return { ...wordedObject(rest, words), reason: words.vialReason(advice), reasonCode };
}

/** The analysis as `analyse --json` prints it: the library's codes with their sentences. */
export function analysisJson(analysis: Analysis, words: Words = english): Json {
  const { vials, ...rest } = analysis;
  return { ...wordedObject(rest, words), vials: vials.map((vial) => vialJson(vial, words)) };
}
