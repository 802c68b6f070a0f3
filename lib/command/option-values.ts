/** The values that options were given, each read as what it must be. */

import { COLUMNS, KINDS } from '../season/columns.ts';
import type { DateSystem } from '../season/date-cell.ts';
import { isIsoDate } from '../season/dates.ts';
import { Failure } from './failure.ts';
import { nearest } from './nearest.ts';

/** A header of the grower's file and the column it stands for. */
export interface HeaderMap {
  readonly header: string;
  readonly column: string;
}

/** The values that each option was given, by its name; a flag has one that is empty. */
export type Values = ReadonlyMap<string, readonly string[]>;

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
export function share(values: Values, option: string, example = '0.2'): number | undefined {
  const value = one(values, option);
  if (value === undefined) return undefined;
  const number = /^\s*\d*\.?\d+(e-?\d+)?\s*$/i.test(value) ? Number(value) : Number.NaN;
  return number > 0 && number < 1 ? number : fail(option, value, 'share', example);
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

/** A word of the grower's for storage and the method it stands for. */
export interface StorageWord {
  readonly word: string;
  readonly method: string;
}

/** A word of storage, from `cool box=refrigerated`. */
export function storageWord(text: string): StorageWord {
  const [word = '', method = '', ...more] = text.split('=').map((part) => part.trim());
  return word === '' || method === '' || more.length > 0
    ? fail('storage', text, 'storage-word')
    : { word, method };
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
