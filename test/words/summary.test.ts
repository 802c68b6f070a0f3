import { describe, expect, it } from 'vitest';
import { LANGUAGES, wordsIn } from '../../lib/words/languages.ts';
import { summaryWords } from '../../lib/words/summary.ts';
import { numeralsIn } from './numerals.ts';

const vial = { pollenParent: 'Salt Moon', fruits: 3, flowers: 5 };

describe('the words of the summary', () => {
  it('say a vial by its father, its record and what is expected of it', () => {
    expect(summaryWords.vial(vial, 'about 6 in 10')).toBe('Salt Moon, so far 3 of 5; expected about 6 in 10');
    expect(summaryWords.vial({ ...vial, fruits: 0, flowers: 0 }, null)).toBe('Salt Moon, not used yet');
  });

  it('count rows as they are', () => {
    expect(summaryWords.rows({ read: 1, used: 1, leftOut: 0 })).toBe('1 row read, 1 used, 0 left out');
  });

  it.each(LANGUAGES)('give the same numbers in %s', async (language) => {
    const said = (await wordsIn(language)).summaryWords;
    const texts = [
      said.rows({ read: 12, used: 10, leftOut: 2 }),
      said.vial(vial, null),
      said.closing(0.9),
      said.vials('2027-06-20'),
      said.halfAges,
    ];
    expect(texts.map((text) => numeralsIn(text, language).join(' '))).toEqual([
      '12 10 2',
      '3 5',
      '90',
      numeralsIn('2027-06-20', 'en').join(' '),
      '0',
    ]);
  });
});
