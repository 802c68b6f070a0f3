/** The language of these words, as a page names it. */
import type { LanguageWords } from '../language.ts';

export const languageWords: LanguageWords = {
  code: 'fr',
  name: 'Français',
  unread:
    'Cette traduction n’a pas encore été relue par une personne de langue maternelle française. En cas de doute, la version anglaise fait foi.',
};
