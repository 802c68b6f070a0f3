import type { Problem, Season, SeasonFile } from '../season/season.ts';
import { problemWords } from '../words/english-problems.ts';
import { counted, wholeNumber } from '../words/numbers.ts';
import { alsoInRows, problemGroups } from '../words/problem-groups.ts';
import { filesJson } from './json.ts';
import { openSeason, statusOf } from './open-season.ts';
import type { CommandLine } from './options.ts';
import type { World } from './world.ts';

function groupText(group: readonly Problem[]): string {
  const [first] = group;
  const { message, fix } = problemWords(first!);
  const others = alsoInRows(group);
  return `  ${first!.severity.padEnd(9)}${message}\n${others && `    ${others}\n`}    ${fix}\n`;
}

function rowsText({ kind, rows, used, leftOut }: SeasonFile): string {
  const what = kind === 'unknown' ? 'not one of our files' : kind;
  return `${what}, ${counted(rows, 'row')}, ${wholeNumber(used)} used, ${wholeNumber(leftOut)} left out`;
}

/** What was found in each file, errors first, like faults together. */
export function checkText(season: Season): string {
  return season.files
    .map((file) => {
      const groups = problemGroups(file.problems);
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
