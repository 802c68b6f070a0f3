import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { hasChromium, openBrowser } from './finished-pages.ts';
import {
  commandReport,
  DEMO,
  done,
  expectAccessible,
  expectNoSideways,
  file,
  openOwnSeason,
  read,
  savedBy,
  tree,
} from './own-season-page.ts';

const demo = DEMO.map((path) => file(basename(path), readFileSync(path)));
const HEAD = 'cross_id,pollination_date,seed_parent,pollen_parent,storage,pollen_age_days,outcome';

/** A small season; what stands for a day and for the names may be told. */
function smallSeason(day = (i: number) => `2025-06-${10 + (i % 5)}`, slip = 'Salt Moon'): string {
  const rows = Array.from({ length: 24 }, (_, i) => {
    const father = i === 20 ? slip : 'Salt Moon';
    const storage = i % 2 === 0 ? 'fresh,' : `frozen,${20 + i}`;
    return `T${i},${day(i)},Lantern Creek,${father},${storage},${i % 3 === 0 ? 'none' : 'fruit'}`;
  });
  return [HEAD, ...rows].join('\n');
}

const save = (page: Page, id: string) => savedBy(page, () => page.locator(`#${id}`).click());

async function workOut(page: Page): Promise<void> {
  await page.locator('#own-settings button[type=submit]').click();
  await page.waitForSelector('#own-answer', { state: 'hidden' });
  await done(page);
}

async function openSettings(page: Page): Promise<void> {
  await page.locator('#own-change > summary').click();
  await page.locator('#own-more > summary').click();
}

// The command is the second voice: the same files and options must give the same report.
describe.runIf(hasChromium())('options on the page', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());

  it('give the report of the command, are saved, and are read back', async () => {
    const { page, asked, complaints, close } = await openOwnSeason(browser, {
      viewport: { width: 320, height: 640 },
    });
    await page.locator('#own-files').setInputFiles(demo);
    await read(page);
    await openSettings(page);
    await page.fill('#own-level', '90');
    await page.fill('#own-as-of', '2025-12-01');
    await page.check('input[name=own-age-scale][value=days]');
    const [mother, father] = ['Lantern Creek', 'Salt Moon'];
    await page.selectOption('#own-must-first', mother);
    await page.selectOption('#own-must-second', father);
    await page.fill('#own-must-number', '2');
    await page.locator('[data-add=must]').click();
    await page.selectOption('#own-atMost-first', father);
    await page.fill('#own-atMost-number', '9');
    await page.locator('[data-add=atMost]').click();
    await page.locator('[data-add=same]').click();
    expect(await page.locator('#own-faults').textContent()).toBe('Choose two different names first.');
    await expectAccessible(page, 'settings');
    await expectNoSideways(page, 'settings');
    await workOut(page);
    const saved = await save(page, 'own-save-report');
    const wishes = ['--must', `${mother} × ${father}=2`, '--at-most', `${father}=9`];
    const options = ['--level', '0.9', '--age-scale', 'days', ...wishes];
    const asOf = ['--as-of', '2025-12-01'];
    expect(tree(saved)).toBe(tree(commandReport(demo, [...options, ...asOf]).text));
    const settings = file('settings.json', await save(page, 'own-save-settings'));
    await page.locator('button[data-drop=must]').click();
    expect(await page.locator('button[data-drop=must]').count()).toBe(0);
    expect([asked, complaints]).toEqual([[], []]);
    await close();

    const again = await openOwnSeason(browser);
    await again.page.locator('#own-files').setInputFiles([settings, ...demo]);
    await read(again.page);
    expect(await again.page.locator('#own-status').textContent()).toContain('settings.json are used');
    await again.page.locator('#own-work').click();
    await done(again.page);
    const back = await save(again.page, 'own-save-report');
    const command = commandReport(demo, ['--settings', 'settings.json'], [settings]);
    expect(tree(back)).toBe(tree(command.text));
    await again.close();
  }, 300_000);

  it('join names that look like one plant, once the grower says so', async () => {
    const { page, close } = await openOwnSeason(browser);
    const season = file('crosses.csv', smallSeason(undefined, 'salt moon'));
    await page.locator('#own-files').setInputFiles([season]);
    await read(page);
    await page.locator('#own-asked [data-other="salt moon"] input[value=yes]').check();
    await page.locator('#own-questions button[type=submit]').click();
    await page.waitForSelector('#own-questions', { state: 'hidden' });
    await page.locator('#own-work').click();
    await done(page);
    const saved = await save(page, 'own-save-report');
    expect(tree(saved)).toBe(tree(commandReport([season], ['--same', 'Salt Moon=salt moon']).text));
    await close();
  });

  it('count the days of an older sheet from 1904', async () => {
    const { page, close } = await openOwnSeason(browser);
    const season = file(
      'crosses.csv',
      smallSeason((i) => String(44_356 + (i % 5))),
    );
    await page.locator('#own-files').setInputFiles([season]);
    await read(page);
    await openSettings(page);
    await page.check('input[name=own-date-system][value="1904"]');
    await workOut(page);
    const saved = await save(page, 'own-save-report');
    expect(tree(saved)).toBe(tree(commandReport([season], ['--date-system', '1904']).text));
    expect(saved).toContain('1904');
    await close();
  });

  it('are refused with what can be done about it, and nothing is lost', async () => {
    const { page, complaints, close } = await openOwnSeason(browser);
    await page.locator('#own-files').setInputFiles([file('crosses.csv', smallSeason())]);
    await read(page);
    await page.locator('#own-files').setInputFiles([file('settings.json', '{ "version": 1, "worth": 7 }')]);
    await page.waitForFunction(() => document.getElementById('own-status')?.textContent?.includes('worth'));
    await openSettings(page);
    await page.selectOption('#own-must-first', 'Lantern Creek');
    await page.selectOption('#own-must-second', 'Salt Moon');
    await page.fill('#own-must-number', '1');
    await page.locator('[data-add=must]').click();
    await page.locator('#own-settings button[type=submit]').click();
    await page.waitForFunction(() => document.getElementById('own-status')?.textContent?.includes('no plan'));
    expect(await page.locator('#own-status').textContent()).not.toContain('--');
    await page.locator('button[data-drop=must]').click();
    await workOut(page);
    expect(complaints).toEqual([]);
    await close();
  });
});

describe.runIf(hasChromium())('a copy to share', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());

  it('is the command’s coded copy for the key that is saved apart, and holds nothing of the grower’s own', async () => {
    const { page, asked, complaints, close } = await openOwnSeason(browser);
    await page.locator('#own-files').setInputFiles(demo);
    await read(page);
    await page.locator('#own-work').click();
    await done(page);
    await page.locator('#own-share > summary').click();
    await page.locator('#own-share-form button[type=submit]').click();
    await page.waitForSelector('#own-shared [data-save=key]', { timeout: 60_000 });
    await expectAccessible(page, 'copy');
    const part = (at: string) => savedBy(page, () => page.locator(`#own-shared [data-save="${at}"]`).click());
    const [report, crosses, key] = [await part('0'), await part('1'), await part('key')];
    const command = commandReport(demo, ['--anonymous', '--key', 'mine.json'], [file('mine.json', key)]);
    expect(tree(report)).toBe(tree(command.text));
    const names = (JSON.parse(key) as { plants: { name: string }[] }).plants.map(({ name }) => name);
    expect(names.length).toBeGreaterThan(5);
    for (const name of names)
      expect({ name, found: report.includes(name) || crosses.includes(name) }).toEqual({
        name,
        found: false,
      });

    // The same key, chosen again, and the other level.
    await page.locator('#own-key').setInputFiles([file('mine.json', key)]);
    await page.check('input[name=own-share-level][value=summary]');
    await page.locator('#own-share-form button[type=submit]').click();
    await page.waitForSelector('#own-share-stop:not([hidden])');
    await page.waitForSelector('#own-shared [data-save=key]', { timeout: 60_000 });
    expect(await page.locator('#own-shared button').count()).toBe(2);
    const summary = await part('0');
    const other = commandReport(
      demo,
      ['--anonymous=summary', '--key', 'mine.json'],
      [file('mine.json', key)],
    );
    expect(tree(summary)).toBe(tree(other.text));
    expect([asked, complaints]).toEqual([[], []]);
    await close();
  }, 300_000);
});
