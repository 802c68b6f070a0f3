import type { LanguageWords } from '../language.ts';

export const languageWords: LanguageWords = {
  code: 'de',
  name: 'Deutsch',
  unread:
    'Diese Übersetzung hat noch niemand gelesen, dessen Muttersprache Deutsch ist. Im Zweifel gilt die englische Fassung.',
};
