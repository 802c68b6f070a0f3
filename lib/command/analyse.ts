import { latestDate } from '../season/dates.ts';
import type { Season } from '../season/season.ts';
import type { Words } from '../words/languages.ts';
import { statusOf } from './open-season.ts';
import type { CommandLine } from './options.ts';
import { openShared, sealCopy, shownAnalysis } from './shared-season.ts';
import { analysisText } from './site-downloads.ts';
import { summaryText } from './summary-text.ts';
import type { World } from './world.ts';

/** Errors and warnings in the files, and where to read them; empty where there are none. */
function problemNote(season: Season, { commandWords }: Words): string {
  const problems = season.files.flatMap((file) => file.problems);
  const count = (severity: string) => problems.filter((problem) => problem.severity === severity).length;
  return lineOf(commandWords.problems(count('error'), count('warning')));
}

/** Says where stored pollen is to be used on a day that is past already, as one kept in the settings soon is; else empty. */
function useOnNote({ useOn }: CommandLine, { crosses }: Season, { commandWords }: Words): string {
  const last = latestDate(crosses.map(({ pollinationDate }) => pollinationDate));
  if (useOn === undefined || last === null || useOn >= last) return '';
  return lineOf(commandWords.useOnPast(useOn, last));
}

const lineOf = (said: string): string => (said === '' ? '' : `${said}\n`);

/** What the grower should know besides the result: a day of use that is past, and what is wrong in the files. */
export function notesOn(line: CommandLine, season: Season, words: Words): string {
  return useOnNote(line, season, words) + problemNote(season, words);
}

/** The command `analyse`: the numbers of the files, as text or as JSON. */
export async function analyseFiles(line: CommandLine, world: World, words: Words): Promise<0 | 1> {
  world.note(`${words.commandWords.working}\n`);
  const shared = openShared(line, world, words);
  const analysis = shownAnalysis(shared);
  const name = line.json ? 'results.json' : 'results.txt';
  const text = line.json ? analysisText(analysis, words) : summaryText(analysis, words);
  await sealCopy(shared, [{ name, text }], world, words);
  world.print(text);
  world.warn(notesOn(line, shared.own, words));
  return statusOf(shared.own);
}
