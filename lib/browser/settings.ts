import type { AnalyseOptions } from '../analyse.ts';
import { isIsoDate } from '../season/dates.ts';
import type { DateOrder, Endpoint, FileKind } from '../season/season.ts';
import type { SeasonSource } from '../season/sheet.ts';
import { OWN_SEASON } from '../words/own-season.ts';
import type { ChosenFile } from './chosen-files.ts';
import type { Job } from './messages.ts';

/** What the grower answered about the files. */
export interface Answers {
  /** What a file is, by its name. */
  readonly kinds: ReadonlyMap<string, FileKind>;
  /** From their headers to our columns. */
  readonly map: ReadonlyMap<string, string>;
  readonly dateOrder: DateOrder | null;
  readonly samePlants: boolean;
}

export const NO_ANSWERS: Answers = { kinds: new Map(), map: new Map(), dateOrder: null, samePlants: false };

/** The settings as they stand in the form: text, blank where nothing is said. */
export interface Settings {
  /** Of 100 flowers. */
  readonly worth: string;
  readonly useOn: string;
  readonly endpoint: Endpoint;
  /** Flowers expected next season, by seed parent. */
  readonly expected: ReadonlyMap<string, string>;
}

export const NO_SETTINGS: Settings = { worth: '', useOn: '', endpoint: 'initial', expected: new Map() };

/** Of 100 flowers, as a proportion: by moving the decimal point, so that it is the number a command line would hold. */
function worthOf(text: string): number | null {
  return /^\d*\.?\d+$/.test(text.trim()) ? Number(`${text.trim()}e-2`) : null;
}

/** What is wrong with the settings, in sentences; empty where nothing is. */
export function settingsFaults({ worth, useOn, expected }: Settings): string[] {
  const share = worth.trim() === '' ? 0.5 : worthOf(worth);
  const faults = [...expected].filter(([, flowers]) => !/^\d*$/.test(flowers.trim()));
  return [
    ...(share === null || !(share > 0 && share < 1) ? [OWN_SEASON.wrongWorth] : []),
    ...(useOn !== '' && !isIsoDate(useOn) ? [OWN_SEASON.wrongUseOn] : []),
    ...faults.map(([plant]) => OWN_SEASON.wrongFlowers(plant)),
  ];
}

/** The options of `analyse` that the settings and answers give; what was left blank keeps the library's default. */
export function analyseOptions({ worth, useOn }: Settings, { samePlants }: Answers): AnalyseOptions {
  const share = worthOf(worth);
  return {
    level: 0.95,
    ...(useOn === '' ? {} : { useOn }),
    ...(share === null ? {} : { worth: share }),
    ...(samePlants ? { samePlants } : {}),
  };
}

function quoted(cell: string): string {
  return /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}

/** The flowers typed in as a file that the command reads alike; null where none was. */
export function flowersFile({ expected }: Settings): string | null {
  const rows = [...expected].filter(([, flowers]) => flowers.trim() !== '');
  if (rows.length === 0) return null;
  return [
    'seed_parent,flowers',
    ...rows.map(([plant, flowers]) => `${quoted(plant)},${flowers.trim()}`),
    '',
  ].join('\n');
}

/** The sources of a task: the chosen files that could be read, then the flowers that were typed in. */
function sourcesOf(files: readonly ChosenFile[], answers: Answers, settings: Settings): SeasonSource[] {
  const sources = files.flatMap(({ name, bytes }): SeasonSource[] => {
    const kind = answers.kinds.get(name);
    return bytes === null ? [] : [{ name, bytes, ...(kind === undefined ? {} : { kind }) }];
  });
  const typed = flowersFile(settings);
  if (typed === null) return sources;
  return [...sources, { name: OWN_SEASON.flowersName, bytes: new TextEncoder().encode(typed) }];
}

/** The task of reading the files, and of analysing them where `analyse` says so. */
export function jobOf(
  files: readonly ChosenFile[],
  answers: Answers,
  settings: Settings,
  analyse: boolean,
): Omit<Job, 'number'> {
  const { map, dateOrder } = answers;
  return {
    sources: sourcesOf(files, answers, settings),
    read: { endpoint: settings.endpoint, map: [...map], ...(dateOrder === null ? {} : { dateOrder }) },
    analyse: analyse ? analyseOptions(settings, answers) : null,
  };
}
