/** What a command works on: the grower's season, or a coded copy of it with what keeps the copy safe. */

import { type Analysis, analyse } from '../analyse.ts';
import { findLeaks } from '../notebook/leaks.ts';
import type { SiteFile } from '../notebook/site.ts';
import { summaryOnly } from '../notebook/summary-only.ts';
import { type CodeKey, codeKeyText, newCodeKey, readCodeKey } from '../season/code-key.ts';
import type { Season } from '../season/season.ts';
import type { Words } from '../words/languages.ts';
import { optionsOf } from './analysis-options.ts';
import { type Coded, codedAnalysis, codedFrom } from './coded-season.ts';
import { Failure } from './failure.ts';
import { openCountableSeason, orFail } from './open-season.ts';
import type { CommandLine } from './options.ts';
import type { World } from './world.ts';

const KEY_FILE = 'fruitodds-key.json';

/** A coded copy and where its key is kept. */
type Sealable = Coded & { readonly keyPath: string };

/** A season and its analysis, ready to be shown. */
export interface SharedSeason {
  /** What the grower's files hold, for messages to the grower. */
  readonly own: Season;
  readonly season: Season;
  readonly analysis: Analysis;
  /** Null for the grower's own eyes. */
  readonly coded: Sealable | null;
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

/**
 * The coded copy of a season, its key and what must not stand in it. Nothing is written yet: `sealCopy` does.
 *
 * @throws Failure for a key that cannot be used, or would be shared
 */
export function codedParts(line: CommandLine, own: Season, world: World): Sealable {
  const keyPath = line.key ?? KEY_FILE;
  refuseSharedKey(keyPath, line, world);
  const key = openKey(keyPath, world);
  return { ...codedFrom(own, { ...line, level: line.anonymous! }, key, keyPath), keyPath };
}

function codedSeason(line: CommandLine, own: Season, world: World): SharedSeason {
  const coded = codedParts(line, own, world);
  return { own, ...codedAnalysis(own, coded, optionsOf(line, own)), coded };
}

/**
 * Opens the files of a command line and works out what they say: of themselves, or of their coded copy.
 *
 * @throws Failure where nothing can be counted, and for a key that cannot be used
 */
export function openShared(line: CommandLine, world: World, words: Words): SharedSeason {
  const own = openCountableSeason(line, world, words);
  if (line.anonymous !== undefined) return codedSeason(line, own, world);
  return { own, season: own, analysis: analyse(own, optionsOf(line, own)), coded: null };
}

/** A text without some pieces of it; their lines stay, so that a place in what is left is its place in the whole. */
function without(pieces: readonly string[], text: string): string {
  return pieces.reduce((left, piece) => left.replaceAll(piece, () => piece.replaceAll(/[^\n]/g, '')), text);
}

/**
 * The last step before anything is written or printed: finished files of a coded copy are searched for what is the
 * grower's own, then the key is saved. Nothing happens where it is no coded copy.
 *
 * @param words of the files: what they say of themselves is no leak
 * @param constant pieces of the files that are the same whatever the season: libraries hold too many words to search
 * @throws Failure naming the file and the place of a leak
 */
export async function sealCopy(
  { coded }: Pick<SharedSeason, 'coded'>,
  finished: readonly SiteFile[],
  world: World,
  words: Words,
  constant: readonly string[] = [],
): Promise<void> {
  if (coded === null) return;
  const varying = finished.map(({ name, text }) => ({ name, text: without(constant, text) }));
  const shared = coded.level === 'codes' ? [...varying, ...coded.files] : varying;
  const leaks = findLeaks(shared, coded.secrets, await world.ownText(words.languageWords.code));
  const [first] = leaks;
  if (first !== undefined) throw new Failure('leak-found', { ...first, more: leaks.length - 1 });
  const { keyPath, key } = coded;
  orFail('output-not-writable', keyPath, () => world.write(keyPath, codeKeyText(key)));
  world.warn(`${words.commandWords.keyKept(keyPath)}\n`);
}
