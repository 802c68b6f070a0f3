/** What `check` tells people: file by file, errors first, grouped by what mends them. */

import type { Season, SeasonFile } from '../season/season.ts';
import type { ProblemGroup } from '../words/file-findings.ts';
import * as english from '../words/index.ts';
import type { Words } from '../words/languages.ts';

type CheckWords = Pick<Words, 'checkWords' | 'fileFindings'>;

function groupText({ faults, fix }: ProblemGroup, { checkWords }: CheckWords): string {
  const said = faults.map(({ message, more }) => `    ${message}\n${more && `      ${more}\n`}`);
  return `${said.join('')}    ${checkWords.toMend(fix)}\n`;
}

function section(title: string, parts: readonly string[]): string {
  return parts.length === 0 ? '' : `\n  ${title}\n${parts.join('\n')}`;
}

function fileText(file: SeasonFile, words: CheckWords): string {
  const { checkWords: said, fileFindings } = words;
  const { groups, notices } = fileFindings(file);
  const of = (severity: ProblemGroup['severity']) =>
    groups.filter((group) => group.severity === severity).map((group) => groupText(group, words));
  const nothing = groups.length + notices.length === 0 ? `  ${said.nothing}\n` : '';
  return [
    `${file.file}: ${said.rows(file)}\n${nothing}`,
    section(said.errors, of('error')),
    section(said.warnings, of('warning')),
    section(said.noticed, notices.length === 0 ? [] : [noticesText(notices)]),
  ].join('');
}

function noticesText(notices: readonly string[]): string {
  return notices.map((notice) => `    ${notice}\n`).join('');
}

/** What was found in each file. */
export function checkText(season: Season, words: CheckWords = english): string {
  return season.files.map((file) => fileText(file, words)).join('\n');
}
