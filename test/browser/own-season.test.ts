import { readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { chartLibraryBytes, ownSeasonPage } from '../../lib/browser/build/own-season-page.ts';
import { ownText } from '../../lib/notebook/own-text.ts';
import { LANGUAGES, wordsIn } from '../../lib/words/languages.ts';
import { hasChromium, openBrowser, root, siteText } from './finished-pages.ts';
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
  unpackedPrograms,
} from './own-season-page.ts';

const demo = DEMO.map((path) => file(basename(path), readFileSync(path)));
const HEAD = 'cross_id,pollination_date,seed_parent,pollen_parent,storage,pollen_age_days,outcome';

describe.runIf(hasChromium())('your own season', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());

  it('goes from files to the report that the command writes, by mouse, and asks for nothing', async () => {
    const { page, asked, complaints, close } = await openOwnSeason(browser);
    await page.locator('#own-files').setInputFiles(demo);
    await read(page);
    expect(await page.locator('#own-read-files').textContent()).toContain('291 rows, 272 used, 19 left out');
    await page.locator('#own-work').click();
    await done(page);
    const saved = await savedBy(page, () => page.locator('#own-save-report').click());
    const command = commandReport(demo);
    expect(command.status).toBe(0);
    expect(tree(saved)).toBe(tree(command.text));
    expect(saved).not.toMatch(/<script|\son[a-z]+="/i);
    const headings = await page.locator('#own-report h2').allTextContents();
    expect(headings).toContain('Did frozen pollen work?');
    expect(asked).toEqual([]);
    expect(complaints).toEqual([]);
    await close();
  });

  it('uses the settings as the command uses its options', async () => {
    const { page, close } = await openOwnSeason(browser);
    await page.locator('#own-files').setInputFiles(demo.slice(0, 2));
    await read(page);
    await page.locator('#own-work').click();
    await done(page);
    await page.locator('#own-change > summary').click();
    await page.fill('#own-worth', '33.3');
    await page.fill('#own-use-on', '2026-06-20');
    await page.check('input[name=own-endpoint][value=final]');
    await page.locator('[data-plant]').first().fill('9');
    expect(await page.locator('#own-changed').isVisible()).toBe(true);
    await page.locator('#own-settings button[type=submit]').click();
    await page.waitForSelector('#own-answer', { state: 'hidden' });
    await done(page);
    const saved = await savedBy(page, () => page.locator('#own-save-report').click());
    const flowers = await savedBy(page, () => page.locator('#own-save-flowers').click());
    const settings = JSON.parse(await savedBy(page, () => page.locator('#own-save-settings').click()));
    const options = ['--worth', '0.333', '--use-on', '2026-06-20', '--endpoint', 'final'];
    const command = commandReport([...demo.slice(0, 2), file('flowers.csv', flowers)], options);
    expect(tree(saved)).toBe(tree(command.text));
    expect(settings).toEqual({ version: 1, endpoint: 'final', worth: 0.333, 'use-on': '2026-06-20' });
    await close();
  });

  it('has no fault of accessibility and never scrolls sideways at any step', async () => {
    const { page, close } = await openOwnSeason(browser, { viewport: { width: 320, height: 640 } });
    const look = async (state: string) => {
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme });
        await expectAccessible(page, `${state} ${colorScheme}`);
      }
      await expectNoSideways(page, state);
    };
    await look('empty');
    await page
      .locator('#own-files')
      .setInputFiles([file('crosses.csv', `${HEAD}\nT1,03/04/2025,A,B,fresh,,fruit`)]);
    await read(page);
    await look('question');
    await page.locator('button[data-remove]').click();
    await page.locator('#own-files').setInputFiles(demo.slice(0, 1));
    await read(page);
    await look('read');
    await page.locator('#own-work').click();
    await page.waitForSelector('#own-counts-said section:nth-of-type(3)');
    await look('counts');
    await done(page);
    await page.locator('#own-change > summary').click();
    await look('done');
    await close();
  });
});

describe('the file your-own-season.html', () => {
  it.each(LANGUAGES)('has at most 300 kB besides the charts’ library in %s', async (language) => {
    const { before, after } = await ownSeasonPage(
      join(root, 'dist'),
      await wordsIn(language),
      await ownText(language),
    );
    const text = siteText(language === 'en' ? 'your-own-season.html' : `your-own-season.${language}.html`);
    expect([text.startsWith(before), text.endsWith(after)]).toEqual([true, true]);
    const library = await chartLibraryBytes(join(root, 'dist'));
    expect(library).toBeGreaterThan(80_000);
    expect(library).toBeLessThan(130_000);
    expect(Buffer.byteLength(text) - library).toBeLessThanOrEqual(300_000);
  });

  it('is one file that loads nothing and has no way out in its own script', () => {
    const text = siteText('your-own-season.html');
    expect(text).not.toMatch(/<(link|img|iframe|object|embed|base)\b[^>]*(src|href)=|@import|@font-face/i);
    const { script, packed, programs } = unpackedPrograms(text);
    const [page = '', worker = '', kept = '', ...others] = programs;
    expect([page.length > 30_000, worker.length > 400_000, others]).toEqual([true, true, []]);
    expect(kept).toMatch(/^[01]+$/);
    expect(script.replace(packed, page + worker)).not.toMatch(
      /\b(fetch|XMLHttpRequest|WebSocket|EventSource|RTCPeerConnection|sendBeacon|localStorage|sessionStorage|indexedDB|importScripts)\b|window\.open|location\.(href|assign|replace)|document\.cookie|\beval\(|new Function\(/,
    );
  });
});
