/** What the grower answered and set, as text and choices, and what is wrong with it. */

import type { AgeScale } from '../analysis/models.ts';
import type { StorageWord } from '../command/option-values.ts';
import type { Wish } from '../command/wishes.ts';
import type { DateSystem } from '../season/date-cell.ts';
import { isIsoDate } from '../season/dates.ts';
import type { DateOrder, Endpoint, FileKind } from '../season/season.ts';
import { OWN_SEASON } from '../words/own-season.ts';
import { OWN_SETTINGS } from '../words/own-settings.ts';

/** What the grower answered about the files. */
export interface Answers {
  /** What a file is, by its name. */
  readonly kinds: ReadonlyMap<string, FileKind>;
  /** From their headers to our columns. */
  readonly map: ReadonlyMap<string, string>;
  readonly dateOrder: DateOrder | null;
  readonly samePlants: boolean;
  /** Names that look alike and were said to be of several plants, as `alikeKey` writes them. */
  readonly apart: ReadonlySet<string>;
}

export const NO_ANSWERS: Answers = {
  ...{ kinds: new Map(), map: new Map(), dateOrder: null, samePlants: false, apart: new Set() },
};

/** Two names that look alike as one text. */
export function alikeKey(kept: string, other: string): string {
  return JSON.stringify([kept, other]);
}

/** The settings as they stand in the form: text, blank where nothing is said. */
export interface Settings {
  /** Of 100 flowers. */
  readonly worth: string;
  readonly useOn: string;
  readonly endpoint: Endpoint;
  /** Flowers expected next season, by seed parent. */
  readonly expected: ReadonlyMap<string, string>;
  /** Of 100 ranges, how many hold the truth. */
  readonly level: string;
  readonly asOf: string;
  readonly ageScale: AgeScale | null;
  readonly dateSystem: DateSystem | null;
  /** Lists of names of one plant, the one that is kept first. */
  readonly same: readonly (readonly string[])[];
  /** What words of storage mean, from a file of settings. */
  readonly storage: readonly StorageWord[];
  /** From headers that were not understood to our columns. */
  readonly map: readonly (readonly [header: string, column: string])[];
  readonly must: readonly Wish[];
  readonly atMost: readonly Wish[];
  /** The file that settings were taken from. */
  readonly file: { readonly file: string; readonly sha256: string } | null;
}

export const NO_SETTINGS: Settings = {
  ...{ worth: '', useOn: '', endpoint: 'initial', expected: new Map(), level: '', asOf: '' },
  ...{ ageScale: null, dateSystem: null, same: [], storage: [], map: [], must: [], atMost: [], file: null },
};

/**
 * Of 100, as a proportion: by moving the decimal point, so that it is the number a command line would hold. Many languages
 * write the point as a comma.
 */
export function shareOf(text: string): number | null {
  const pointed = text.trim().replace(',', '.');
  return /^\d*\.?\d+$/.test(pointed) ? Number(`${pointed}e-2`) : null;
}

function isShare(text: string): boolean {
  const share = text.trim() === '' ? 0.5 : shareOf(text);
  return share !== null && share > 0 && share < 1;
}

/** What is wrong with the settings, in sentences; empty where nothing is. */
export function settingsFaults({ worth, useOn, expected, level, asOf }: Settings): string[] {
  const faults = [...expected].filter(([, flowers]) => !/^\d*$/.test(flowers.trim()));
  return [
    ...(isShare(worth) ? [] : [OWN_SEASON.wrongWorth]),
    ...(useOn !== '' && !isIsoDate(useOn) ? [OWN_SEASON.wrongUseOn] : []),
    ...(isShare(level) ? [] : [OWN_SETTINGS.wrongLevel]),
    ...(asOf !== '' && !isIsoDate(asOf) ? [OWN_SETTINGS.wrongAsOf] : []),
    ...faults.map(([plant]) => OWN_SEASON.wrongFlowers(plant)),
  ];
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
