import { type Undecided, undecidedFlowers } from '../analysis/rows.ts';
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

/** A flower that is left out without an error, so that each row left out stands in the list. */
function rowOfUndecided({ cross, reason }: Undecided, { files }: Season, words: Words): string[] {
  const columns = files.find(({ file }) => file === cross.file)?.columns ?? [];
  const index = columns.findIndex(({ column }) => column === 'outcome');
  const place = [index < 0 ? '' : columnLetters(index), columns[index]?.header ?? ''];
  const { leftOutRow, mendOutcome } = words.checkWords;
  return [
    ...[cross.file, 'notice', String(cross.row), ...place, cross.crossId, cross.outcome, reason],
    ...[leftOutRow(cross.row, words.reasonSentence(reason)), mendOutcome, String(cross.line)],
  ];
}

/** What was found as CSV for a spreadsheet: one row a finding, errors first in each file, then flowers whose outcome is not known. */
export function checkCsv(season: Season, words: Words = english): string {
  const severities: readonly Problem['severity'][] = ['error', 'warning', 'notice'];
  const rows = season.files.flatMap((file) =>
    severities.flatMap((severity) =>
      file.problems
        .filter((problem) => problem.severity === severity)
        .map((problem) => rowOf(problem, file, words)),
    ),
  );
  const undecided = undecidedFlowers(season).map((each) => rowOfUndecided(each, season, words));
  return csvText([FINDINGS_COLUMNS, ...rows, ...undecided]);
}
