import type { AnalyseOptions } from '../analyse.ts';
import type { Season } from '../season/season.ts';
import type { CommandLine } from './options.ts';
import { limitsOf } from './wishes.ts';

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
