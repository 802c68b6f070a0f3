/** Every language that words can be had in. The types ask each for all that English has. */

import type * as english from './index.ts';
import type { Language, LanguageWords } from './language.ts';

/** What counts nouns in English only, and numbers that are no words. */
type NoWords<T> = {
  [K in keyof T]: K extends 'counted' ? K : T[K] extends number ? K : never;
}[keyof T];

/** The same shape with any text where English has its own. */
type InAnyLanguage<T> = T extends string
  ? string
  : T extends (...given: never[]) => unknown
    ? T
    : T extends ReadonlyMap<string, unknown>
      ? T
      : { readonly [K in keyof T]: InAnyLanguage<T[K]> };

/** All words of one language. */
export type Words = InAnyLanguage<Omit<typeof english, NoWords<typeof english> | 'languageWords'>> & {
  readonly languageWords: LanguageWords;
};

/** The folders of all words but the English ones. */
export const WORDS_FOLDERS: Readonly<Record<Exclude<Language, 'en'>, string>> = {
  de: 'german',
  es: 'spanish',
  fr: 'french',
};

const LOADED: ReadonlyMap<Language, () => Promise<Words>> = new Map<Language, () => Promise<Words>>([
  ['en', () => import('./index.ts')],
  ['de', () => import('./german/index.ts')],
  ['fr', () => import('./french/index.ts')],
  ['es', () => import('./spanish/index.ts')],
]);

/** The codes of all languages that there are words in, English first. */
export const LANGUAGES: readonly Language[] = [...LOADED.keys()];

/**
 * All words of a language, loaded when they are asked for.
 *
 * @throws RangeError where there are none
 */
export async function wordsIn(language: Language): Promise<Words> {
  const load = LOADED.get(language);
  if (load === undefined)
    throw new RangeError(`wordsIn: language must be one of ${LANGUAGES.join(', ')}, got ${language}`);
  return load();
}
