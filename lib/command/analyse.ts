import { type AnalyseOptions, analyse } from '../analyse.ts';
import type { Season } from '../season/season.ts';
import { counted, joined } from '../words/numbers.ts';
import { openCountableSeason, statusOf } from './open-season.ts';
import type { CommandLine } from './options.ts';
import { analysisText } from './site-downloads.ts';
import { summaryText } from './summary-text.ts';
import { limitsOf } from './wishes.ts';
import type { World } from './world.ts';

/** The options of the analysis that the command line gives; defaults stay with the library. */
export function optionsOf(line: CommandLine, season: Season): AnalyseOptions {
  const { level, useOn, ageScale, worth, samePlants } = line;
  return {
    level,
    ...(useOn === undefined ? {} : { useOn }),
    ...(ageScale === undefined ? {} : { ageScale }),
    ...(worth === undefined ? {} : { worth }),
    ...(samePlants === undefined ? {} : { samePlants }),
    ...limitsOf(line, season),
  };
}

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
export function analyseFiles(line: CommandLine, world: World): 0 | 1 {
  const season = openCountableSeason(line, world);
  world.note('Working…\n');
  const analysis = analyse(season, optionsOf(line, season));
  world.print(line.json ? analysisText(analysis) : summaryText(analysis));
  world.warn(problemNote(season));
  return statusOf(season);
}
