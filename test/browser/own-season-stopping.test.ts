import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { STAGES } from '../../lib/words/told/stages.ts';
import { hasChromium, openBrowser } from './finished-pages.ts';
import { DEMO, done, file, openOwnSeason, read, savedBy } from './own-season-page.ts';

const demo = DEMO.map((path) => file(basename(path), readFileSync(path)));

/** Presses Stop as soon as a step is told, since some steps last a few milliseconds; true once it was pressed. */
function stopAtStep(page: Page, step: number): Promise<void> {
  return page.evaluate((wanted) => {
    const stage = document.getElementById('own-stage')!;
    const began = new RegExp(`^\\D*${wanted}\\b`);
    document.documentElement.dataset.stopped = 'no';
    const observer = new MutationObserver(() => {
      if (!began.test(stage.textContent ?? '')) return;
      observer.disconnect();
      document.getElementById('own-cancel')!.click();
      document.documentElement.dataset.stopped = 'yes';
    });
    stage.textContent = '';
    observer.observe(stage, { childList: true, characterData: true, subtree: true });
  }, step);
}

const stopped = (page: Page) => page.waitForSelector('html[data-stopped=yes]');
const visible = (page: Page, id: string) => page.locator(`#${id}`).isVisible();

describe.runIf(hasChromium())('stopping', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());

  it('works at every step, says what is kept, and leaves nothing that hangs', async () => {
    const { page, complaints, close } = await openOwnSeason(browser);
    const status = () => page.locator('#own-status').textContent();

    // While the files are being read nothing is known of them yet.
    await stopAtStep(page, 1);
    await page.locator('#own-files').setInputFiles(demo);
    await stopped(page);
    expect(await visible(page, 'own-working')).toBe(false);
    expect(await status()).toContain('not read');
    expect(await page.locator('#own-chosen li').count()).toBe(3);
    await page.locator('#own-read-again').click();
    await read(page);

    for (let step = 2; step <= STAGES.length; step += 1) {
      await stopAtStep(page, step);
      await page.locator('#own-work').click();
      await stopped(page);
      const seen = {
        step,
        working: await visible(page, 'own-working'),
        counts: await visible(page, 'own-counts'),
        answer: await visible(page, 'own-answer'),
        goesOn: await visible(page, 'own-work'),
      };
      expect(seen).toEqual({ step, working: false, counts: false, answer: false, goesOn: true });
      expect(await status()).toMatch(/^Stopped\. Your files are still read/);
    }
    await page.locator('#own-work').click();
    await done(page);
    expect(complaints).toEqual([]);
    await close();
  }, 120_000);

  it('leaves a report that was there before, with its page and what it can save', async () => {
    const { page, complaints, close } = await openOwnSeason(browser);
    await page.locator('#own-files').setInputFiles(demo);
    await read(page);
    await page.locator('#own-work').click();
    // All ten sections: they are placed one after another.
    await page.waitForSelector('#own-report section:nth-of-type(10)', { state: 'attached' });
    const save = () => savedBy(page, () => page.locator('#own-save-report').click());
    const before = await save();
    const shown = await page.locator('#own-report').textContent();
    await page.locator('#own-change > summary').click();
    await page.fill('#own-worth', '40');
    for (const step of [2, 4]) {
      await stopAtStep(page, step);
      await page.locator('#own-settings button[type=submit]').click();
      await stopped(page);
      expect(await page.locator('#own-status').textContent()).toContain('the report of before is kept');
      expect(await visible(page, 'own-answer')).toBe(true);
      expect(await visible(page, 'own-changed')).toBe(true);
      await page.waitForSelector('#own-report section:nth-of-type(10)', { state: 'attached' });
      expect(await page.locator('#own-report').textContent()).toBe(shown);
      expect(await save()).toBe(before);
    }
    // A copy to share is stopped without harm to the report.
    await page.locator('#own-share > summary').click();
    await page.locator('#own-share-form button[type=submit]').click();
    await page.locator('#own-share-stop').click();
    expect(await page.locator('#own-share-status').textContent()).not.toBe('');
    expect(await page.locator('#own-shared button').count()).toBe(0);
    expect(await save()).toBe(before);
    expect(complaints).toEqual([]);
    await close();
  }, 120_000);
});
