/** The pages that `npm run reports` made, and the browser that looks at them. */

import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { type Browser, chromium } from 'playwright-core';
import { findChromium, howToGetChromium } from '../../scripts/chromium.mjs';

export const root = fileURLToPath(new URL('../..', import.meta.url));

/** Path of a page of the demo site, which `npm test` renders before the tests. */
export function sitePath(name: string): string {
  const path = join(root, 'site', name);
  if (!existsSync(path)) throw new Error(`${path} is not there: run npm run reports first`);
  return path;
}

export const siteText = (name: string): string => readFileSync(sitePath(name), 'utf8');
export const siteAddress = (name: string): string => pathToFileURL(sitePath(name)).href;

/** Whether there is a browser. Where one is required (`.ci/run`), its absence is a failure, not a skip. */
export function hasChromium(): boolean {
  if (findChromium() !== null) return true;
  if (process.env.FRUITODDS_BROWSER_TESTS !== 'required') return false;
  throw new Error(`These tests need Chromium. ${howToGetChromium}`);
}

export function openBrowser(): Promise<Browser> {
  return chromium.launch({
    executablePath: findChromium() ?? '',
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });
}
