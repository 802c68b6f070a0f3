import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { hasChromium, openBrowser, siteAddress } from './finished-pages.ts';
import { done, expectAccessible, expectNoSideways, file, openOwnSeason, read } from './own-season-page.ts';

const HEAD = 'cross_id,pollination_date,seed_parent,pollen_parent,storage,pollen_age_days,outcome';
const MOTHER = 'S'.repeat(200);
const ROWS = Array.from({ length: 24 }, (_, i) => {
  const [mother, father] = i % 2 === 0 ? [MOTHER, 'M'.repeat(60)] : ['Pale Otter', 'Salt Moon'];
  const pollen = i % 3 === 0 ? 'frozen,40' : 'fresh,';
  return `T${i},2025-06-${10 + (i % 9)},${mother},${father},${pollen},${i % 4 === 0 ? 'none' : 'fruit'}`;
});
const season = file('crosses.csv', [HEAD, ...ROWS].join('\n'));

/** Visible words in the page's own colour: in forced colours a browser backs each word with that colour. */
function unreadable(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const paper = getComputedStyle(document.documentElement).backgroundColor;
    return [...document.querySelectorAll('body *')]
      .filter((element) => element instanceof HTMLElement && element.offsetParent !== null)
      .filter((element) =>
        [...element.childNodes].some((node) => node.nodeType === 3 && node.nodeValue?.trim()),
      )
      .filter((element) => getComputedStyle(element).color === paper)
      .map((element) => element.outerHTML.slice(0, 120));
  });
}

async function expectReadable(page: Page, state: string): Promise<void> {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme, forcedColors: 'active' });
    expect({ state, colorScheme, lost: await unreadable(page) }).toEqual({ state, colorScheme, lost: [] });
  }
  await page.emulateMedia({ colorScheme: null, forcedColors: 'none' });
}

describe.runIf(hasChromium())('the pages with a script', { timeout: 120_000 }, () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());

  it('have no fault of accessibility in the dark theme where a file is refused and where work is stopped', async () => {
    const { page, close } = await openOwnSeason(browser, { colorScheme: 'dark' });
    await page.locator('#own-files').setInputFiles([file('crosses.csv', HEAD)]);
    await page.waitForFunction(() => document.querySelector('.error')?.checkVisibility());
    await expectAccessible(page, 'refused');
    await page.locator('#own-files').setInputFiles([season]);
    await read(page);
    await page.evaluate(() => {
      document.getElementById('own-work')?.click();
      document.getElementById('own-cancel')?.click();
    });
    await page.waitForFunction(() => document.getElementById('own-status')?.textContent?.includes('Stopped'));
    await expectAccessible(page, 'stopped');
    await close();
  });

  it('keep names of any length within 641 and 1280 px, and every word readable in forced colours', async () => {
    const { page, close } = await openOwnSeason(browser);
    await expectReadable(page, 'empty');
    await page.locator('#own-files').setInputFiles([season]);
    await read(page);
    await expectReadable(page, 'read');
    await page.locator('#own-work').click();
    await done(page);
    await expectReadable(page, 'done');
    await page.evaluate(() => {
      for (const details of document.querySelectorAll('details')) details.open = true;
    });
    await expectReadable(page, 'open');
    for (const width of [641, 1280]) {
      await page.setViewportSize({ width, height: 800 });
      await expectNoSideways(page, `open, ${width} px`);
    }
    await close();
  });

  it('are readable in forced colours on the page to explore too', async () => {
    const page = await browser.newPage();
    await page.goto(siteAddress('explore.html'));
    await page.waitForSelector('.explored svg');
    await expectReadable(page, 'explore');
    await page.close();
  });
});
