import type { LanguageWords } from '../language.ts';

export const languageWords: LanguageWords = {
  code: 'es',
  name: 'Español',
  unread:
    'Esta traducción todavía no la ha revisado nadie que tenga el español como lengua materna. En caso de duda vale la versión en inglés.',
};
