import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { scriptedPages } from '../../lib/browser/scripted-pages.ts';
import { readSeason } from '../../lib/season/read-season.ts';

const bytes = new Uint8Array(readFileSync(new URL('../../data-demo/crosses.csv', import.meta.url)));
const season = readSeason([{ name: 'crosses.csv', bytes }]);
const listed = [
  { name: 'index.html', title: 'Start & more', description: '', bytes: 1 },
  { name: 'explore.html', title: 'Explore', description: '', bytes: 1 },
];

/** The whole text of each page by its name. */
const texts = async (...given: Parameters<typeof scriptedPages>) => {
  const { pages } = await scriptedPages(...given);
  return new Map(
    pages.map(({ name, text }) => [name, typeof text === 'string' ? text : text(listed)] as const),
  );
};

describe('the pages with a script', () => {
  it('are built beforehand, so that a site needs no packages of development', async () => {
    const made = await texts(season);
    expect([...made.keys()]).toEqual(['explore.html', 'your-own-season.html']);
    for (const text of made.values()) {
      expect(text).toMatch(/^<!doctype html>/);
      expect(text).toContain("connect-src 'none'");
    }
  });

  it('hold the season where it is to be explored, and nowhere else', async () => {
    const made = await texts(season);
    const plant = season.crosses[0]!.seedParent;
    expect(made.get('explore.html')).toContain(plant);
    expect(made.get('your-own-season.html')).not.toContain(plant);
  });

  it('lead from the page to explore to all others', async () => {
    const explore = (await texts(season)).get('explore.html')!;
    expect(explore).toContain('<a href="index.html">Start &amp; more</a>');
    expect(explore).toContain('<a href="explore.html" aria-current="page">');
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
    expect(made.get('your-own-season.html')).toBe(constant[0]);
    const varying = made.get('explore.html')!.replace(constant[1]!, '');
    expect(varying.length).toBeLessThan(made.get('explore.html')!.length / 5);
    expect(varying).toContain('Marlow');
    expect(constant.join(' ')).not.toContain('Marlow');
  });

  it('show no single flower where none may be shown', async () => {
    expect([...(await texts(null)).keys()]).toEqual(['your-own-season.html']);
  });

  it('leave out the page to explore where its packages were not installed, and say so', async () => {
    const without = async (address: string) =>
      address.includes('_explore') ? { script: null } : import(/* @vite-ignore */ address);
    const { pages, leftOut } = await scriptedPages(season, without);
    expect(pages.map(({ name }) => name)).toEqual(['your-own-season.html']);
    expect(leftOut).toEqual([{ name: 'explore', package: 'vega' }]);
  });
});
