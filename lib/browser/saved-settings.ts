/** Answers and settings as the file that the command's `--settings` reads, and back. */

import {
  choice,
  date,
  dateSystem,
  headerMap,
  namesOfOne,
  share,
  storageWord,
} from '../command/option-values.ts';
import { readSettings, settingsText } from '../command/settings.ts';
import { type Wish, wishOf } from '../command/wishes.ts';
import { sha256 } from '../season/sha256.ts';
import { type Answers, type Settings, shareOf } from './settings.ts';

/** What was answered and set. */
export interface Said {
  readonly answers: Answers;
  readonly settings: Settings;
}

const wishText = ({ names, flowers }: Wish): string => `${names}=${flowers}`;
const shareText = (text: string): string[] => {
  const proportion = shareOf(text);
  return proportion === null ? [] : [String(proportion)];
};

/**
 * What was said about the files, the same answers next year, here or with the command. The day up to which things have
 * happened belongs to one season, so it is not among them.
 *
 * @returns JSON with `version` and the options by the command's names; what was left to the defaults is left out
 */
export function savedSettings({ answers, settings }: Said): string {
  const { useOn, endpoint, ageScale, same, storage, must, atMost } = settings;
  const texts: readonly (readonly [string, readonly string[]])[] = [
    ['date-order', answers.dateOrder === null ? [] : [answers.dateOrder]],
    ['date-system', settings.dateSystem === null ? [] : [String(settings.dateSystem)]],
    ['map', [...answers.map, ...settings.map].map(([header, column]) => `${header}=${column}`)],
    ['same', same.map((names) => names.join('='))],
    ['storage', storage.map(({ word, method }) => `${word}=${method}`)],
    ['same-plants', answers.samePlants ? [''] : []],
    ['endpoint', [endpoint]],
    ['level', shareText(settings.level)],
    ['age-scale', ageScale === null ? [] : [ageScale]],
    ['worth', shareText(settings.worth)],
    ['use-on', useOn === '' ? [] : [useOn]],
    ['must', must.map(wishText)],
    ['at-most', atMost.map(wishText)],
  ];
  return settingsText(new Map(texts.filter(([, values]) => values.length > 0)));
}

/** A proportion as of 100: "0.333" is "33.3". */
function ofHundred(proportion: number | undefined): string {
  return proportion === undefined ? '' : String(Number(`${proportion}e2`));
}

/**
 * What a file of settings says, over what was said before; what it does not name is as before.
 *
 * @param text of the file
 * @throws Failure where it is no file of settings, or holds a value that cannot be meant
 */
export function settingsFrom(file: string, text: string, { answers, settings }: Said): Said {
  const values = readSettings(file, text);
  const list = <T>(name: string, read: (text: string) => T): T[] => (values.get(name) ?? []).map(read);
  const [worth, level] = [share(values, 'worth'), share(values, 'level')];
  const map = list('map', headerMap).map(({ header, column }) => [header, column] as const);
  return {
    answers: {
      ...answers,
      map: new Map([...answers.map, ...map]),
      dateOrder: choice(values, 'date-order', ['dmy', 'mdy', 'ymd'] as const) ?? answers.dateOrder,
      samePlants: values.has('same-plants') || answers.samePlants,
    },
    settings: {
      ...settings,
      worth: ofHundred(worth) || settings.worth,
      level: ofHundred(level) || settings.level,
      useOn: date(values, 'use-on') ?? settings.useOn,
      endpoint: choice(values, 'endpoint', ['initial', 'final'] as const) ?? settings.endpoint,
      ageScale: choice(values, 'age-scale', ['days', 'log1p-days'] as const) ?? settings.ageScale,
      dateSystem: dateSystem(values) ?? settings.dateSystem,
      same: [...settings.same, ...list('same', namesOfOne)],
      storage: [...settings.storage, ...list('storage', storageWord)],
      must: [...settings.must, ...list('must', (wish) => wishOf('--must', wish))],
      atMost: [...settings.atMost, ...list('at-most', (wish) => wishOf('--at-most', wish))],
      file: { file, sha256: sha256(new TextEncoder().encode(text)) },
    },
  };
}
