import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { scriptedPages } from '../../lib/browser/scripted-pages.ts';
import { readSeason } from '../../lib/season/read-season.ts';
import { wordsIn } from '../../lib/words/languages.ts';

const bytes = new Uint8Array(readFileSync(new URL('../../data-demo/crosses.csv', import.meta.url)));
const season = readSeason([{ name: 'crosses.csv', bytes }]);
const listed = [
  { name: 'index.html', title: 'Start & more', description: '', bytes: 1 },
  { name: 'explore.html', title: 'Explore', description: '', bytes: 1 },
];
const twins = [{ address: 'x.de.html', language: 'de', name: 'Deutsch' }] as const;

/** The whole text of each page by its name. */
const texts = async (...given: Parameters<typeof scriptedPages>) => {
  const { pages } = await scriptedPages(...given);
  return new Map(
    pages.map(({ name, language, text }) => {
      const place = { address: `${name}.html`, pages: listed, twins };
      return [`${name} ${language}` as string, typeof text === 'string' ? text : text(place)] as const;
    }),
  );
};

describe('the pages with a script', () => {
  it('are built beforehand, so that a site needs no packages of development', async () => {
    const made = await texts(season);
    expect([...made.keys()]).toEqual(['explore en', 'your-own-season en']);
    for (const text of made.values()) {
      expect(text).toMatch(/^<!doctype html>/);
      expect(text).toContain("connect-src 'none'");
    }
  });

  it('hold the season where it is to be explored, and nowhere else', async () => {
    const made = await texts(season);
    const plant = season.crosses[0]!.seedParent;
    expect(made.get('explore en')).toContain(plant);
    expect(made.get('your-own-season en')).not.toContain(plant);
  });

  it('lead to all others, and to themselves in other languages', async () => {
    for (const text of (await texts(season)).values()) {
      expect(text).toContain('<a href="index.html">Start &amp; more</a>');
      expect(text).toContain('<li><a href="x.de.html" hreflang="de" lang="de">Deutsch</a></li>');
    }
    expect((await texts(season)).get('explore en')).toContain('<a href="explore.html" aria-current="page">');
  });

  it('are there in other languages too, each in that one, with a note that no native speaker has read it', async () => {
    const made = await texts(season, ['de', 'fr']);
    const own = ['your-own-season en', 'your-own-season de', 'your-own-season fr'];
    expect([...made.keys()]).toEqual(['explore en', 'explore de', 'explore fr', ...own]);
    for (const language of ['de', 'fr'] as const) {
      const { languageWords, pageWords } = await wordsIn(language);
      for (const name of ['explore', 'your-own-season']) {
        const text = made.get(`${name} ${language}`)!;
        expect(text).toContain(`<html lang="${language}">`);
        expect(text).toContain(`<p class="unread">${languageWords.unread}</p>`);
        expect(text).toContain(`<summary>${pageWords.allPages}</summary>`);
      }
    }
  });

  it('say which of their text is the same in every site', async () => {
    const other = readSeason([
      {
        name: 'crosses.csv',
        bytes: new TextEncoder().encode(
          'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome\n1,2025-06-01,Marlow,Wren,fresh,fruit\n',
        ),
      },
    ]);
    const { constant } = await scriptedPages(other);
    const made = await texts(other);
    const left = (name: string) => constant.reduce((text, piece) => text.replace(piece, ''), made.get(name)!);
    expect(left('your-own-season en').length).toBeLessThan(1000);
    const varying = left('explore en');
    expect(varying.length).toBeLessThan(made.get('explore en')!.length / 5);
    expect(varying).toContain('Marlow');
    expect(constant.join(' ')).not.toContain('Marlow');
  });

  it('show no single flower where none may be shown', async () => {
    expect([...(await texts(null)).keys()]).toEqual(['your-own-season en']);
  });

  it('leave out the page to explore where its packages were not installed, and say so', async () => {
    const without = async (address: string) =>
      address.includes('_explore') ? { script: null } : import(/* @vite-ignore */ address);
    const { pages, leftOut } = await scriptedPages(season, [], without);
    expect(pages.map(({ name }) => name)).toEqual(['your-own-season']);
    expect(leftOut).toEqual([{ name: 'explore', package: 'vega' }]);
  });
});
