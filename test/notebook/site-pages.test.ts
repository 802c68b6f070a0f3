import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { englishFrame } from '../../lib/notebook/page.ts';
import type { CompiledNotebook, Given } from '../../lib/notebook/run.ts';
import { savedFile } from '../../lib/notebook/saved-file.ts';
import type { SitePlace } from '../../lib/notebook/site-contents.ts';
import { type KeptPages, type SiteParts, sitePages } from '../../lib/notebook/site-pages.ts';
import { smallSeason } from './small-season.ts';

const paper = parseHTML('<body></body>').document;

/** A notebook of one section that shows what `say` makes of what it is given. */
function notebook(name: string, order: number | null, say: (given: Given) => unknown): CompiledNotebook {
  const slot = {
    value: ({ a }: Readonly<Record<string, unknown>>) => a,
    expression: 'a',
    line: 9,
    column: 4,
    block: true,
  };
  return {
    name,
    file: `reports/${name}.md`,
    title: `Title of ${name}`,
    description: 'D',
    order,
    summary: name === 'index' || name === 'review',
    url: 'file:///x.js',
    cells: [{ line: 5, run: async (given) => ({ a: say(given) }) }],
    sections: [{ heading: null, id: 'opening', pieces: [slot], working: [] }],
  };
}

const start = notebook('index', null, ({ site }) =>
  [...site!.pages, ...site!.downloads].map(({ name, bytes }) => `${name} ${bytes}`).join(', '),
);
const chart = notebook('chart', 20, () => savedFile('chart.vl.json', 'A chart', '{}'));
const review = notebook('review', 10, ({ site }) => `site: ${site === undefined}`);
const late = notebook('late', null, () => 'x');

function pages(changes: Partial<SiteParts> = {}) {
  const parts: SiteParts = {
    notebooks: [late, chart, start, review],
    downloads: [savedFile('results.json', 'Numbers', '[1]')],
    otherPages: [{ name: 'own', title: 'Your own', description: 'Try', order: null, text: 'ä' }],
    invented: false,
    ...changes,
  };
  return sitePages(parts, smallSeason, paper);
}

describe('sitePages', () => {
  // Found by a reader: a season without a plan listed an empty crossing sheet as "the plan flower by flower".
  it('leaves out a page that needs a plan where there is none', async () => {
    const sheet = { ...notebook('sheet', 30, () => 'x'), plan: true };
    const names = (await pages({ notebooks: [start, sheet] })).map(({ name }) => name);
    expect(names).not.toContain('sheet.html');
    const frontier = { frontier: [{}] } as unknown as Given['analysis']['plan'];
    const planned = { ...smallSeason, analysis: { ...smallSeason.analysis, plan: frontier } };
    const parts = { notebooks: [start, sheet], downloads: [], otherPages: [], invented: false };
    expect((await sitePages(parts, planned, paper)).map(({ name }) => name)).toContain('sheet.html');
  });

  it('makes a page of each notebook in the order of its front lines, the start page before all', async () => {
    expect((await pages()).map(({ name }) => name)).toEqual([
      'index.html',
      'review.html',
      'chart.html',
      'late.html',
      'own.html',
      'results.json',
      'chart.vl.json',
    ]);
  });

  it('tells the start page what the others weigh, in bytes of UTF-8', async () => {
    const files = await pages();
    const size = (name: string) => Buffer.byteLength(files.find((file) => file.name === name)!.text);
    const said = parseHTML(files[0]!.text).document.querySelector('main')?.textContent?.trim();
    const listed = ['review.html', 'chart.html', 'late.html', 'own.html', 'results.json', 'chart.vl.json'];
    expect(said).toBe(listed.map((name) => `${name} ${size(name)}`).join(', '));
    expect(said).toContain('own.html 2,');
  });

  it('lists all pages on each, by names relative to it', async () => {
    const files = await pages();
    for (const name of ['index.html', 'review.html', 'chart.html', 'late.html']) {
      const { document } = parseHTML(files.find((file) => file.name === name)!.text);
      const links = [...document.querySelectorAll('nav.pages a')].map((a) => a.getAttribute('href'));
      expect(links).toEqual(['index.html', 'review.html', 'chart.html', 'late.html', 'own.html']);
    }
  });

  it('puts a page that no notebook makes where its order says, and gives it the list', async () => {
    const text = ({ pages: listed }: SitePlace) => listed.map(({ name }) => name).join(' ');
    const files = await pages({
      otherPages: [{ name: 'own', title: 'Your own', description: 'Try', order: 15, text }],
    });
    const names = ['index.html', 'review.html', 'own.html', 'chart.html', 'late.html'];
    expect(files.find(({ name }) => name === 'own.html')!.text).toBe(names.join(' '));
  });

  it('makes a page in each language that it has, leading to its twins, and prose to those of its own language', async () => {
    const linking = {
      ...review,
      sections: [{ ...review.sections[0]!, pieces: ['<a href="own.html">x</a>'] }],
    };
    const german = { ...linking, language: 'de' as const, title: 'Titel' };
    const text = ({ address, twins }: SitePlace) => `${address} ${twins.map((twin) => twin.address)}`;
    const own = { name: 'own', description: '', order: null, text };
    const files = await pages({
      notebooks: [linking, german],
      otherPages: [
        { ...own, title: 'Own' },
        { ...own, title: 'Eigene', language: 'de' },
        { ...own, name: 'only', title: 'Only' },
      ],
      words: [englishFrame, { ...englishFrame, languageWords: { code: 'de', name: 'Deutsch', unread: '' } }],
    });
    const textOf = (name: string) => files.find((file) => file.name === name)?.text;
    expect(textOf('own.html')).toBe('own.html own.de.html');
    expect(textOf('own.de.html')).toBe('own.de.html own.html');
    expect([textOf('only.html'), textOf('only.de.html')]).toEqual(['only.html ', undefined]);
    expect(textOf('review.html')).toContain('<a href="own.html">x</a>');
    expect(textOf('review.de.html')).toContain('<a href="own.de.html">x</a>');
    expect(textOf('review.de.html')).toContain('<a href="only.html" hreflang="en" lang="en">Only</a>');
  });

  it('lists the downloads in the words of each language', async () => {
    const listing = notebook('index', null, ({ site }) => site!.downloads.map(({ title }) => title).join());
    const files = await pages({
      notebooks: [listing, { ...listing, language: 'de' }],
      otherPages: [],
      downloads: [
        { ...savedFile('results.json', 'Numbers', '[1]'), labels: new Map([['de', 'Zahlen']]) },
        savedFile('more.json', 'More', '[2]'),
      ],
      words: [englishFrame, { ...englishFrame, languageWords: { code: 'de', name: 'Deutsch', unread: '' } }],
    });
    const textOf = (name: string) => files.find((file) => file.name === name)!.text;
    expect(textOf('index.html')).toContain('Numbers,More');
    expect(textOf('index.de.html')).toContain('Zahlen,More');
    expect(files.filter(({ name }) => name === 'results.json')).toHaveLength(1);
  });

  it('gives the list of the site to the start page only', async () => {
    const files = await pages();
    expect(files.find(({ name }) => name === 'review.html')!.text).toContain('site: true');
  });

  it('makes a site without a start page, where there is none', async () => {
    expect(
      (await pages({ notebooks: [review], otherPages: [], downloads: [] })).map(({ name }) => name),
    ).toEqual(['review.html']);
  });

  it('takes pages made before again while season and place are the same, the start page never', async () => {
    const made: string[] = [];
    const counting = (name: string) =>
      notebook(name, 10, () => {
        made.push(name);
        return 'x';
      });
    const [one, two, first] = [counting('one'), counting('two'), counting('index')];
    const kept: KeptPages = new Map();
    const again = (given = smallSeason, notebooks = [one, two, first]) =>
      sitePages({ notebooks, downloads: [], otherPages: [], invented: false, kept }, given, paper);
    const files = await again();
    expect(await again()).toEqual(files);
    expect(made.splice(0)).toEqual(['one', 'two', 'index', 'index']);
    await again({ ...smallSeason, analysis: { ...smallSeason.analysis } });
    expect(made.splice(0)).toEqual(['one', 'two', 'index']);
    await again(smallSeason, [one, first]);
    expect(made).toEqual(['one', 'index']);
  });
});
