import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { hasChromium, openBrowser, root } from './finished-pages.ts';

// The demo season with names that no line can hold: 200 letters that look alike, 60 and 14 letters, markup, from right to
// left; plants, a vial, a grower and a tag.
const LONG: readonly (readonly [name: string, long: string])[] = [
  ['Salt Moon', `${'S'.repeat(199)}1`],
  ['Copper Tide', `${'S'.repeat(199)}2`],
  ['Quiet Harbour', 'W'.repeat(60)],
  ['Hollow Bell', `<img src=x onerror=${'x'.repeat(60)}>`],
  ['Candle Weir', 'M'.repeat(14)],
  ['Lantern Creek', 'زهرة'.repeat(20)],
  ['F-01', 'F'.repeat(200)],
  ['Maren Ostrik', 'O'.repeat(200)],
  ['23-001', 'T'.repeat(200)],
];
const files = ['crosses.csv', 'flowers.csv', 'vials.csv'];

describe.runIf(hasChromium())('names that no line can hold', { timeout: 120_000 }, () => {
  const folder = mkdtempSync(join(tmpdir(), 'fruitodds-names-'));
  const site = join(folder, 'site');
  let browser: Browser;
  let page: Page;
  let pages: readonly string[] = [];
  beforeAll(async () => {
    mkdirSync(join(folder, 'season'));
    for (const file of files) {
      const text = readFileSync(join(root, 'data-demo', file), 'utf8');
      const renamed = LONG.reduce((said, [name, long]) => said.replaceAll(name, () => long), text);
      writeFileSync(join(folder, 'season', file), renamed);
    }
    const given = files.map((file) => join(folder, 'season', file));
    execFileSync(process.execPath, ['dist/lib/bin.js', 'site', ...given, '-o', site], {
      cwd: root,
      stdio: 'ignore',
    });
    pages = readdirSync(site).filter((name) => name.endsWith('.html'));
    browser = await openBrowser();
    page = await browser.newPage();
  }, 120_000);
  afterAll(async () => {
    await browser.close();
    rmSync(folder, { recursive: true });
  });

  const beyondEdge = (): Promise<readonly string[]> =>
    page.evaluate(() => {
      const { clientWidth, scrollWidth } = document.documentElement;
      const beyond = [...document.querySelectorAll('body *:not(.skip)')]
        .filter((element) => element.getBoundingClientRect().right > clientWidth + 0.5)
        .map((element) => element.outerHTML.slice(0, 120));
      return scrollWidth > clientWidth ? [`scrolls by ${scrollWidth - clientWidth} px`, ...beyond] : beyond;
    });

  // 641 px is the narrowest screen that shows tables as such; 695 px is the width of A4 between its margins of 13 mm.
  it.each([
    [320, 'screen'],
    [641, 'screen'],
    [1280, 'screen'],
    [695, 'print'],
  ] as const)('keep every page within %i px, folded and open, on %s', async (width, media) => {
    await page.setViewportSize({ width, height: 800 });
    await page.emulateMedia({ media });
    const found = new Map<string, unknown>();
    for (const name of pages) {
      await page.goto(pathToFileURL(join(site, name)).href);
      const folded = await beyondEdge();
      await page.evaluate(() => {
        for (const details of document.querySelectorAll('details')) details.open = true;
      });
      const open = await beyondEdge();
      if (folded.length + open.length > 0) found.set(name, { folded, open });
    }
    expect(pages).toEqual(
      expect.arrayContaining(['season-review.html', 'crossing-sheet.html', 'explore.html']),
    );
    expect(found).toEqual(new Map());
  });
});
