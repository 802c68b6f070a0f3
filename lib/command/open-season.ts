import { type Refusal, uncountable, unusable } from '../analysis/refusal.ts';
import { type ReadOptions, readSeason } from '../season/read-season.ts';
import type { FileKind, Season } from '../season/season.ts';
import type { SeasonSource } from '../season/sheet.ts';
import * as english from '../words/index.ts';
import type { Words } from '../words/languages.ts';
import { Failure } from './failure.ts';
import { filesJson } from './json.ts';
import type { CommandLine } from './options.ts';
import type { World } from './world.ts';

const STANDARD_INPUT = '-';

function systemCode(error: unknown): string {
  if (error instanceof Error && 'code' in error && typeof error.code === 'string') return error.code;
  return error instanceof Error ? error.message : String(error);
}

/** Runs what may be refused by the system; a refusal becomes the failure that names the file. */
export function orFail<T>(code: 'file-unreadable' | 'output-not-writable', file: string, run: () => T): T {
  try {
    return run();
  } catch (error) {
    if (error instanceof Failure) throw error;
    throw new Failure(code, { file, cause: systemCode(error) });
  }
}

/** What standard input is called; programs find the same name in every language. */
const inputName = ({ json }: CommandLine, { commandWords }: Words): string =>
  (json ? english.commandWords : commandWords).standardInput;

function readSource(path: string, kind: FileKind, input: string, world: World): SeasonSource {
  const name = path === STANDARD_INPUT ? input : path;
  const read = () => (path === STANDARD_INPUT ? world.readInput() : world.read(path));
  const bytes = orFail('file-unreadable', name, read);
  return { name, kind, bytes, sha256: world.sha256(bytes) };
}

function readSources(line: CommandLine, world: World, words: Words): SeasonSource[] {
  const { files, vials, flowers } = line;
  const input = inputName(line, words);
  const paths = [...files, ...vials, ...flowers];
  if (paths.filter((path) => path === STANDARD_INPUT).length > 1) throw new Failure('standard-input-twice');
  return [
    ...files.map((path) => readSource(path, 'unknown', input, world)),
    ...vials.map((path) => readSource(path, 'vials', input, world)),
    ...flowers.map((path) => readSource(path, 'flowers', input, world)),
  ];
}

/**
 * Never writes over what is read.
 *
 * @throws Failure where the output is one of the files of the command line
 */
export function refuseOverwriting(
  { files, vials, flowers }: CommandLine,
  output: string,
  world: World,
): void {
  const overwritten = [...files, ...vials, ...flowers].some(
    (path) => path !== '-' && world.same(path, output),
  );
  if (overwritten) throw new Failure('output-is-input', { file: output });
}

/** Names by which another program would open the file, and find it broken. */
const OTHER_KINDS = /\.(pdf|xlsx|xls|ods|numbers|docx|doc|odt|rtf|json|tsv|txt|png|jpg)$/i;

/**
 * A page called report.pdf opens in nothing.
 *
 * @throws Failure where the name of the output promises another kind of file than is written
 */
export function refuseOtherKind({ command }: CommandLine, output: string): void {
  if (OTHER_KINDS.test(output) || (command === 'report' && /\.csv$/i.test(output))) {
    throw new Failure('output-other-kind', { file: output, command });
  }
}

function readOptions({
  asOf,
  endpoint,
  dateOrder,
  dateSystem,
  map,
  same,
  storage,
  settings,
}: CommandLine): ReadOptions {
  return {
    endpoint,
    map: new Map(map.map(({ header, column }) => [header, column])),
    same,
    storage: new Map(storage.map(({ word, method }) => [word, method])),
    ...(asOf === undefined ? {} : { asOf }),
    ...(dateOrder === undefined ? {} : { dateOrder }),
    ...(dateSystem === undefined ? {} : { dateSystem }),
    ...(settings === undefined ? {} : { settings }),
  };
}

/** Stops where nothing can be done with the files. */
function stopAt(refusal: Refusal | null, season: Season, words: Words): void {
  if (refusal === null) return;
  throw new Failure(refusal.code, words.refusalDetails(refusal, season), filesJson(season, words));
}

/**
 * Stops where only the grower can answer, or where nothing at all could be read.
 *
 * @throws Failure where a question is open or no file gives a single row
 */
export function refuseUnusable(season: Season, words: Words = english): void {
  stopAt(unusable(season), season, words);
}

/**
 * Reads the files that a command line names, whatever is wrong in them.
 *
 * @throws Failure where a file cannot be read
 */
export function readFiles(line: CommandLine, world: World, words: Words = english): Season {
  return readSeason(readSources(line, world, words), readOptions(line));
}

/**
 * Reads the files that a command line names, as far as they can be used.
 *
 * @throws Failure where a file cannot be read, a question is open or no file gives a single row
 */
export function openSeason(line: CommandLine, world: World, words: Words = english): Season {
  const season = readFiles(line, world, words);
  refuseUnusable(season, words);
  return season;
}

/**
 * The same for commands that count flowers.
 *
 * @throws Failure besides, where there is no crosses file, no cross, or no cross with a known outcome
 */
export function openCountableSeason(line: CommandLine, world: World, words: Words = english): Season {
  const season = openSeason(line, world, words);
  stopAt(uncountable(season), season, words);
  return season;
}

/** Exit status 1 where anything was found that the grower should look at. */
export function statusOf(season: Season): 0 | 1 {
  const problems = season.files.flatMap((file) => file.problems);
  return problems.some(({ severity }) => severity !== 'notice') ? 1 : 0;
}
