import type { Season } from '../season/season.ts';
import { checkCsv } from './check-csv.ts';
import { checkText } from './check-text.ts';
import { filesJson } from './json.ts';
import { readFiles, refuseUnusable, statusOf } from './open-season.ts';
import type { CommandLine } from './options.ts';
import type { World } from './world.ts';

/** What was found, also where a question is open or no row can be used. JSON waits: there it stands beside the failure. */
function printFindings(season: Season, { json, csv }: CommandLine, world: World): void {
  if (csv) world.print(checkCsv(season));
  else if (!json) world.print(checkText(season));
}

/** The command `check`: what is wrong in the files, all at once. */
export function check(line: CommandLine, world: World): 0 | 1 {
  const season = readFiles(line, world);
  printFindings(season, line, world);
  refuseUnusable(season);
  if (line.json) world.print(`${JSON.stringify({ files: filesJson(season) }, null, 2)}\n`);
  return statusOf(season);
}
