import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { hasChromium, openBrowser, root, siteAddress } from './finished-pages.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** The parts of axe that these tests use. */
interface Axe {
  readonly run: (options: object) => Promise<{ readonly violations: readonly { readonly id: string }[] }>;
}

describe.runIf(hasChromium())('the pages of the library', { timeout: 120_000 }, () => {
  const pages = readdirSync(join(root, 'site', 'api'));
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());

  // The list of all, the longest, and one with every kind of tag.
  it.each(['index.html', 'words.html', 'proportions.html'])(
    '%s opens from the disk without a complaint, keeps its width and has no fault of accessibility',
    async (name) => {
      expect(pages).toContain(name);
      const page = await browser.newPage();
      const said: string[] = [];
      page.on('console', (message) => said.push(message.text()));
      page.on('request', (request) => said.push(request.url()));
      const address = siteAddress(`api/${name}`);
      for (const width of [320, 1280]) {
        await page.setViewportSize({ width, height: 800 });
        await page.goto(address);
        const [scrollWidth, clientWidth] = await page.evaluate(() => {
          const { scrollWidth: all, clientWidth: seen } = document.documentElement;
          return [all, seen];
        });
        expect([width, scrollWidth]).toEqual([width, clientWidth]);
      }
      expect(said.filter((one) => one !== address)).toEqual([]);
      await page.evaluate(axe);
      const { violations } = await page.evaluate(() =>
        (globalThis as unknown as { axe: Axe }).axe.run({
          runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
          resultTypes: ['violations'],
        }),
      );
      expect(violations.map(({ id }) => id)).toEqual([]);
      await page.close();
    },
  );

  it('lead back to the start page of the site', async () => {
    const page = await browser.newPage();
    await page.goto(siteAddress('api/proportions.html'));
    await page.locator('nav summary').click();
    await page.getByRole('link', { name: 'All pages of the site' }).click();
    expect(page.url()).toBe(siteAddress('index.html'));
    await page.close();
  });
});
