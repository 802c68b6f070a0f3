import { expect, it } from 'vitest';
import { LANGUAGES, wordsIn } from '../../lib/words/languages.ts';
import { templateWords } from '../../lib/words/template.ts';

it('says what is needed and the notes of the example in the words of each language', async () => {
  const english = Object.values(templateWords.notes);
  for (const language of LANGUAGES) {
    const { needed, notes } = (await wordsIn(language)).templateWords;
    expect(needed.yes).not.toBe(needed.no);
    const own = Object.values(notes);
    expect(own.filter((note) => english.includes(note))).toEqual(language === 'en' ? english : []);
  }
});
