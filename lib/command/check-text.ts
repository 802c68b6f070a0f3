/** What `check` tells people: file by file, errors first, grouped by what mends them. */

import { leftOutRows, type Undecided, undecidedFlowers } from '../analysis/rows.ts';
import type { Season, SeasonFile } from '../season/season.ts';
import type { ProblemGroup } from '../words/file-findings.ts';
import * as english from '../words/index.ts';
import type { Words } from '../words/languages.ts';
import { listedRows } from '../words/told/alike-problems.ts';

type CheckWords = Pick<Words, 'checkWords' | 'fileFindings' | 'headed' | 'reasonSentence'>;

function groupText({ faults, fix }: ProblemGroup, { checkWords }: CheckWords): string {
  const said = faults.map(({ message, more }) => `    ${message}\n${more && `      ${more}\n`}`);
  return `${said.join('')}    ${checkWords.toMend(fix)}\n`;
}

function section(title: string, parts: readonly string[]): string {
  return parts.length === 0 ? '' : `\n  ${title}\n${parts.join('\n')}`;
}

/** Why rows are left out, so that the numbers add up, where errors named above do not account for all: a lost tag is none. */
function leftOutText(file: SeasonFile, undecided: readonly Undecided[], words: CheckWords): string {
  const own = undecided.filter(({ cross }) => cross.file === file.file);
  if (own.length === 0) return '';
  const lines = leftOutRows(file, own).map(({ reason, rows }) => {
    const at = own.filter((each) => each.reason === reason).map(({ cross }) => cross.row);
    return `    ${words.checkWords.leftOutFor(rows, words.reasonSentence(reason), listedRows(at))}\n`;
  });
  return section(words.checkWords.leftOut, [lines.join('')]);
}

function fileText(file: SeasonFile, undecided: readonly Undecided[], words: CheckWords): string {
  const { checkWords: said, fileFindings } = words;
  const { groups, notices } = fileFindings(file);
  const of = (severity: ProblemGroup['severity']) =>
    groups.filter((group) => group.severity === severity).map((group) => groupText(group, words));
  const nothing = groups.length + notices.length === 0 ? `  ${said.nothing}\n` : '';
  return [
    `${words.headed(file.file, said.rows(file))}\n${nothing}`,
    section(said.errors, of('error')),
    section(said.warnings, of('warning')),
    section(said.noticed, notices.length === 0 ? [] : [noticesText(notices)]),
    leftOutText(file, undecided, words),
  ].join('');
}

function noticesText(notices: readonly string[]): string {
  return notices.map((notice) => `    ${notice}\n`).join('');
}

/** What was found in each file. */
export function checkText(season: Season, words: CheckWords = english): string {
  const undecided = undecidedFlowers(season);
  return season.files.map((file) => fileText(file, undecided, words)).join('\n');
}
