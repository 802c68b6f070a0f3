import type { Season } from '../season/season.ts';
import { counted, joined } from '../words/numbers.ts';
import { statusOf } from './open-season.ts';
import type { CommandLine } from './options.ts';
import { openShared, sealCopy, shownAnalysis } from './shared-season.ts';
import { analysisText } from './site-downloads.ts';
import { summaryText } from './summary-text.ts';
import type { World } from './world.ts';

/** How many errors and warnings the files hold, and where to read them; empty where there are none. */
export function problemNote(season: Season): string {
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

/** The command `analyse`: the numbers of the files, as text or as JSON. */
export async function analyseFiles(line: CommandLine, world: World): Promise<0 | 1> {
  world.note('Working…\n');
  const shared = openShared(line, world);
  const analysis = shownAnalysis(shared);
  const name = line.json ? 'results.json' : 'results.txt';
  const text = line.json ? analysisText(analysis) : summaryText(analysis);
  await sealCopy(shared, [{ name, text }], world);
  world.print(text);
  world.warn(problemNote(shared.own));
  return statusOf(shared.own);
}
