import { describe, expect, it } from 'vitest';
import { OPTION_RULES } from '../../lib/command/option-rules.ts';
import { LANGUAGES, wordsIn } from '../../lib/words/languages.ts';

/* A line of a terminal: the width that `test/command/help.test.ts` holds the whole text to, less the indent. */
const WIDTH = 84;

describe.each(LANGUAGES)('the help in %s', (language) => {
  it('has a line for each option and no other, that fits beside it', async () => {
    const { helpWords } = await wordsIn(language);
    expect(Object.keys(helpWords.option).sort()).toEqual(OPTION_RULES.map(({ name }) => name).sort());
    for (const said of Object.values(helpWords.option)) {
      expect(said).toMatch(/\S/);
      expect(said.length).toBeLessThanOrEqual(WIDTH);
    }
  });

  it('keeps what is to be typed as it is, and what is put in its place short', async () => {
    const { placeholder } = await wordsIn(language);
    for (const { value } of OPTION_RULES.filter((rule) => rule.value?.includes('='))) {
      expect(placeholder(value!)).toMatch(/^"[^"=]+=[^"=]+"$/);
    }
    for (const typed of ['P', '"A=B"', '"A x B=2"', '"A=5"']) expect(placeholder(typed)).toBe(typed);
    for (const { value } of OPTION_RULES) expect(placeholder(value ?? '').length).toBeLessThan(24);
  });
});

it('puts no word of English in the place of a file or a folder', async () => {
  for (const language of LANGUAGES.filter((code) => code !== 'en')) {
    const { placeholder } = await wordsIn(language);
    for (const typed of ['FILE', 'FOLDER', 'OUT', 'LANGUAGE']) expect(placeholder(typed)).not.toBe(typed);
  }
});
