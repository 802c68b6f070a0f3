import { describe, expect, it } from 'vitest';
import { LANGUAGES, wordsIn } from '../../lib/words/languages.ts';

describe('the languages', () => {
  it('begin with English', async () => {
    expect(LANGUAGES[0]).toBe('en');
    expect((await wordsIn('en')).languageWords).toEqual({ code: 'en', name: 'English', unread: '' });
  });
});
