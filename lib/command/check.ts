import type { Season } from '../season/season.ts';
import type { Words } from '../words/languages.ts';
import { checkCsv } from './check-csv.ts';
import { checkText } from './check-text.ts';
import { Failure } from './failure.ts';
import { filesJson } from './json.ts';
import { readFiles, refuseUnusable, statusOf } from './open-season.ts';
import type { CommandLine } from './options.ts';
import type { World } from './world.ts';

/** What was found, also where a question is open or no row can be used. JSON waits: there it stands beside the failure. */
function printFindings(season: Season, { json, csv }: CommandLine, world: World, words: Words): void {
  if (csv) world.print(checkCsv(season, words));
  else if (!json) world.print(checkText(season, words));
}

/** Why no row can be used stands in the text already; a question is asked again, for its answer is an option. */
function toldOnce(refuse: () => void, { commandWords }: Words): void {
  try {
    refuse();
  } catch (error) {
    if (!(error instanceof Failure) || error.code !== 'no-usable-row') throw error;
    const { files } = error.details;
    throw new Failure('no-usable-row', { files, remedy: commandWords.mendFirst });
  }
}

/** The command `check`: what is wrong in the files, all at once. */
export function check(line: CommandLine, world: World, words: Words): 0 | 1 {
  const season = readFiles(line, world, words);
  printFindings(season, line, world, words);
  if (line.json || line.csv) refuseUnusable(season, words);
  else toldOnce(() => refuseUnusable(season, words), words);
  if (line.json) world.print(`${JSON.stringify({ files: filesJson(season, words) }, null, 2)}\n`);
  return statusOf(season);
}
