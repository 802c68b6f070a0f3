/** What a command works on: the grower's season, or a coded copy of it with what keeps the copy safe. */

import { type AnalyseOptions, type Analysis, analyse } from '../analyse.ts';
import { findLeaks } from '../notebook/leaks.ts';
import type { SiteFile } from '../notebook/site.ts';
import { summaryOnly } from '../notebook/summary-only.ts';
import { type CodeKey, codeKeyText, newCodeKey, readCodeKey } from '../season/code-key.ts';
import { type CodedLevel, codedCopy, codedPlant } from '../season/coded-copy.ts';
import { codedFiles } from '../season/coded-files.ts';
import { addDays } from '../season/dates.ts';
import { readSeason } from '../season/read-season.ts';
import type { Season } from '../season/season.ts';
import { type Secret, secretsOf, singleCodes } from '../season/secrets.ts';
import type { SeasonText } from '../season/write-season.ts';
import { optionsOf } from './analysis-options.ts';
import { Failure } from './failure.ts';
import { openCountableSeason, orFail } from './open-season.ts';
import type { CommandLine } from './options.ts';
import type { World } from './world.ts';

const KEY_FILE = 'fruitodds-key.json';

/** A season and its analysis, ready to be shown. */
export interface SharedSeason {
  /** What the grower's files hold, for messages to the grower. */
  readonly own: Season;
  readonly season: Season;
  readonly analysis: Analysis;
  /** Null for the grower's own eyes. */
  readonly coded: Coded | null;
}

/** A coded copy before it is sealed. */
export interface Coded {
  readonly level: CodedLevel;
  readonly files: readonly SeasonText[];
  readonly key: CodeKey;
  readonly keyPath: string;
  readonly secrets: readonly Secret[];
}

/** The numbers that may be handed on: all of them, or for a summary those about all plants together. */
export function shownAnalysis({ analysis, coded }: SharedSeason): Analysis {
  return coded?.level === 'summary' ? summaryOnly(analysis) : analysis;
}

/** The key of before, a new one where no file stands there; any other file is left alone. */
function openKey(path: string, world: World): CodeKey {
  let text: string;
  try {
    text = new TextDecoder().decode(world.read(path));
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT')
      return newCodeKey(world.secret());
    return orFail('file-unreadable', path, () => {
      throw error;
    });
  }
  const key = readCodeKey(text);
  if (key === null) throw new Failure('key-not-ours', { file: path });
  return key;
}

function refuseSharedKey(path: string, { output }: CommandLine, world: World): void {
  if (output === undefined) return;
  if (world.same(path, output) || world.within(path, output))
    throw new Failure('key-shared', { file: path, folder: output });
}

function copyOf(season: Season, keyPath: string, world: World) {
  const key = openKey(keyPath, world);
  try {
    return codedCopy(season, key);
  } catch (error) {
    if (error instanceof RangeError) throw new Failure('dates-too-far', { file: keyPath });
    throw error;
  }
}

/** The options with names under codes and the day of use moved. */
function codedOptions({ useOn, must, atMost, ...rest }: AnalyseOptions, key: CodeKey): AnalyseOptions {
  const coded = (name: string): string => codedPlant(name, key);
  return {
    ...rest,
    ...(useOn === undefined ? {} : { useOn: addDays(useOn, key.shiftDays!) }),
    ...(must && {
      must: must.map((wish) => ({
        ...wish,
        seedParent: coded(wish.seedParent),
        pollenParent: coded(wish.pollenParent),
      })),
    }),
    ...(atMost && {
      atMost: atMost.map((wish) => ({
        ...wish,
        pollenParent: coded(wish.pollenParent),
        ...(wish.seedParent === undefined ? {} : { seedParent: coded(wish.seedParent) }),
      })),
    }),
  };
}

/** Rows of crosses that were left out for a fault, and so are not in the copy. */
function faulty({ files, crosses }: Season): number {
  return files
    .filter(({ kind }) => kind === 'crosses')
    .reduce((sum, { rows }) => sum + rows, -crosses.length);
}

/**
 * The coded copy of a season, its key and what must not stand in it. Nothing is written yet: `sealCopy` does.
 *
 * @throws Failure for a key that cannot be used, or would be shared
 */
export function codedParts(line: CommandLine, own: Season, world: World) {
  const keyPath = line.key ?? KEY_FILE;
  refuseSharedKey(keyPath, line, world);
  const { key, season } = copyOf(own, keyPath, world);
  const level = line.anonymous!;
  const secrets = [
    ...secretsOf(
      own,
      line.map.map(({ header }) => header),
    ),
    ...line.same.flat().map((value) => ({ what: 'the plant', value })),
    ...(line.settings ? [line.settings.file, line.settings.sha256] : []).map((value) => ({
      what: 'the settings',
      value,
    })),
    ...[line.useOn, line.asOf].flatMap((value) => (value === undefined ? [] : [{ what: 'the date', value }])),
    ...(level === 'summary' ? singleCodes(key) : []),
  ];
  const coded: Coded = { level, files: codedFiles({ season }), key, keyPath, secrets };
  return { coded, asOf: season.asOf };
}

function codedSeason(line: CommandLine, own: Season, world: World): SharedSeason {
  const { coded, asOf } = codedParts(line, own, world);
  const sources = coded.files.map(({ name, text }) => ({ name, bytes: new TextEncoder().encode(text) }));
  const season = readSeason(sources, { endpoint: line.endpoint, ...(asOf === null ? {} : { asOf }) });
  const analysis = analyse(season, codedOptions(optionsOf(line, own), coded.key));
  const provenance = { ...analysis.provenance, coded: { level: coded.level, rowsLeftOut: faulty(own) } };
  return { own, season, analysis: { ...analysis, provenance }, coded };
}

/**
 * Opens the files of a command line and works out what they say: of themselves, or of their coded copy.
 *
 * @throws Failure where nothing can be counted, and for a key that cannot be used
 */
export function openShared(line: CommandLine, world: World): SharedSeason {
  const own = openCountableSeason(line, world);
  if (line.anonymous !== undefined) return codedSeason(line, own, world);
  return { own, season: own, analysis: analyse(own, optionsOf(line, own)), coded: null };
}

/**
 * The last step before anything is written or printed: finished files of a coded copy are searched for what is the
 * grower's own, then the key is saved. Nothing happens where it is no coded copy.
 *
 * @throws Failure naming the file and the place of a leak
 */
export async function sealCopy(
  { coded }: Pick<SharedSeason, 'coded'>,
  finished: readonly SiteFile[],
  world: World,
): Promise<void> {
  if (coded === null) return;
  const shared = coded.level === 'codes' ? [...finished, ...coded.files] : finished;
  const leaks = findLeaks(shared, coded.secrets, await world.ownText());
  const [first] = leaks;
  if (first !== undefined) throw new Failure('leak-found', { ...first, more: leaks.length - 1 });
  const { keyPath, key } = coded;
  orFail('output-not-writable', keyPath, () => world.write(keyPath, codeKeyText(key)));
  world.warn(
    `The names are kept in ${keyPath}: do not share it. Use it again for the next copy, with --key.\n`,
  );
}
