import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { hasChromium, openBrowser, root, siteAddress, siteText } from './finished-pages.ts';
import { bare, pdfPages } from './pdf-text.ts';

// Every page that a notebook made, as the built site has them: a new notebook is looked at without a word here. Pages
// with a script have tests of their own, the library's pages too. Of each other language the longest page and
// one with many tables stand for all: a page differs from its English twin by the length of its words alone.
const looked = /^(?:[^.]+|(?:season-review|next-season)\.[a-z]{2})\.html$/;
const pages = readdirSync(join(root, 'site')).filter(
  (name) => looked.test(name) && !/<script\b/.test(siteText(name)),
);
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

const unfold = (page: Page): Promise<void> =>
  page.evaluate(() => {
    for (const details of document.querySelectorAll('details')) details.open = true;
  });

async function faults(page: Page): Promise<string[]> {
  await page.evaluate(axe);
  const { violations } = await page.evaluate(() =>
    (globalThis as unknown as { axe: Axe }).axe.run({
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
      resultTypes: ['violations'],
    }),
  );
  return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html}`));
}

/** What reaches beyond the right edge. */
function beyondEdge(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const { clientWidth, scrollWidth } = document.documentElement;
    const beyond = [...document.querySelectorAll('body *:not(.skip)')]
      .filter((element) => element.getBoundingClientRect().right > clientWidth + 0.5)
      .map((element) => element.outerHTML.slice(0, 120));
    return scrollWidth > clientWidth ? [`scrolls by ${scrollWidth - clientWidth} px`, ...beyond] : beyond;
  });
}

describe.runIf(hasChromium())('every page of the site', { timeout: 120_000 }, () => {
  let browser: Browser;
  let page: Page;
  beforeAll(async () => {
    browser = await openBrowser();
    page = await browser.newPage();
  });
  afterAll(() => browser.close());

  it('is found in the built site', () => {
    expect(pages).toEqual(expect.arrayContaining(['index.html', 'season-review.html', 'problems.html']));
    expect(pages).toEqual(
      expect.arrayContaining(['de', 'es', 'fr'].map((code) => `season-review.${code}.html`)),
    );
    const notebooks = readdirSync(join(root, 'reports')).filter((name) => /^[^.]+\.md$/.test(name));
    expect(pages.map((name) => name.replace('.html', '.md'))).toEqual(expect.arrayContaining(notebooks));
  });

  // The words of a translation are longer: each page of each language, folded and open, by the width alone.
  it('keeps within 320 px in every language', async () => {
    const translated = readdirSync(join(root, 'site')).filter((name) => /^[^.]+\.[a-z]{2}\.html$/.test(name));
    expect(translated.length).toBeGreaterThan(3 * 9);
    await page.setViewportSize({ width: 320, height: 800 });
    await page.emulateMedia({ media: 'screen' });
    const beyond: Record<string, string[]> = {};
    for (const name of translated) {
      await page.goto(siteAddress(name));
      const folded = await beyondEdge(page);
      await unfold(page);
      beyond[name] = [...folded, ...(await beyondEdge(page))];
    }
    expect(beyond).toEqual(Object.fromEntries(translated.map((name) => [name, []])));
  });

  it('leads nowhere but to pages and files beside it, so that it can stand in any folder', () => {
    const files = new Set(readdirSync(join(root, 'site')));
    const astray = [...files]
      .filter((name) => name.endsWith('.html'))
      .flatMap((name) =>
        [...siteText(name).matchAll(/<a\b[^>]*\shref="([^"]*)"/g)]
          .map(([, address = '']) => address)
          .filter((address) => !address.startsWith('#'))
          .filter((address) => !files.has(address.replace(/#.*$/, '').replace(/^api\/.*/, 'api')))
          .map((address) => `${name}: ${address}`),
      );
    expect(astray).toEqual([]);
  });

  describe.each(pages)('%s', (name) => {
    // 320 px is also what a screen of 1280 px shows at 400 % zoom.
    it.each([320, 390, 1280])('has no fault of accessibility and keeps within %i px', async (width) => {
      await page.setViewportSize({ width, height: 800 });
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ media: 'screen', colorScheme, forcedColors: 'none' });
        await page.goto(siteAddress(name));
        const folded = await beyondEdge(page);
        await unfold(page);
        expect({ colorScheme, folded, open: await beyondEdge(page), faults: await faults(page) }).toEqual({
          colorScheme,
          folded: [],
          open: [],
          faults: [],
        });
      }
    });

    it('holds all its content without a script and asks for nothing', async () => {
      const context = await browser.newContext({ javaScriptEnabled: false });
      const plain = await context.newPage();
      const asked: string[] = [];
      const complaints: string[] = [];
      plain.on('request', (request) => asked.push(request.url()));
      plain.on('console', (message) => complaints.push(message.text()));
      await plain.goto(siteAddress(name));
      expect({ asked, complaints }).toEqual({ asked: [siteAddress(name)], complaints: [] });
      const shown = plain.locator('main :is(h2, p, figure svg, figcaption)');
      const hidden = await plain.locator('main details :is(h2, p, figure svg, figcaption)').count();
      const visible = await plain.locator('main :is(h2, p, figure svg, figcaption):visible').count();
      expect(visible).toBeGreaterThan(0);
      expect(visible).toBeGreaterThanOrEqual((await shown.count()) - hidden);
      await context.close();
    });

    it('does not move, whatever the reader prefers', async () => {
      for (const reducedMotion of ['no-preference', 'reduce'] as const) {
        await page.emulateMedia({ media: 'screen', reducedMotion });
        await page.goto(siteAddress(name));
        const moving = await page.evaluate(() => [
          ...document.getAnimations().map(() => 'an animation'),
          ...[...document.querySelectorAll('*')]
            .filter((element) => {
              const { animationName, transitionDuration, scrollBehavior } = getComputedStyle(element);
              return animationName !== 'none' || transitionDuration !== '0s' || scrollBehavior === 'smooth';
            })
            .map((element) => element.outerHTML.slice(0, 80)),
        ]);
        expect(moving).toEqual([]);
      }
    });

    it('keeps marks, lines of tables and words apart from the page in forced colours', async () => {
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ media: 'screen', colorScheme, forcedColors: 'active' });
        await page.goto(siteAddress(name));
        await unfold(page);
        expect(await lost(page)).toEqual([]);
      }
      await page.emulateMedia({ forcedColors: 'none' });
    });

    it.each(['A4', 'Letter'])(
      'prints all its words on %s, nothing beyond the edge, nothing cut',
      async (format) => {
        await page.setViewportSize({ width: 1280, height: 800 });
        await page.emulateMedia({ media: 'print', forcedColors: 'none' });
        await page.goto(siteAddress(name));
        const texts = await page
          .locator('main :is(h2, p, li, td, th, figcaption)')
          .filter({ hasNot: page.locator('h2, p, li, td, th') })
          .evaluateAll((nodes) =>
            nodes.filter((node) => node.closest('.working') === null).map((node) => node.textContent ?? ''),
          );
        const printed = (await pdfPages(await page.pdf({ format, printBackground: true }))).join('');
        expect(texts.filter((text) => !printed.includes(bare(text)))).toEqual([]);
        // The width between the margins of 13 mm: 184 mm of A4, 189.9 mm of Letter.
        await page.setViewportSize({ width: format === 'A4' ? 695 : 717, height: 1000 });
        const cut = await page.evaluate(() =>
          [...document.querySelectorAll('figure svg, main tr')]
            .filter((element) => getComputedStyle(element).breakInside !== 'avoid')
            .map((element) => element.outerHTML.slice(0, 80)),
        );
        expect({ cut, beyond: await beyondEdge(page) }).toEqual({ cut: [], beyond: [] });
      },
    );
  });
});

/** Painted parts of drawings, and cells with a line, whose colour is that of the page. */
function lost(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const paper = getComputedStyle(document.documentElement).backgroundColor;
    const clear = new Set([paper, 'none', 'rgba(0, 0, 0, 0)']);
    // Halos in the page's own colour, empty paths and the ground of a drawing are meant not to be seen.
    const marks =
      'figure svg :is(circle, path:not(.background, [d=""], [stroke="var(--paper)"]), line, rect, text)';
    const unseen = [...document.querySelectorAll(marks)].filter((mark) => {
      const { fill, stroke } = getComputedStyle(mark);
      return clear.has(fill) && clear.has(stroke);
    });
    const lines = [...document.querySelectorAll('main :is(td, th)')].filter((cell) => {
      const { borderBottomStyle, borderBottomColor } = getComputedStyle(cell);
      return borderBottomStyle !== 'none' && borderBottomColor === paper;
    });
    const words = [...document.querySelectorAll('main :is(p, td, th, figcaption)')].filter(
      (node) => getComputedStyle(node).color === paper,
    );
    return [...unseen, ...lines, ...words].map((node) => node.outerHTML.slice(0, 120));
  });
}
