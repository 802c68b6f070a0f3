/** The language of these words, as a page names it. */

/** A language that words can be had in: its code by BCP 47. */
export type Language = 'en' | 'de' | 'es' | 'fr';

/** Which language it is, and what its readers must know of it. */
export interface LanguageWords {
  readonly code: Language;
  /** Its name in the language itself. */
  readonly name: string;
  /** That no native speaker has read the words yet; empty where one has. */
  readonly unread: string;
}

export const languageWords: LanguageWords = { code: 'en', name: 'English', unread: '' };
