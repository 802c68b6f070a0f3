import type { Season } from '../season/season.ts';
import { checkCsv } from './check-csv.ts';
import { checkText } from './check-text.ts';
import { Failure } from './failure.ts';
import { filesJson } from './json.ts';
import { readFiles, refuseUnusable, statusOf } from './open-season.ts';
import type { CommandLine } from './options.ts';
import type { World } from './world.ts';

/** What was found, also where a question is open or no row can be used. JSON waits: there it stands beside the failure. */
function printFindings(season: Season, { json, csv }: CommandLine, world: World): void {
  if (csv) world.print(checkCsv(season));
  else if (!json) world.print(checkText(season));
}

/** Why no row can be used stands in the text already; a question is asked again, for its answer is an option. */
function toldOnce(refuse: () => void): void {
  try {
    refuse();
  } catch (error) {
    if (!(error instanceof Failure) || error.code !== 'no-usable-row') throw error;
    const { files } = error.details;
    throw new Failure('no-usable-row', { files, remedy: 'Mend what check has named, and run it again.' });
  }
}

/** The command `check`: what is wrong in the files, all at once. */
export function check(line: CommandLine, world: World): 0 | 1 {
  const season = readFiles(line, world);
  printFindings(season, line, world);
  if (line.json || line.csv) refuseUnusable(season);
  else toldOnce(() => refuseUnusable(season));
  if (line.json) world.print(`${JSON.stringify({ files: filesJson(season) }, null, 2)}\n`);
  return statusOf(season);
}
