import type { AgeScale } from '../analysis/models.ts';
import type { MixName } from '../decisions/mix.ts';
import type { CodedLevel } from '../season/coded-copy.ts';
import type { DateSystem } from '../season/date-cell.ts';
import type { DateOrder, Endpoint } from '../season/season.ts';
import type { SeasonText } from '../season/write-season.ts';
import type { Language } from '../words/language.ts';
import { LANGUAGES } from '../words/languages.ts';
import { Failure } from './failure.ts';
import { nearest } from './nearest.ts';
import { OPTION_RULES } from './option-rules.ts';
import {
  choice,
  date,
  dateSystem,
  fail,
  given,
  type HeaderMap,
  headerMap,
  namesOfOne,
  one,
  type StorageWord,
  share,
  storageWord,
  type Values,
} from './option-values.ts';
import { valuesOf } from './option-words.ts';
import { overSettings, type Settings, settingsText } from './settings.ts';
import { type Wishes, wishOf } from './wishes.ts';

export type CommandName = 'check' | 'analyse' | 'report' | 'site' | 'sheet' | 'clean' | 'template';

/** The command line, read and checked. What is left out is undefined, so that defaults stay with the library. */
export interface CommandLine extends Wishes {
  readonly command: CommandName;
  readonly files: readonly string[];
  readonly vials: readonly string[];
  readonly flowers: readonly string[];
  readonly json: boolean;
  /** `check` only: its findings as CSV. */
  readonly csv?: true;
  /** `sheet` only: the mix it carries out. */
  readonly mix?: MixName;
  readonly useOn?: string;
  readonly asOf?: string;
  readonly dateOrder?: DateOrder;
  readonly dateSystem?: DateSystem;
  readonly map: readonly HeaderMap[];
  /** Lists of names of one plant. */
  readonly same: readonly (readonly string[])[];
  /** What words of storage mean. */
  readonly storage: readonly StorageWord[];
  readonly level: number;
  readonly endpoint: Endpoint;
  readonly ageScale?: AgeScale;
  readonly worth?: number;
  /** A coded copy is made, with everything in it or without what is about single plants. */
  readonly anonymous?: CodedLevel;
  /** The file of its key. */
  readonly key?: string;
  readonly output?: string;
  /** The file of settings that options were taken from. */
  readonly settings?: Pick<Settings, 'file' | 'sha256'>;
  /** Where to save settings, and their text. */
  readonly saveSettings?: SeasonText;
  /** Of all that people read; English where left out. */
  readonly language?: Exclude<Language, 'en'>;
}

const COMMANDS: readonly CommandName[] = ['check', 'analyse', 'report', 'site', 'sheet', 'clean', 'template'];
/** Commands whose result can be handed on as a coded copy. */
const SHARING: readonly CommandName[] = ['analyse', 'report', 'site', 'clean'];
/** Commands that write where -o says; `template` prints without it. */
const WRITING: readonly CommandName[] = ['report', 'site', 'sheet', 'clean'];

function commandOf(word: string | undefined): CommandName {
  if (word === undefined) throw new Failure('command-missing');
  const command = COMMANDS.find((known) => known === word);
  if (command) return command;
  throw new Failure('command-unknown', { command: word, nearest: nearest(word, COMMANDS) });
}

/** Undefined for English. */
function languageOf(values: Values): CommandLine['language'] {
  const language = choice(values, 'language', LANGUAGES);
  return language === 'en' ? undefined : language;
}

/** The files to be read: at least one, except that a template reads none. */
function checkFiles(files: readonly string[], command: CommandName): void {
  const [first] = files;
  if (command === 'template' && first !== undefined) throw new Failure('file-not-expected', { file: first });
  if (command !== 'template' && (first === undefined || files.includes('')))
    throw new Failure('file-missing', { command });
}

function outputOf(values: Values, command: CommandName): string | undefined {
  const output = one(values, 'output');
  if (output !== undefined && !WRITING.includes(command) && command !== 'template') {
    throw new Failure('option-not-for-command', { option: '-o', command, use: 'report, site' });
  }
  if (output === undefined && WRITING.includes(command)) throw new Failure('output-missing', { command });
  return output === '-' ? fail('output', output, 'file-name') : output;
}

function mixFor(values: Values, command: CommandName): MixName | undefined {
  const mix = choice(values, 'mix', ['most-fruit', 'balanced', 'most-varieties'] as const);
  if (mix === undefined || command === 'sheet') return mix;
  throw new Failure('option-not-for-command', { option: '--mix', command, use: 'sheet' });
}

function asCsv(values: Values, command: CommandName): true | undefined {
  if (!values.has('csv')) return undefined;
  if (command !== 'check')
    throw new Failure('option-not-for-command', { option: '--csv', command, use: 'check' });
  if (values.has('json')) throw new Failure('options-exclude', { option: '--csv', other: '--json' });
  return true;
}

/** Where to save what was said, once the command is done. */
function saving(values: Values): SeasonText | undefined {
  const name = one(values, 'save-settings');
  return name === undefined ? undefined : { name, text: settingsText(values) };
}

/** A value that cannot be meant is told with the file of settings where it stands there and not on the command line. */
function told(error: unknown, typed: Values, settings: Settings | null): unknown {
  if (settings === null || !(error instanceof Failure) || error.code !== 'option-value') return error;
  const name = String(error.details.option).replace(/^--/, '');
  return typed.has(name) ? error : new Failure(error.code, { ...error.details, file: settings.file });
}

function noSettings(file: string): never {
  throw new Failure('file-unreadable', { file, cause: 'ENOENT' });
}

/** Whether a coded copy is meant, and where its key is kept. */
function sharing(values: Values, command: CommandName): { anonymous?: CodedLevel; key?: string } {
  const key = one(values, 'key');
  const said = one(values, 'anonymous');
  if (said === undefined && key !== undefined) throw new Failure('key-without-anonymous');
  if (said === undefined) return {};
  if (!SHARING.includes(command))
    throw new Failure('option-not-for-command', {
      option: '--anonymous',
      command,
      use: 'analyse, report, site, clean',
    });
  const anonymous = said === '' ? 'codes' : choice(values, 'anonymous', ['codes', 'summary'] as const)!;
  return { anonymous, ...(key === undefined ? {} : { key }) };
}

/**
 * Reads and checks the command line.
 *
 * @param argv the words after `fruitodds`
 * @param openSettings reads the file that `--settings` names
 * @returns the command with its options, or `help` or `version` where that is asked for, whatever else stands there
 * @throws Failure where a word, an option or its value cannot be meant
 * @example
 * readCommandLine(['check', 'crosses.csv', '--json']); // { command: 'check', files: ['crosses.csv'], json: true, … }
 */
export function readCommandLine(
  argv: readonly string[],
  openSettings: (file: string) => Settings = noSettings,
): CommandLine | 'help' | 'version' {
  const { values, words } = valuesOf(argv, OPTION_RULES);
  if (values.has('help') || words[0] === 'help') return 'help';
  if (values.has('version')) return 'version';
  const [word, ...files] = words;
  const command = commandOf(word);
  checkFiles(files, command);
  const file = one(values, 'settings');
  const settings = file === undefined ? null : openSettings(file);
  try {
    return lineOf(
      command,
      files,
      settings === null ? values : overSettings(settings.values, values),
      settings,
    );
  } catch (error) {
    throw told(error, values, settings);
  }
}

function lineOf(
  command: CommandName,
  files: readonly string[],
  values: Values,
  settings: Settings | null,
): CommandLine {
  const output = outputOf(values, command);
  return {
    command,
    files,
    vials: values.get('vials') ?? [],
    flowers: values.get('flowers') ?? [],
    json: values.has('json'),
    map: (values.get('map') ?? []).map(headerMap),
    same: (values.get('same') ?? []).map(namesOfOne),
    storage: (values.get('storage') ?? []).map(storageWord),
    level: share(values, 'level', '0.95') ?? 0.95,
    endpoint: choice(values, 'endpoint', ['initial', 'final'] as const) ?? 'initial',
    ...sharing(values, command),
    ...given({
      useOn: date(values, 'use-on'),
      asOf: date(values, 'as-of'),
      dateSystem: dateSystem(values),
      dateOrder: choice(values, 'date-order', ['dmy', 'mdy', 'ymd'] as const),
      ageScale: choice(values, 'age-scale', ['days', 'log1p-days'] as const),
      worth: share(values, 'worth'),
      csv: asCsv(values, command),
      mix: mixFor(values, command),
      language: languageOf(values),
      samePlants: values.has('same-plants') ? (true as const) : undefined,
      must: values.get('must')?.map((text) => wishOf('--must', text)),
      atMost: values.get('at-most')?.map((text) => wishOf('--at-most', text)),
      settings: settings === null ? undefined : { file: settings.file, sha256: settings.sha256 },
      saveSettings: saving(values),
      output,
    }),
  };
}
