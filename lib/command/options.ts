import { parseArgs } from 'node:util';
import type { AgeScale } from '../analysis/models.ts';
import { COLUMNS, KINDS } from '../season/columns.ts';
import type { DateSystem } from '../season/date-cell.ts';
import { isIsoDate } from '../season/dates.ts';
import type { DateOrder, Endpoint } from '../season/season.ts';
import { Failure } from './failure.ts';
import { nearest } from './nearest.ts';
import { OPTION_RULES, type OptionRule } from './option-rules.ts';
import { type Wishes, wishOf } from './wishes.ts';

export type CommandName = 'check' | 'analyse' | 'report' | 'site';

/** A header of the grower's file and the column it stands for. */
export interface HeaderMap {
  readonly header: string;
  readonly column: string;
}

/** The command line, read and checked. What is left out is undefined, so that defaults stay with the library. */
export interface CommandLine extends Wishes {
  readonly command: CommandName;
  readonly files: readonly string[];
  readonly vials: readonly string[];
  readonly flowers: readonly string[];
  readonly json: boolean;
  /** `check` only: its findings as CSV. */
  readonly csv?: true;
  readonly useOn?: string;
  readonly asOf?: string;
  readonly dateOrder?: DateOrder;
  readonly dateSystem?: DateSystem;
  readonly map: readonly HeaderMap[];
  /** Lists of names of one plant. */
  readonly same: readonly (readonly string[])[];
  readonly level: number;
  readonly endpoint: Endpoint;
  readonly ageScale?: AgeScale;
  readonly worth?: number;
  readonly output?: string;
}

const COMMANDS: readonly CommandName[] = ['check', 'analyse', 'report', 'site'];
const WRITING: readonly CommandName[] = ['report', 'site'];
const LATER_COMMANDS: readonly string[] = ['template'];
const SHORT: Readonly<Record<string, string>> = { output: 'o', help: 'h' };
const PLANNED_LANGUAGES: readonly string[] = ['de', 'es', 'fr'];

type Values = ReadonlyMap<string, readonly string[]>;

/** Reads the words after `fruitodds` into values by option, refusing what no rule knows. */
function valuesOf(argv: readonly string[]): { values: Values; words: string[] } {
  const { tokens } = parseArgs({
    args: [...argv],
    strict: false,
    allowPositionals: true,
    tokens: true,
    options: Object.fromEntries(
      OPTION_RULES.map(({ name, value }) => [
        name,
        {
          type: value ? ('string' as const) : ('boolean' as const),
          ...(SHORT[name] && { short: SHORT[name] }),
        },
      ]),
    ),
  });
  const values = new Map<string, string[]>();
  const words: string[] = [];
  for (const token of tokens) {
    if (token.kind === 'positional') words.push(token.value);
    if (token.kind === 'option') keep(values, ruleFor(token.name, token.rawName), token.rawName, token.value);
  }
  return { values, words };
}

function ruleFor(name: string, rawName: string): OptionRule {
  const rule = OPTION_RULES.find((known) => known.name === name);
  if (rule === undefined) {
    const known = OPTION_RULES.map((option) => `--${option.name}`);
    throw new Failure('option-unknown', { option: rawName, nearest: nearest(rawName, known) });
  }
  if (rule.later) throw new Failure('option-not-available', { option: rawName });
  return rule;
}

function keep(
  values: Map<string, string[]>,
  rule: OptionRule,
  option: string,
  value: string | undefined,
): void {
  const missing = value === undefined || value === '' || /^-[-a-z]/i.test(value);
  if (rule.value && missing) throw new Failure('option-needs-value', { option, placeholder: rule.value });
  if (!rule.value && value !== undefined) throw new Failure('option-takes-no-value', { option, value });
  const earlier = values.get(rule.name);
  if (earlier && rule.value && !rule.repeatable) throw new Failure('option-twice', { option });
  values.set(rule.name, [...(earlier ?? []), value ?? '']);
}

function fail(option: string, value: string, rule: string, allowed: string | null = null): never {
  throw new Failure('option-value', { option: `--${option}`, value, rule, allowed });
}

function one(values: Values, option: string): string | undefined {
  return values.get(option)?.[0];
}

function choice<T extends string>(values: Values, option: string, choices: readonly T[]): T | undefined {
  const value = one(values, option);
  if (value === undefined) return undefined;
  return choices.find((known) => known === value) ?? fail(option, value, 'one-of', choices.join(', '));
}

function date(values: Values, option: string): string | undefined {
  const value = one(values, option);
  return value === undefined || isIsoDate(value) ? value : fail(option, value, 'date');
}

function dateSystem(values: Values): DateSystem | undefined {
  const year = choice(values, 'date-system', ['1900', '1904'] as const);
  return year === undefined ? undefined : year === '1900' ? 1900 : 1904;
}

/** A proportion strictly between 0 and 1. */
function share(values: Values, option: string): number | undefined {
  const value = one(values, option);
  if (value === undefined) return undefined;
  const number = /^\s*\d*\.?\d+(e-?\d+)?\s*$/i.test(value) ? Number(value) : Number.NaN;
  return number > 0 && number < 1 ? number : fail(option, value, 'share');
}

function headerMap(text: string): HeaderMap {
  const at = text.lastIndexOf('=');
  const header = text.slice(0, at).trim();
  const column = text.slice(at + 1).trim();
  if (at < 0 || header === '' || column === '') fail('map', text, 'header-map');
  const known = KINDS.flatMap((kind) => COLUMNS[kind].map(({ name }) => name));
  if (!known.includes(column)) fail('map', text, 'column', nearest(column, known));
  return { header, column };
}

/** Names of one plant, from `A=B` or `A=B=C`. */
function namesOfOne(text: string): string[] {
  const names = text.split('=').map((name) => name.trim());
  return names.length > 1 && !names.includes('') ? names : fail('same', text, 'same-names');
}

function commandOf(word: string | undefined): CommandName {
  if (word === undefined) throw new Failure('command-missing');
  const command = COMMANDS.find((known) => known === word);
  if (command) return command;
  if (LATER_COMMANDS.includes(word)) throw new Failure('command-not-available', { command: word });
  throw new Failure('command-unknown', { command: word, nearest: nearest(word, COMMANDS) });
}

function checkLanguage(values: Values): void {
  const language = one(values, 'language');
  if (language === undefined || language === 'en') return;
  if (PLANNED_LANGUAGES.includes(language)) {
    throw new Failure('option-not-available', { option: `--language ${language}` });
  }
  fail('language', language, 'one-of', 'en');
}

function asCsv(values: Values, command: CommandName): true | undefined {
  if (!values.has('csv')) return undefined;
  if (command !== 'check')
    throw new Failure('option-not-for-command', { option: '--csv', command, use: 'check' });
  if (values.has('json')) throw new Failure('options-exclude', { option: '--csv', other: '--json' });
  return true;
}

/** The keys of an object whose value is given, so that an absent option is an absent key. */
function given<T extends object>(entries: T): { [K in keyof T]?: Exclude<T[K], undefined> } {
  const present = Object.entries(entries).filter(([, value]) => value !== undefined);
  return Object.fromEntries(present) as { [K in keyof T]?: Exclude<T[K], undefined> };
}

/**
 * Reads and checks the command line.
 *
 * @param argv the words after `fruitodds`
 * @returns the command with its options, or `help` or `version` where that is asked for, whatever else stands there
 * @throws Failure where a word, an option or its value cannot be meant
 * @example
 * readCommandLine(['check', 'crosses.csv', '--json']); // { command: 'check', files: ['crosses.csv'], json: true, … }
 */
export function readCommandLine(argv: readonly string[]): CommandLine | 'help' | 'version' {
  const { values, words } = valuesOf(argv);
  if (values.has('help') || words[0] === 'help') return 'help';
  if (values.has('version')) return 'version';
  const [word, ...files] = words;
  const command = commandOf(word);
  checkLanguage(values);
  if (files.length === 0) throw new Failure('file-missing', { command });
  const output = one(values, 'output');
  if (output !== undefined && !WRITING.includes(command)) {
    throw new Failure('option-not-for-command', { option: '-o', command, use: 'report or site' });
  }
  if (output === undefined && WRITING.includes(command)) throw new Failure('output-missing', { command });
  if (output === '-') fail('output', output, 'file-name');
  return {
    command,
    files,
    vials: values.get('vials') ?? [],
    flowers: values.get('flowers') ?? [],
    json: values.has('json'),
    map: (values.get('map') ?? []).map(headerMap),
    same: (values.get('same') ?? []).map(namesOfOne),
    level: share(values, 'level') ?? 0.95,
    endpoint: choice(values, 'endpoint', ['initial', 'final'] as const) ?? 'initial',
    ...given({
      useOn: date(values, 'use-on'),
      asOf: date(values, 'as-of'),
      dateSystem: dateSystem(values),
      dateOrder: choice(values, 'date-order', ['dmy', 'mdy', 'ymd'] as const),
      ageScale: choice(values, 'age-scale', ['days', 'log1p-days'] as const),
      worth: share(values, 'worth'),
      csv: asCsv(values, command),
      samePlants: values.has('same-plants') ? (true as const) : undefined,
      must: values.get('must')?.map((text) => wishOf('--must', text)),
      atMost: values.get('at-most')?.map((text) => wishOf('--at-most', text)),
      output,
    }),
  };
}
