import type { Problem, Season, SeasonFile } from '../season/season.ts';
import { problemWords } from '../words/english-problems.ts';
import { counted, wholeNumber } from '../words/numbers.ts';
import { filesJson } from './json.ts';
import { openSeason, statusOf } from './open-season.ts';
import type { CommandLine } from './options.ts';
import type { World } from './world.ts';

/** How many lines with the same fault are listed before the rest is only counted. */
const LISTED = 8;
const SEVERITIES: readonly Problem['severity'][] = ['error', 'warning', 'notice'];

/** Errors or warnings of one code and column together; each notice tells of another word or column, so stands alone. */
function alike(problems: readonly Problem[]): Problem[][] {
  const groups: Problem[][] = [];
  for (const problem of problems) {
    const { severity, code, column } = problem;
    const group = groups.find(
      ([first]) => severity !== 'notice' && first!.code === code && first!.column === column,
    );
    if (group === undefined) groups.push([problem]);
    else group.push(problem);
  }
  return groups;
}

/** Other rows with the same fault: "also in rows 14, 15 and 3 more". */
function others(group: readonly Problem[]): string {
  const rows = [...new Set(group.slice(1).map(({ row }) => row))].filter((row) => row !== group[0]!.row);
  if (rows.length === 0) return '';
  const listed = rows.slice(0, LISTED).map(wholeNumber).join(', ');
  const rest = rows.length > LISTED ? ` and ${wholeNumber(rows.length - LISTED)} more` : '';
  return `    Also in ${rows.length === 1 ? 'row' : 'rows'} ${listed}${rest}.\n`;
}

function groupText(group: readonly Problem[]): string {
  const [first] = group;
  const { message, fix } = problemWords(first!);
  return `  ${first!.severity.padEnd(9)}${message}\n${others(group)}    ${fix}\n`;
}

function rowsText({ kind, rows, used, leftOut }: SeasonFile): string {
  const what = kind === 'unknown' ? 'not one of our files' : kind;
  return `${what}, ${counted(rows, 'row')}, ${wholeNumber(used)} used, ${wholeNumber(leftOut)} left out`;
}

/** What was found in each file, errors first, like faults together. */
export function checkText(season: Season): string {
  return season.files
    .map((file) => {
      const groups = SEVERITIES.flatMap((severity) =>
        alike(file.problems.filter((problem) => problem.severity === severity)),
      );
      const found = groups.length === 0 ? '  nothing to mend\n' : groups.map(groupText).join('');
      return `${file.file}: ${rowsText(file)}\n${found}`;
    })
    .join('\n');
}

/** The command `check`: what is wrong in the files, line by line. */
export function check(line: CommandLine, world: World): 0 | 1 {
  const season = openSeason(line, world);
  world.print(line.json ? `${JSON.stringify({ files: filesJson(season) }, null, 2)}\n` : checkText(season));
  return statusOf(season);
}
