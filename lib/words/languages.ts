/** Every language that words can be had in. The types ask each for all that English has. */

import type * as english from './index.ts';
import type { Language } from './language.ts';

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
export type Words = InAnyLanguage<Omit<typeof english, NoWords<typeof english>>>;

const LOADED: Readonly<Record<Language, () => Promise<Words>>> = {
  en: () => import('./index.ts'),
  de: () => import('./index.ts'),
  es: () => import('./index.ts'),
  fr: () => import('./index.ts'),
};

/** The codes of all languages, English first. */
export const LANGUAGES = Object.keys(LOADED) as readonly Language[];

/** All words of a language, loaded when they are asked for. */
export function wordsIn(language: Language): Promise<Words> {
  return LOADED[language]();
}
