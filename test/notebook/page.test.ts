import { createHash } from 'node:crypto';
import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import type { Figure } from '../../lib/charts/figure.ts';
import { drawnParts, framedPage, renderPage } from '../../lib/notebook/page.ts';
import type { FilledNotebook, FilledSection } from '../../lib/notebook/run.ts';

const hostile = '</script><script>alert(1)</script>"><img src=x onerror=alert(1)>';
const paper = parseHTML('<body></body>').document;

const figure: Figure = {
  kind: 'figure',
  name: 'rates',
  finding: `Fresh took more often than ${hostile}.`,
  label: 'Rates',
  description: 'Two dots.',
  table: { caption: hostile, columns: [{ title: 'Pollen' }], rows: [[hostile]], source: 'raw.byStorage' },
  draw: (_, prefix) =>
    `<svg class="chart" role="img" aria-labelledby="${prefix}-name"><title id="${prefix}-name">Rates</title></svg>`,
};

function section(id: string, changes: Partial<FilledSection> = {}): FilledSection {
  return { id, heading: `Heading ${id}`, pieces: ['<p>Text.</p>\n'], working: [], ...changes };
}

function notebook(sections: readonly FilledSection[]): FilledNotebook {
  return { name: 'x', title: `A ${hostile} season`, description: hostile, sections, savedFiles: [] };
}

function page(sections: readonly FilledSection[]): { text: string; document: Document } {
  const text = renderPage(notebook(sections), paper);
  return { text, document: parseHTML(text).document };
}

describe('renderPage', () => {
  it('allows its one stylesheet by the digest of it, and nothing else', () => {
    const { document } = page([section('section-1')]);
    const styles = [...document.querySelectorAll('style')].map((style) => style.textContent ?? '');
    expect(styles).toHaveLength(1);
    // node:crypto is the second implementation of SHA-256 here.
    const digest = createHash('sha256').update(styles[0]!).digest('base64');
    const policy = document
      .querySelector('meta[http-equiv="Content-Security-Policy"]')
      ?.getAttribute('content');
    expect(policy).toBe(
      `default-src 'none'; style-src 'sha256-${digest}'; base-uri 'none'; form-action 'none'`,
    );
  });

  it('names language, viewport and colour schemes', () => {
    const { document } = page([section('section-1')]);
    expect(document.documentElement.getAttribute('lang')).toBe('en');
    expect(document.querySelector('meta[name=viewport]')?.getAttribute('content')).toBe(
      'width=device-width, initial-scale=1',
    );
    expect(document.querySelector('meta[name=color-scheme]')?.getAttribute('content')).toBe('light dark');
  });

  it('escapes hostile names in title, headings, captions, tables and code alike', () => {
    const { text, document } = page([
      section('section-1', { heading: hostile, pieces: [figure], working: [hostile] }),
    ]);
    expect(document.querySelectorAll('script, img')).toHaveLength(0);
    expect(text).not.toContain('<script');
    expect(text).not.toContain('<img');
    expect(document.querySelector('h1')?.textContent).toBe(`A ${hostile} season`);
    expect(document.querySelector('main h2')?.textContent).toBe(hostile);
    expect(document.querySelector('tbody th')?.textContent).toBe(hostile);
    expect(document.querySelector('.working code')?.textContent).toBe(hostile);
  });

  it('gives a figure its finding as caption, its drawing and its numbers, with ids counted on the page', () => {
    const { document } = page([section('section-1', { pieces: [figure, figure] })]);
    expect([...document.querySelectorAll('figure')].map(({ id }) => id)).toEqual(['figure-1', 'figure-2']);
    expect(document.querySelector('figcaption')?.textContent).toBe(figure.finding);
    expect([...document.querySelectorAll('svg title')].map(({ id }) => id)).toEqual([
      'figure-1-name',
      'figure-2-name',
    ]);
    expect(document.querySelectorAll('figure details table')).toHaveLength(2);
  });

  it('folds the code of a section at its end', () => {
    const { document } = page([section('section-1', { working: ['const a = 1;', 'const b = 2;'] })]);
    expect(document.querySelector('section')?.lastElementChild?.className).toBe('working');
    expect(document.querySelector('.working code')?.textContent).toBe('const a = 1;\n\nconst b = 2;');
    expect(document.querySelector('.working')?.hasAttribute('open')).toBe(false);
  });

  it('lists its contents from three headings on', () => {
    const sections = ['section-1', 'section-2', 'section-3'].map((id) => section(id));
    const { document } = page([section('opening', { heading: null }), ...sections]);
    expect(
      [...document.querySelectorAll('nav a')].map((a) => [a.getAttribute('href'), a.textContent]),
    ).toEqual([
      ['#section-1', 'Heading section-1'],
      ['#section-2', 'Heading section-2'],
      ['#section-3', 'Heading section-3'],
    ]);
    expect(page(sections.slice(1)).document.querySelector('nav')).toBeNull();
  });

  it('lists the pages of its site, folded, and says which one it is', () => {
    const entry = (name: string, title: string) => ({ name, title, description: '', bytes: 0 });
    const pages = [entry('index.html', 'Start'), entry('x.html', hostile)];
    const { document } = parseHTML(
      renderPage(notebook([section('section-1')]), paper, { address: 'x.html', pages, twins: [] }),
    );
    const links = [...document.querySelectorAll('nav.pages details a')];
    expect(links.map((a) => [a.getAttribute('href'), a.textContent, a.getAttribute('aria-current')])).toEqual(
      [
        ['index.html', 'Start', null],
        ['x.html', hostile, 'page'],
      ],
    );
    expect(document.querySelector('nav.pages details')?.hasAttribute('open')).toBe(false);
    expect(page([section('section-1')]).document.querySelector('nav.pages')).toBeNull();
  });

  it.each([
    '<p style="color:red">x</p>',
    '<script>1</script>',
    '<p onclick="x()">x</p>',
    '<style>p{}</style>',
    '<img src="x">',
    '<a class="b" onfocus="x">y</a>',
  ])('refuses %j, which its policy would block', (markup) => {
    expect(() => page([section('section-1', { pieces: [markup] })])).toThrow(
      'renderPage: a page may hold no ',
    );
  });

  it('refuses a drawing without role and name', () => {
    const nameless = { ...figure, draw: () => '<svg></svg>' };
    expect(() => page([section('section-1', { pieces: [nameless] })])).toThrow(
      'the drawing of rates must be an svg',
    );
  });

  it('is the same when drawn part by part, figures counted through', () => {
    const made = notebook([
      section('section-1', { pieces: ['<p>a</p>', figure, figure], working: ['1'] }),
      section('section-2', { pieces: [figure] }),
    ]);
    const parts = drawnParts(made, paper);
    expect(parts.sections).toHaveLength(2);
    expect(parts.sections[1]).toMatch(/^<section.*<figure id="figure-3">.*<\/section>\n$/s);
    expect(framedPage(made, parts)).toBe(renderPage(made, paper));
  });

  it('is the same text when made again', () => {
    const sections = [section('section-1', { pieces: [figure] })];
    expect(page(sections).text).toBe(page(sections).text);
  });
});
