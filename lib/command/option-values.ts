/** The words of a command line → values by option, and each value read as what it must be. */

import { parseArgs } from 'node:util';
import { COLUMNS, KINDS } from '../season/columns.ts';
import type { DateSystem } from '../season/date-cell.ts';
import { isIsoDate } from '../season/dates.ts';
import { Failure } from './failure.ts';
import { nearest } from './nearest.ts';
import type { OptionRule } from './option-rules.ts';

/** A header of the grower's file and the column it stands for. */
export interface HeaderMap {
  readonly header: string;
  readonly column: string;
}

const SHORT: Readonly<Record<string, string>> = { output: 'o', help: 'h' };
/** The values that each option was given, by its name; a flag has one that is empty. */
export type Values = ReadonlyMap<string, readonly string[]>;

/** Reads the words after `fruitodds` into values by option, refusing what no rule knows. */
export function valuesOf(
  argv: readonly string[],
  rules: readonly OptionRule[],
): { values: Values; words: string[] } {
  const { tokens } = parseArgs({
    args: [...argv],
    strict: false,
    allowPositionals: true,
    tokens: true,
    options: Object.fromEntries(
      rules.map(({ name, value }) => [
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
  const taken = new Set<number>();
  for (const [at, token] of tokens.entries()) {
    if (token.kind === 'positional' && !taken.has(at)) words.push(token.value);
    if (token.kind !== 'option') continue;
    const rule = ruleFor(token.name, token.rawName, rules);
    const next = tokens[at + 1];
    const follows =
      next?.kind === 'positional' && rule.choices?.includes(next.value) ? next.value : undefined;
    if (follows !== undefined) taken.add(at + 1);
    keep(values, rule, token.rawName, token.value ?? follows);
  }
  return { values, words };
}

function ruleFor(name: string, rawName: string, rules: readonly OptionRule[]): OptionRule {
  const rule = rules.find((known) => known.name === name);
  if (rule === undefined) {
    const known = rules.map((option) => `--${option.name}`);
    throw new Failure('option-unknown', { option: rawName, nearest: nearest(rawName, known) });
  }
  if (rule.later) throw new Failure('option-not-available', { option: rawName });
  return rule;
}

export function keep(
  values: Map<string, string[]>,
  rule: OptionRule,
  option: string,
  value: string | undefined,
): void {
  const missing = value === undefined || value === '' || /^-[-a-z]/i.test(value);
  if (rule.value && missing) throw new Failure('option-needs-value', { option, placeholder: rule.value });
  if (!rule.value && !rule.choices && value !== undefined)
    throw new Failure('option-takes-no-value', { option, value });
  const earlier = values.get(rule.name);
  if (earlier && rule.value && !rule.repeatable) throw new Failure('option-twice', { option });
  values.set(rule.name, [...(earlier ?? []), value ?? '']);
}

export function fail(option: string, value: string, rule: string, allowed: string | null = null): never {
  throw new Failure('option-value', { option: `--${option}`, value, rule, allowed });
}

export function one(values: Values, option: string): string | undefined {
  return values.get(option)?.[0];
}

export function choice<T extends string>(
  values: Values,
  option: string,
  choices: readonly T[],
): T | undefined {
  const value = one(values, option);
  if (value === undefined) return undefined;
  return choices.find((known) => known === value) ?? fail(option, value, 'one-of', choices.join(', '));
}

export function date(values: Values, option: string): string | undefined {
  const value = one(values, option);
  return value === undefined || isIsoDate(value) ? value : fail(option, value, 'date');
}

export function dateSystem(values: Values): DateSystem | undefined {
  const year = choice(values, 'date-system', ['1900', '1904'] as const);
  return year === undefined ? undefined : year === '1900' ? 1900 : 1904;
}

/** A proportion strictly between 0 and 1. */
export function share(values: Values, option: string): number | undefined {
  const value = one(values, option);
  if (value === undefined) return undefined;
  const number = /^\s*\d*\.?\d+(e-?\d+)?\s*$/i.test(value) ? Number(value) : Number.NaN;
  return number > 0 && number < 1 ? number : fail(option, value, 'share');
}

export function headerMap(text: string): HeaderMap {
  const at = text.lastIndexOf('=');
  const header = text.slice(0, at).trim();
  const column = text.slice(at + 1).trim();
  if (at < 0 || header === '' || column === '') fail('map', text, 'header-map');
  const known = KINDS.flatMap((kind) => COLUMNS[kind].map(({ name }) => name));
  if (!known.includes(column)) fail('map', text, 'column', nearest(column, known));
  return { header, column };
}

/** Names of one plant, from `A=B` or `A=B=C`. */
export function namesOfOne(text: string): string[] {
  const names = text.split('=').map((name) => name.trim());
  return names.length > 1 && !names.includes('') ? names : fail('same', text, 'same-names');
}

/** The keys of an object whose value is given, so that an absent option is an absent key. */
export function given<T extends object>(entries: T): { [K in keyof T]?: Exclude<T[K], undefined> } {
  const present = Object.entries(entries).filter(([, value]) => value !== undefined);
  return Object.fromEntries(present) as { [K in keyof T]?: Exclude<T[K], undefined> };
}
