import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { compile, type TopLevelSpec } from 'vega-lite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { rawRates } from '../../lib/analysis/raw.ts';
import { exploreScript, exploreWords } from '../../lib/browser/build/explore-script.ts';
import { explorePage } from '../../lib/browser/explore-page.ts';
import { readSeason } from '../../lib/season/read-season.ts';
import type { Cross } from '../../lib/season/season.ts';
import { wordsIn } from '../../lib/words/languages.ts';
import { hasChromium, openBrowser, root, siteAddress, siteText } from './finished-pages.ts';
import { expectAccessible, expectNoSideways } from './own-season-page.ts';

const bytes = new Uint8Array(readFileSync(join(root, 'data-demo', 'crosses.csv')));
const season = readSeason([{ name: 'crosses.csv', bytes }]);
const english = await wordsIn('en');
const scripts = await Promise.all([
  exploreWords(join(root, 'dist'), english, (specification) => compile(specification as TopLevelSpec).spec),
  exploreScript(join(root, 'dist')),
]);
const pageText = (of: typeof season): string => {
  const { text } = explorePage(scripts, of, english);
  return typeof text === 'string' ? text : text({ address: 'explore.html', pages: [], twins: [] });
};

/** The library's rates of the rows that fit. */
const ratesOf = (fits: (cross: Cross) => boolean) =>
  rawRates({ ...season, crosses: season.crosses.filter(fits) });

async function open(browser: Browser, address: string, options: BrowserContextOptions = {}) {
  const context = await browser.newContext(options);
  const opened = await context.newPage();
  const asked: string[] = [];
  const complaints: string[] = [];
  context.on('request', (request) => void (request.url() !== address && asked.push(request.url())));
  opened.on('console', (message) => void complaints.push(message.text()));
  opened.on('pageerror', (error) => void complaints.push(error.message));
  await opened.goto(address);
  await drawn(opened);
  return { page: opened, asked, complaints, close: () => context.close() };
}

const drawn = (on: Page) => on.waitForSelector('#explore-chart-pollenParent svg text');
const sentence = (on: Page) => on.locator('#explore-sentence').textContent();

/** Name, fruits and flowers of every row of a table. */
const counted = (on: Page, table: number) =>
  on.locator(`#explore-tables table >> nth=${table}`).evaluate((element) =>
    [...element.querySelectorAll('tbody tr')].map((row) => {
      const [name, fruits, flowers] = [...row.children].map((cell) => cell.textContent);
      return [name, Number(fruits), Number(flowers)];
    }),
  );
const rowsIn = (on: Page, dimension: string, text: string) =>
  on.locator(`#explore-chart-${dimension} text`, { hasText: text });

async function expectCounts(on: Page, fits: (cross: Cross) => boolean): Promise<void> {
  const { overall, byStorage, byPair } = ratesOf(fits);
  expect(await sentence(on)).toContain(`${overall.fruits} of ${overall.flowers} flowers took (`);
  const storage = await counted(on, 0);
  expect(storage).toEqual(
    byStorage.map((rate) => [rate.storage.replace(/^room$/, 'room temperature'), rate.fruits, rate.flowers]),
  );
  const pairs = await counted(on, 1);
  const expected = byPair.map(({ seedParent, pollenParent, fruits, flowers }) => [
    `${seedParent} × ${pollenParent}`,
    fruits,
    flowers,
  ]);
  expect(pairs.map(String).sort()).toEqual(expected.map(String).sort());
}

describe.runIf(hasChromium())('the page to explore', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());

  it('counts as the library does whatever is chosen by mouse, and asks for nothing', async () => {
    const { page, asked, complaints, close } = await open(browser, siteAddress('explore.html'));
    await expectCounts(page, () => true);
    await page.locator('input[name=storage][value=fresh]').click();
    await expectCounts(page, ({ storage }) => storage !== 'fresh');
    await page.locator('input[name=season][value="2023"]').click();
    await page.selectOption('#explore-pollenParent', 'Salt Moon');
    const fits = (cross: Cross) =>
      cross.storage !== 'fresh' && cross.season !== '2023' && cross.pollenParent === 'Salt Moon';
    await expectCounts(page, fits);
    expect(await page.locator('#explore-chosen').textContent()).toContain('Pollen parent: Salt Moon.');
    // The charts of other dimensions follow: their rows count what was chosen.
    const expected = ratesOf(fits).bySeedParent.map(({ fruits, flowers }) => `${fruits} of ${flowers}`);
    const shown = await page.locator('#explore-chart-seedParent text').allTextContents();
    expect(shown.filter((text) => / of /.test(text))).toEqual(expected);
    await page.locator('button[type=reset]').click();
    await expectCounts(page, () => true);
    expect(asked).toEqual([]);
    expect(complaints).toEqual([]);
    await close();
  });

  it('draws each dot and range where the library’s rate and Wilson’s range are', async () => {
    const { page, close } = await open(browser, siteAddress('explore.html'));
    const boxes = await page.locator('#explore-chart-storage').evaluate((chart) => {
      const box = (element: Element) => element.getBoundingClientRect();
      const rules = [...chart.querySelectorAll('.mark-rule.layer_1_marks line')].map(box);
      const dots = [...chart.querySelectorAll('.mark-symbol path')].map(box);
      const bar = box(chart.querySelector('.mark-rect path')!);
      const at = (pixels: number) => (10 * (pixels - bar.left)) / bar.width;
      return dots.map((dot, row) => [
        at(rules[row]!.left),
        at((dot.left + dot.right) / 2),
        at(rules[row]!.right),
      ]);
    });
    const { byStorage } = ratesOf(() => true);
    expect(boxes).toHaveLength(byStorage.length);
    byStorage.forEach(({ lower, estimate, upper }, row) => {
      [lower, estimate, upper].forEach((end, place) => {
        // Marks are a few pixels thick, and ten fruits are some six hundred pixels wide.
        expect(Math.abs(boxes[row]![place]! - 10 * end!)).toBeLessThan(0.06);
      });
    });
    await close();
  });

  it('takes a click on a chart’s row for that value alone, and a second one for all', async () => {
    const { page, complaints, close } = await open(browser, siteAddress('explore.html'));
    await rowsIn(page, 'storage', 'frozen').click();
    await expectCounts(page, ({ storage }) => storage === 'frozen');
    expect(await page.isChecked('input[name=storage][value=fresh]')).toBe(false);
    await rowsIn(page, 'seedParent', 'Nightjar 3').click();
    expect(await page.inputValue('#explore-seedParent')).toBe('Nightjar 3');
    await expectCounts(page, (cross) => cross.storage === 'frozen' && cross.seedParent === 'Nightjar 3');
    await rowsIn(page, 'seedParent', 'Nightjar 3').click();
    await rowsIn(page, 'storage', 'frozen').click();
    await expectCounts(page, () => true);
    expect(await page.isChecked('input[name=storage][value=fresh]')).toBe(true);
    expect(complaints).toEqual([]);
    await close();
  });

  it('is used by keyboard alone', async () => {
    const { page, close } = await open(browser, siteAddress('explore.html'));
    const tabTo = async (selector: string) => {
      for (let presses = 0; presses < 60; presses += 1) {
        await page.keyboard.press('Tab');
        if (await page.evaluate((wanted) => document.activeElement?.matches(wanted) ?? false, selector))
          return;
      }
      throw new Error(`no way to ${selector} by the Tab key`);
    };
    await tabTo('input[name=storage][value=frozen]');
    await page.keyboard.press('Space');
    await expectCounts(page, ({ storage }) => storage !== 'frozen');
    await tabTo('#explore-seedParent');
    await page.keyboard.press('ArrowDown');
    const only = await page.inputValue('#explore-seedParent');
    await expectCounts(page, (cross) => cross.storage !== 'frozen' && cross.seedParent === only);
    await tabTo('button[type=reset]');
    await page.keyboard.press('Enter');
    await expectCounts(page, () => true);
    await close();
  });

  it('has no fault of accessibility and never scrolls sideways, in either theme', async () => {
    for (const [width, colorScheme] of [
      [320, 'light'],
      [1280, 'dark'],
    ] as const) {
      const options = { viewport: { width, height: 800 }, colorScheme };
      const { page, close } = await open(browser, siteAddress('explore.html'), options);
      await expectAccessible(page, `${width} at first`);
      await expectNoSideways(page, `${width} at first`);
      for (const year of ['2023', '2024', '2025']) await page.uncheck(`input[name=season][value="${year}"]`);
      expect(await sentence(page)).toBe('No flower fits this choice.');
      await expectAccessible(page, `${width} none`);
      await expectNoSideways(page, `${width} none`);
      await close();
    }
  });

  it('gives its charts the width of a window that becomes narrow', async () => {
    const { page, close } = await open(browser, siteAddress('explore.html'));
    await page.setViewportSize({ width: 320, height: 700 });
    await page.waitForFunction(() => document.querySelector('.explored svg')!.clientWidth <= 290);
    await expectNoSideways(page, 'made narrow');
    await close();
  });

  it('shows names that would be markup or parts of an object as they are', async () => {
    const head = 'cross_id,pollination_date,seed_parent,pollen_parent,storage,pollen_age_days,outcome\n';
    const long = 'x'.repeat(200);
    const names = ['__proto__', '</script><b>', '"><img src=x>', 'constructor', '🌵', long];
    const rows = names.map(
      (name, i) => `${i},2025-06-0${i + 1},"${name.replaceAll('"', '""')}",Salt Moon,frozen,,fruit\n`,
    );
    const text = new TextEncoder().encode(head + rows.join(''));
    const odd = readSeason([{ name: 'crosses.csv', bytes: text }]);
    const folder = mkdtempSync(join(tmpdir(), 'fruitodds-explore-'));
    try {
      const path = join(folder, 'a page.html');
      writeFileSync(path, pageText(odd));
      const options = { viewport: { width: 320, height: 700 } };
      const opened = await open(browser, pathToFileURL(path).href, options);
      expect(await sentence(opened.page)).toContain('6 of 6 flowers took');
      await expectNoSideways(opened.page, 'odd names');
      const shown = await opened.page.locator('#explore-chart-seedParent text').allTextContents();
      for (const name of names.slice(0, 5)) expect(shown).toContain(name);
      expect(shown.filter((text) => text === '1 of 1')).toHaveLength(names.length);
      await rowsIn(opened.page, 'seedParent', '__proto__').click();
      expect(await counted(opened.page, 1)).toEqual([['__proto__ × Salt Moon', 1, 1]]);
      expect(opened.complaints).toEqual([]);
      expect(opened.asked).toEqual([]);
      await opened.close();
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });
});

describe('the file of the page to explore', () => {
  it('is of at most 900 kB, with one script and no address to load', () => {
    const text = siteText('explore.html');
    expect(Buffer.byteLength(text)).toBeLessThanOrEqual(900_000);
    expect(text.match(/<script\b/gi)).toHaveLength(1);
    expect(text).not.toMatch(/<(link|iframe|img|object)\b[^>]*\s(src|href)=/i);
    expect(siteText('index.html')).toContain('href="explore.html"');
  });

  it('is built to the same bytes twice', () => {
    expect(pageText(season)).toBe(pageText(season));
  });
});
