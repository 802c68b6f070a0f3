import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { gzipSync } from 'node:zlib';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { hasChromium, openBrowser, root, siteAddress, siteText } from './finished-pages.ts';
import { bare, pdfPages } from './pdf-text.ts';

const pages = [
  'season-review.html',
  'fresh-against-frozen.html',
  'next-season.html',
  'crossing-sheet.html',
  'index.html',
];
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** The parts of axe that these tests use. */
interface Axe {
  readonly run: (options: object) => Promise<{
    readonly violations: readonly {
      readonly id: string;
      readonly nodes: readonly { readonly html: string }[];
    }[];
  }>;
}

describe.runIf(hasChromium())('the season review of the demo season', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());

  async function opened(name: string, options: BrowserContextOptions): Promise<Page> {
    const page = await (await browser.newContext(options)).newPage();
    await page.goto(siteAddress(name));
    return page;
  }

  const unfold = (page: Page): Promise<void> =>
    page.evaluate(() => {
      for (const details of document.querySelectorAll('details')) details.open = true;
    });

  describe('with scripts off', () => {
    it('holds all its content, asks for nothing and breaks no rule of its own policy', async () => {
      const page = await (await browser.newContext({ javaScriptEnabled: false })).newPage();
      const asked: string[] = [];
      const complaints: string[] = [];
      page.on('request', (request) => asked.push(request.url()));
      page.on('console', (message) => complaints.push(message.text()));
      await page.goto(siteAddress('season-review.html'));
      expect(asked).toEqual([siteAddress('season-review.html')]);
      expect(complaints).toEqual([]);
      const headings = await page.locator('main h2').allTextContents();
      expect(await page.locator('nav[aria-labelledby] a').allTextContents()).toEqual(headings);
      for (const heading of await page.locator('main h2').all()) expect(await heading.isVisible()).toBe(true);
      for (const drawing of await page.locator('figure svg').all()) {
        const box = await drawing.boundingBox();
        expect(box?.width).toBeGreaterThan(200);
        expect(box?.height).toBeGreaterThan(40);
      }
      await page.context().close();
    });

    it('unfolds every table and every working by a press of its summary', async () => {
      const page = await opened('season-review.html', { javaScriptEnabled: false });
      const folded = await page.locator('main details').all();
      expect(folded.length).toBeGreaterThan(0);
      for (const details of folded) {
        const content = details.locator('table, pre, p').first();
        expect(await content.isVisible()).toBe(false);
        await details.locator('summary').click();
        expect(await content.isVisible()).toBe(true);
      }
      await page.context().close();
    });
  });

  describe.each(pages)('%s', (name) => {
    for (const width of [320, 390, 1280]) {
      for (const colorScheme of ['light', 'dark'] as const) {
        it(`has no fault of accessibility ${width} px wide in the ${colorScheme} theme, folded and open`, async () => {
          const page = await opened(name, { viewport: { width, height: 800 }, colorScheme });
          await page.evaluate(axe);
          for (const state of ['folded', 'open']) {
            if (state === 'open') await unfold(page);
            const { violations } = await page.evaluate(() =>
              (globalThis as unknown as { axe: Axe }).axe.run({
                runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
                resultTypes: ['violations'],
              }),
            );
            const found = violations.flatMap(({ id, nodes }) =>
              nodes.map(({ html }) => `${state} ${id}: ${html}`),
            );
            expect(found).toEqual([]);
          }
          await page.context().close();
        });
      }
    }

    it('never scrolls sideways, from 320 px on, folded and open', async () => {
      for (const width of [320, 390, 640, 768, 1280]) {
        const page = await opened(name, { viewport: { width, height: 640 } });
        for (const state of ['folded', 'open']) {
          if (state === 'open') await unfold(page);
          const wide = await page.evaluate(() => {
            const edge = document.documentElement.clientWidth;
            const beyond = [...document.querySelectorAll('body *:not(.skip)')].filter(
              (element) => element.getBoundingClientRect().right > edge + 0.5,
            );
            return {
              scrolls: document.documentElement.scrollWidth > edge,
              beyond: beyond.map((node) => node.outerHTML.slice(0, 120)),
            };
          });
          expect({ width, state, ...wide }).toEqual({ width, state, scrolls: false, beyond: [] });
        }
        await page.context().close();
      }
    });

    it('shows no text in a chart smaller than 12 px on a screen of 320 px', async () => {
      const page = await opened(name, { viewport: { width: 320, height: 640 } });
      const sizes = await page.evaluate(() =>
        [...document.querySelectorAll('figure svg')].flatMap((svg) => {
          const scale = (svg as SVGSVGElement).getScreenCTM()?.a ?? 0;
          return [...svg.querySelectorAll('text')].map(
            (text) => scale * Number.parseFloat(getComputedStyle(text).fontSize),
          );
        }),
      );
      expect(sizes.filter((size) => size < 12)).toEqual([]);
      await page.context().close();
    });

    it('leads every link within the page to a place on it', async () => {
      const page = await opened(name, {});
      const lost = await page.evaluate(() =>
        [...document.querySelectorAll('a[href^="#"]')]
          .map((link) => link.getAttribute('href') ?? '')
          .filter((address) => document.getElementById(address.slice(1)) === null),
      );
      expect(lost).toEqual([]);
      await page.context().close();
    });
  });

  describe('on paper', () => {
    it.each(['A4', 'Letter'])(
      'fits 8 pages of %s, the answers on the first, with every cell of every table',
      async (format) => {
        const page = await opened('season-review.html', {});
        const cells = await page.locator('main td, main th').allTextContents();
        const drawnText = await page.locator('main figcaption').allTextContents();
        const answers = await page.locator('main section').first().locator('p').allTextContents();
        const printed = await pdfPages(await page.pdf({ format, printBackground: true }));
        await page.context().close();
        expect(printed.length).toBeLessThanOrEqual(8);
        const all = printed.join('');
        expect(cells.length).toBeGreaterThan(0);
        expect([...cells, ...drawnText].filter((text) => !all.includes(bare(text)))).toEqual([]);
        expect(answers.filter((text) => !printed[0]?.includes(bare(text)))).toEqual([]);
      },
    );

    // What the season review promises: eight pages, in whatever language.
    it.each(['de', 'es', 'fr'])('fits 8 pages of A4 and Letter in the language %s', async (language) => {
      const folder = mkdtempSync(join(tmpdir(), 'fruitodds-paper-'));
      try {
        const report = join(folder, 'report.html');
        const season = ['crosses.csv', 'flowers.csv', 'vials.csv'].map((name) => join('data-demo', name));
        const given = ['dist/lib/bin.js', 'report', ...season, '-o', report, '--language', language];
        execFileSync(process.execPath, given, { cwd: root, stdio: 'ignore' });
        const page = await (await browser.newContext()).newPage();
        await page.goto(pathToFileURL(report).href);
        expect(await page.locator('html').getAttribute('lang')).toBe(language);
        for (const format of ['A4', 'Letter']) {
          const printed = await pdfPages(await page.pdf({ format, printBackground: true }));
          expect([format, printed.length <= 8 ? 'at most 8' : printed.length]).toEqual([format, 'at most 8']);
        }
        await page.context().close();
      } finally {
        rmSync(folder, { recursive: true });
      }
    });

    // Seven points: the least that newspapers set notes in; common practice, no source. 695 and 717 px are the widths of
    // A4 and Letter between their margins of 13 mm.
    it.each([695, 717])('shows no text in a chart smaller than 7 points, %i px wide', async (width) => {
      const page = await opened('season-review.html', { viewport: { width, height: 1000 } });
      await page.emulateMedia({ media: 'print' });
      const points = await page.evaluate(() =>
        [...document.querySelectorAll('figure svg')].map((svg) => {
          const scale = (svg as SVGSVGElement).getScreenCTM()?.a ?? 0;
          const sizes = [...svg.querySelectorAll('text')].map((text) =>
            Number.parseFloat(getComputedStyle(text).fontSize),
          );
          return 0.75 * scale * Math.min(...sizes);
        }),
      );
      expect(points.length).toBeGreaterThan(5);
      expect(points.filter((size) => size < 7)).toEqual([]);
      await page.context().close();
    });

    it('leaves out the folded code', async () => {
      const page = await opened('season-review.html', {});
      const code = await page.locator('.working code').first().textContent();
      const printed = (await pdfPages(await page.pdf({ format: 'A4' }))).join('');
      expect(code?.length).toBeGreaterThan(0);
      expect(printed).not.toContain(bare(code ?? '').slice(0, 60));
      await page.context().close();
    });

    it('is white with dark ink from the dark theme too', async () => {
      const page = await opened('season-review.html', { colorScheme: 'dark' });
      await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
      const colours = await page.evaluate(() => {
        const { backgroundColor, color } = getComputedStyle(document.body);
        return { backgroundColor, ink: color.match(/\d+/g)?.map(Number) ?? [] };
      });
      expect(colours.backgroundColor).toBe('rgb(255, 255, 255)');
      expect(Math.max(...colours.ink)).toBeLessThan(80);
      await page.context().close();
    });

    it('cuts no drawing and no row', async () => {
      const page = await opened('season-review.html', {});
      await page.emulateMedia({ media: 'print' });
      const breaking = await page.evaluate(() =>
        [...document.querySelectorAll('figure svg, main tr')]
          .filter((element) => getComputedStyle(element).breakInside !== 'avoid')
          .map((element) => element.outerHTML.slice(0, 80)),
      );
      expect(breaking).toEqual([]);
      await page.context().close();
    });
  });
});

describe.each(pages)('the file %s', (name) => {
  it('is small', () => {
    const text = siteText(name);
    expect(Buffer.byteLength(text)).toBeLessThanOrEqual(150_000);
    expect(gzipSync(text).byteLength).toBeLessThanOrEqual(40_000);
  });

  it('holds no script, no inline style, no image, no font and no address to load from', () => {
    expect(siteText(name)).not.toMatch(
      /<(script|link|img|image|iframe|object|embed)\b|<[^>]*\s(style|src|srcset|on[a-z]+)="|url\(|@import|@font-face/i,
    );
  });
});
