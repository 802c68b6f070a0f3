/** What a grower answered once, kept in a small file: the same options as on the command line, for next year. */

import { Failure } from './failure.ts';
import { nearest } from './nearest.ts';
import { OPTION_RULES, type OptionRule } from './option-rules.ts';
import type { Values } from './option-values.ts';

/** The form of the file; a later one is refused, since it may mean something else. */
const VERSION = 1;

/** Options that hold from year to year. The day up to which is read belongs to one season, so it is not among them. */
export const SETTING_NAMES: readonly string[] = [
  ...[
    'date-order',
    'date-system',
    'map',
    'same',
    'storage',
    'same-plants',
    'endpoint',
    'level',
    'age-scale',
    'worth',
  ],
  ...['use-on', 'must', 'at-most', 'language'],
];

/** A file of settings as it was read. */
export interface Settings {
  readonly file: string;
  readonly sha256: string;
  readonly values: Values;
}

function ruleOf(name: string): OptionRule {
  return OPTION_RULES.find((rule) => rule.name === name)!;
}

/** The texts that an option would have been given on the command line; null where the value is of another form. */
function textsOf({ repeatable, value }: OptionRule, json: unknown): string[] | null {
  if (repeatable) {
    const texts = Array.isArray(json) ? json : [];
    return texts.length > 0 && texts.every((text) => typeof text === 'string') ? texts : null;
  }
  if (value === undefined) return json === true ? [''] : null;
  return typeof json === 'string' || typeof json === 'number' ? [String(json)] : null;
}

/** The line at which JSON breaks off, where the engine says it. */
function faultyLine(error: unknown, text: string): number | null {
  const [, position] = /position (\d+)/.exec(error instanceof Error ? error.message : '') ?? [];
  return position === undefined ? null : text.slice(0, Number(position)).split('\n').length;
}

function parsed(file: string, text: string): object {
  try {
    const json: unknown = JSON.parse(text.replace(/^\uFEFF/, ''));
    if (typeof json === 'object' && json !== null && !Array.isArray(json)) return json;
  } catch (error) {
    throw new Failure('settings-not-json', { file, cause: null, line: faultyLine(error, text) });
  }
  throw new Failure('settings-not-json', { file, cause: 'no-object', line: null });
}

/**
 * Reads the text of a file of settings.
 *
 * @returns values by option, as if they stood on the command line
 * @throws Failure where it is no JSON object, of a later form, or holds a key or a form of value that is not known
 * @example
 * readSettings('mine.json', '{ "version": 1, "date-order": "dmy" }').get('date-order'); // ['dmy']
 */
export function readSettings(file: string, text: string): Values {
  const entries = new Map<string, unknown>(Object.entries(parsed(file, text)));
  if (entries.get('version') !== VERSION) {
    throw new Failure('settings-version', { file, version: JSON.stringify(entries.get('version') ?? null) });
  }
  entries.delete('version');
  const values = new Map<string, readonly string[]>();
  for (const [key, json] of entries) {
    if (!SETTING_NAMES.includes(key)) {
      throw new Failure('settings-key-unknown', { file, key, nearest: nearest(key, SETTING_NAMES) });
    }
    // false says what leaving a flag out says.
    if (json === false && ruleOf(key).value === undefined) continue;
    const texts = textsOf(ruleOf(key), json);
    if (texts === null) throw new Failure('settings-value', { file, key, form: formOf(ruleOf(key)) });
    values.set(key, texts);
  }
  return values;
}

function formOf({ repeatable, value }: OptionRule): string {
  return repeatable ? 'list' : value === undefined ? 'flag' : 'text';
}

/** Values of the command line over those of a file: what is given once is replaced, lists are joined. */
export function overSettings(settings: Values, given: Values): Values {
  const joined = new Map(settings);
  for (const [name, texts] of given) {
    const earlier = ruleOf(name).repeatable ? (settings.get(name) ?? []) : [];
    joined.set(name, [...new Set([...earlier, ...texts])]);
  }
  return joined;
}

const NUMBERS: ReadonlySet<string> = new Set(['date-system', 'level', 'worth']);

/** The text of a file of settings that holds these values, as far as they hold from year to year. */
export function settingsText(values: Values): string {
  const kept = SETTING_NAMES.flatMap((name) => {
    const texts = values.get(name);
    if (texts === undefined) return [];
    const { repeatable, value } = ruleOf(name);
    const single = value === undefined ? true : NUMBERS.has(name) ? Number(texts[0]) : texts[0];
    return [[name, repeatable ? texts : single]];
  });
  return `${JSON.stringify({ version: VERSION, ...Object.fromEntries(kept) }, null, 2)}\n`;
}
