import { describe, expect, it } from 'vitest';
import { englishFrame, type PageWords } from '../../lib/notebook/page.ts';
import type { CompiledNotebook } from '../../lib/notebook/run.ts';
import { listedIn, pagesByLanguage, twinsOf } from '../../lib/notebook/site-languages.ts';
import type { Language } from '../../lib/words/language.ts';

const german: PageWords = {
  ...englishFrame,
  languageWords: { code: 'de', name: 'Deutsch', unread: 'Ungelesen.' },
};

function notebook(name: string, language: Language): CompiledNotebook {
  const file = `reports/${name}.md`;
  const title = `${name} ${language}`;
  return {
    ...{ name, file, language, title, description: 'D', order: null, summary: true },
    ...{ url: 'file:///x.js', cells: [], sections: [] },
  };
}

const notebooks = [
  notebook('index', 'en'),
  notebook('review', 'en'),
  notebook('review', 'de'),
  notebook('index', 'de'),
  notebook('late', 'en'),
];
const addresses = (words: readonly PageWords[]) =>
  pagesByLanguage(notebooks, words, englishFrame).map(({ pages }) => pages.map(({ address }) => address));

describe('the pages of a site in several languages', () => {
  it('are all in the first language, and in the others as far as there are translations', () => {
    expect(addresses([englishFrame, german])).toEqual([
      ['index.html', 'review.html', 'late.html'],
      ['index.de.html', 'review.de.html'],
    ]);
  });

  it('are in English under plain names where a site’s only language has no translation', () => {
    const [site] = pagesByLanguage(notebooks, [german], englishFrame);
    expect(site!.pages.map(({ address, version: { title }, words }) => [address, title, words])).toEqual([
      ['index.html', 'index de', german],
      ['review.html', 'review de', german],
      ['late.html', 'late en', englishFrame],
    ]);
    expect(listedIn(site!, [site!]).map(({ language }) => language)).toEqual([undefined, undefined, 'en']);
  });

  it('are listed in the reader’s language, else in the first', () => {
    const all = pagesByLanguage(notebooks, [englishFrame, german], englishFrame);
    expect(listedIn(all[1]!, all).map(({ name, language }) => [name, language])).toEqual([
      ['index.de.html', undefined],
      ['review.de.html', undefined],
      ['late.html', 'en'],
    ]);
  });

  it('lead to their twins, each by the name of its language', () => {
    const all = pagesByLanguage(notebooks, [englishFrame, german], englishFrame);
    const [review, late] = [all[0]!.pages[1]!, all[0]!.pages[2]!];
    expect(twinsOf(review, all)).toEqual([{ address: 'review.de.html', language: 'de', name: 'Deutsch' }]);
    expect(twinsOf(late, all)).toEqual([]);
    expect(twinsOf(all[1]!.pages[1]!, all)).toEqual([
      { address: 'review.html', language: 'en', name: 'English' },
    ]);
  });
});
