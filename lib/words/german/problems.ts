/** Was in einer Datei gefunden wurde: was nicht stimmt und wo, und was zu tun ist. */

import type { FileColumn, Problem, SeasonFile } from '../../season/season.ts';
import type { FileFindings } from '../file-findings.ts';
import type { ProblemSentence } from '../problem-sentence.ts';
import { groupsByFix, moreAlike, noticesTold, saidByColumn } from '../told/alike-problems.ts';
import { type FindingsSaid, findingsTold } from '../told/findings.ts';
import { columnIndex, columnLetters, recordOf } from '../told/places.ts';
import { FILE_PROBLEMS } from './file-problems.ts';
import { wholeNumber } from './numbers.ts';
import { cited } from './problem-sentence.ts';
import { ROW_PROBLEMS } from './row-problems.ts';

export { problemGroups } from '../told/alike-problems.ts';

type NoticeLine = (alike: readonly Problem[]) => string;

const FILE_SENTENCES: ReadonlyMap<string, ProblemSentence> = new Map(Object.entries(FILE_PROBLEMS));
const ROW_SENTENCES: ReadonlyMap<string, ProblemSentence> = new Map(Object.entries(ROW_PROBLEMS));

interface Said {
  readonly message: string;
  readonly fix: string;
}

function sentencesOf(problem: Problem): Said & { readonly whole: boolean } {
  const whole = FILE_SENTENCES.get(problem.code);
  const sentence = whole ?? ROW_SENTENCES.get(problem.code);
  if (sentence === undefined) {
    throw new RangeError(`problemWords: problem must have a code of this project, got "${problem.code}"`);
  }
  const [message, fix] = sentence(problem);
  return { message, fix, whole: whole !== undefined };
}

export function problemWords(problem: Problem): Said {
  const { message, fix, whole } = sentencesOf(problem);
  return { message: whole ? message : `Zeile ${problem.row}: ${message}`, fix };
}

const RECORDS = { tag: 'Etikett', vial: 'Röhrchen' } as const;

function problemPlace(problem: Problem, columns: readonly FileColumn[]): string {
  const record = recordOf(problem, columns);
  const named = record === null ? '' : ` (${RECORDS[record.kind]} ${record.name})`;
  const index = columnIndex(problem, columns);
  const letters = index < 0 ? '' : `${columnLetters(index)} `;
  return `Zeile ${problem.row}${named}${problem.column === null ? '' : `, Spalte ${letters}${cited(problem.column)}`}`;
}

export function placedWords(problem: Problem, columns: readonly FileColumn[]): Said {
  const { message, fix, whole } = sentencesOf(problem);
  return { message: whole ? message : `${problemPlace(problem, columns)}: ${message}`, fix };
}

export function alsoInRows(group: readonly Problem[]): string {
  const alike = moreAlike(group);
  if (alike === null) return '';
  return `Und ${wholeNumber(alike.more)} weitere dieser Art (${alike.oneRow ? 'Zeile' : 'Zeilen'} ${alike.rows}).`;
}

function byColumn(alike: readonly Problem[], said: (problem: Problem) => string): string {
  return [...saidByColumn(alike, said)]
    .map(([column, list]) => `in ${cited(column)} ${list.join(', ')}`)
    .join('; ');
}

const LINES: ReadonlyMap<string, NoticeLine> = new Map<string, NoticeLine>([
  [
    'column-guessed',
    (alike) =>
      `Als unsere gelesene Spalten: ${alike.map(({ column, details }) => `${cited(column)} als ${details.column}`).join(', ')}. ` +
      'Stimmt eine nicht, sie umbenennen, oder sagen, was sie ist: --map "EIGENER KOPF=Spalte".',
  ],
  [
    'column-unknown',
    (alike) =>
      `Nicht verwendete Spalten: ${alike.map(({ column }) => cited(column)).join(', ')}. Enthält eine etwas Nötiges, ` +
      'sagen, was: --map "EIGENER KOPF=Spalte".',
  ],
  [
    'word-guessed',
    (alike) =>
      `Als unsere gelesene Wörter, wo immer sie stehen: ${byColumn(alike, ({ value, details }) => `${cited(value)} als ${details.meant}`)}.`,
  ],
  [
    'storage-own',
    (alike) =>
      `Als eigene behaltene Arten der Lagerung: ${byColumn(alike, ({ value }) => cited(value))}. Ist eine davon fresh, room, ` +
      'refrigerated oder frozen, dieses Wort schreiben oder sagen: --storage "EIGENES WORT=frozen".',
  ],
  [
    'name-tidied',
    (alike) =>
      `Mit einfachen Leerzeichen und Buchstaben gelesene Namen: ${byColumn(alike, ({ value, details }) => `${cited(value)} als ${cited(details.meant)}`)}.`,
  ],
]);

function plainLine(alike: readonly Problem[]): string {
  const { told, counted } = noticesTold(alike);
  const said = told.map(problemWords);
  const others = [counted.length === 0 ? '' : alsoInRows(counted)].filter((more) => more !== '');
  return [...said.map(({ message }) => message), ...others, said[0]!.fix].join(' ');
}

function noticeLines(notices: readonly Problem[]): string[] {
  const kinds = [...new Set(notices.map(({ code }) => code))];
  return kinds.map((code) =>
    (LINES.get(code) ?? plainLine)(notices.filter((notice) => notice.code === code)),
  );
}

function faultSaid(alike: readonly Problem[], columns: readonly FileColumn[]) {
  return { ...placedWords(alike[0]!, columns), more: alsoInRows(alike) };
}

export function fileFindings(file: Pick<SeasonFile, 'columns' | 'problems'>): FileFindings {
  return {
    groups: [...groupsByFix(file, 'error', faultSaid), ...groupsByFix(file, 'warning', faultSaid)],
    notices: noticeLines(file.problems.filter(({ severity }) => severity === 'notice')),
  };
}

export function findingsSaid(files: readonly SeasonFile[]): FindingsSaid {
  return findingsTold(files, fileFindings);
}
