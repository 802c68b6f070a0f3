/** What the page knows becomes a task for the Worker. */

import type { AnalyseOptions } from '../analyse.ts';
import type { SeasonSource } from '../season/sheet.ts';
import { FILE_NAMES } from '../words/told/file-names.ts';
import type { ChosenFile } from './chosen-files.ts';
import type { Job, PlainReadOptions } from './messages.ts';
import { type Answers, flowersFile, type Settings, shareOf } from './settings.ts';

/** The options of `analyse` that the settings and answers give; what was left blank keeps the library's default. */
export function analyseOptions(
  { worth, useOn, level, ageScale }: Settings,
  { samePlants }: Answers,
): AnalyseOptions {
  const share = shareOf(worth);
  return {
    level: shareOf(level) ?? 0.95,
    ...(useOn === '' ? {} : { useOn }),
    ...(ageScale === null ? {} : { ageScale }),
    ...(share === null ? {} : { worth: share }),
    ...(samePlants ? { samePlants } : {}),
  };
}

function readOptions(
  { endpoint, asOf, dateSystem, same, storage, map, file }: Settings,
  { map: answered, dateOrder }: Answers,
): PlainReadOptions {
  return {
    endpoint,
    map: [...answered, ...map],
    same,
    ...(storage.length === 0 ? {} : { storage: storage.map(({ word, method }) => [word, method] as const) }),
    ...(asOf === '' ? {} : { asOf }),
    ...(dateOrder === null ? {} : { dateOrder }),
    ...(dateSystem === null ? {} : { dateSystem }),
    ...(file === null ? {} : { settings: file }),
  };
}

/** The sources of a task: the chosen files that could be read, then the flowers that were typed in. */
function sourcesOf(files: readonly ChosenFile[], answers: Answers, settings: Settings): SeasonSource[] {
  const sources = files.flatMap(({ name, bytes }): SeasonSource[] => {
    const kind = answers.kinds.get(name);
    return bytes === null ? [] : [{ name, bytes, ...(kind === undefined ? {} : { kind }) }];
  });
  const typed = flowersFile(settings);
  if (typed === null) return sources;
  return [...sources, { name: FILE_NAMES.flowers, bytes: new TextEncoder().encode(typed) }];
}

/** The task of reading the files, and of analysing them where `analyse` says so. */
export function taskOf(
  files: readonly ChosenFile[],
  answers: Answers,
  settings: Settings,
  analyse: boolean,
): Omit<Job, 'number'> {
  const { must, atMost } = settings;
  return {
    sources: sourcesOf(files, answers, settings),
    read: readOptions(settings, answers),
    analyse: analyse ? analyseOptions(settings, answers) : null,
    wishes: { must, atMost },
    share: null,
  };
}
