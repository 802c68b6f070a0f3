import { latestDate } from '../season/dates.ts';
import type { Season } from '../season/season.ts';
import { counted, joined } from '../words/numbers.ts';
import { statusOf } from './open-season.ts';
import type { CommandLine } from './options.ts';
import { openShared, sealCopy, shownAnalysis } from './shared-season.ts';
import { analysisText } from './site-downloads.ts';
import { summaryText } from './summary-text.ts';
import type { World } from './world.ts';

/** How many errors and warnings the files hold, and where to read them; empty where there are none. */
function problemNote(season: Season): string {
  const problems = season.files.flatMap((file) => file.problems);
  const count = (severity: string) => problems.filter((problem) => problem.severity === severity).length;
  const found = [
    [count('error'), 'error'],
    [count('warning'), 'warning'],
  ] as const;
  const parts = found.filter(([number]) => number > 0).map(([number, noun]) => counted(number, noun));
  return parts.length === 0
    ? ''
    : `fruitodds: ${joined(parts)} in the files; fruitodds check names each of them.\n`;
}

/** Says where stored pollen is to be used on a day that is past already, as one kept in the settings soon is; else empty. */
function useOnNote({ useOn }: CommandLine, { crosses }: Season): string {
  const last = latestDate(crosses.map(({ pollinationDate }) => pollinationDate));
  if (useOn === undefined || last === null || useOn >= last) return '';
  return (
    `fruitodds: --use-on ${useOn} lies before the last pollination, ${last}: vials are advised on for a day that is past. ` +
    'Give a later --use-on, or take it out of the settings.\n'
  );
}

/** What the grower should know besides the result: a day of use that is past, and what is wrong in the files. */
export function notesOn(line: CommandLine, season: Season): string {
  return useOnNote(line, season) + problemNote(season);
}

/** The command `analyse`: the numbers of the files, as text or as JSON. */
export async function analyseFiles(line: CommandLine, world: World): Promise<0 | 1> {
  world.note('Working…\n');
  const shared = openShared(line, world);
  const analysis = shownAnalysis(shared);
  const name = line.json ? 'results.json' : 'results.txt';
  const text = line.json ? analysisText(analysis) : summaryText(analysis);
  await sealCopy(shared, [{ name, text }], world);
  world.print(text);
  world.warn(notesOn(line, shared.own));
  return statusOf(shared.own);
}
