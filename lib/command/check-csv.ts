import { csvText } from '../season/csv-text.ts';
import { FINDINGS_COLUMNS } from '../season/own-files.ts';
import type { Problem, Season, SeasonFile } from '../season/season.ts';
import * as english from '../words/index.ts';
import type { Words } from '../words/languages.ts';
import { columnIndex, columnLetters } from '../words/problem-place.ts';

function rowOf(problem: Problem, { columns }: SeasonFile, words: Words): string[] {
  const { file, severity, line, row, column, record, value, code } = problem;
  const { message, fix } = words.problemWords(problem);
  const index = column === null ? -1 : columnIndex(problem, columns);
  const letters = index < 0 ? '' : columnLetters(index);
  const found = [file, severity, String(row), letters, column ?? '', record ?? '', value ?? ''];
  return [...found, code, message, fix, String(line)];
}

/** What was found as CSV for a spreadsheet: one row a finding, errors first in each file. */
export function checkCsv(season: Season, words: Words = english): string {
  const severities: readonly Problem['severity'][] = ['error', 'warning', 'notice'];
  const rows = season.files.flatMap((file) =>
    severities.flatMap((severity) =>
      file.problems
        .filter((problem) => problem.severity === severity)
        .map((problem) => rowOf(problem, file, words)),
    ),
  );
  return csvText([FINDINGS_COLUMNS, ...rows]);
}
