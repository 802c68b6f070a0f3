/** What `check` tells people: file by file, errors first, grouped by what mends them. */

import type { Season, SeasonFile } from '../season/season.ts';
import { fileFindings, type ProblemGroup } from '../words/file-findings.ts';
import { counted, wholeNumber } from '../words/numbers.ts';

function rowsText({ kind, rows, used, leftOut }: SeasonFile): string {
  const what = kind === 'unknown' ? 'not one of our files' : kind;
  return `${what}, ${counted(rows, 'row')}, ${wholeNumber(used)} used, ${wholeNumber(leftOut)} left out`;
}

function groupText({ faults, fix }: ProblemGroup): string {
  const said = faults.map(
    ({ message, more }) => `    ${message}
${
  more &&
  `      ${more}
`
}`,
  );
  return `${said.join('')}    To mend: ${fix}\n`;
}

function section(title: string, parts: readonly string[]): string {
  return parts.length === 0 ? '' : `\n  ${title}\n${parts.join('\n')}`;
}

function fileText(file: SeasonFile): string {
  const { groups, notices } = fileFindings(file);
  const of = (severity: ProblemGroup['severity']) =>
    groups.filter((group) => group.severity === severity).map(groupText);
  const nothing = groups.length + notices.length === 0 ? '  Nothing to mend.\n' : '';
  return [
    `${file.file}: ${rowsText(file)}\n${nothing}`,
    section('Errors: what they name is left out', of('error')),
    section('Warnings: the rows are used', of('warning')),
    section('Noticed: nothing to mend if it is right', notices.length === 0 ? [] : [noticesText(notices)]),
  ].join('');
}

function noticesText(notices: readonly string[]): string {
  return notices.map((notice) => `    ${notice}\n`).join('');
}

/** What was found in each file. */
export function checkText(season: Season): string {
  return season.files.map(fileText).join('\n');
}
