import type { LanguageWords } from '../language.ts';

export const languageWords: LanguageWords = {
  code: 'es',
  name: 'Español',
  unread: 'Traducción que aún no ha leído ningún hablante nativo; en caso de duda vale la versión en inglés.',
};
