/** The page on which growers try a file of their own, opened in a browser that writes down whatever it asks for. */

import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { expect } from 'vitest';
import { PROGRAMS_PARTED } from '../../lib/browser/starter.ts';
import { bytesOf } from '../../lib/browser/unpacked.ts';
import { root, siteAddress } from './finished-pages.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

export const demoFile = (name: string): string => join(root, 'data-demo', name);
export const DEMO = ['crosses.csv', 'vials.csv', 'flowers.csv'].map(demoFile);

export interface OpenedPage {
  readonly page: Page;
  /** Addresses that the page asked for, its own and its Worker's left out. */
  readonly asked: string[];
  /** Complaints of the browser: policy, script, promises. */
  readonly complaints: string[];
  readonly close: () => Promise<void>;
}

/** Opens the page from the disk, in English where no other is named. */
export async function openOwnSeason(
  browser: Browser,
  options: BrowserContextOptions = {},
  name = 'your-own-season.html',
): Promise<OpenedPage> {
  const context = await browser.newContext({ acceptDownloads: true, ...options });
  const page = await context.newPage();
  const asked: string[] = [];
  const complaints: string[] = [];
  const address = siteAddress(name);
  context.on('request', (request) => {
    if (request.url() !== address && !request.url().startsWith('blob:')) asked.push(request.url());
  });
  page.on('websocket', (socket) => void asked.push(socket.url()));
  page.on('popup', (popup) => void asked.push(popup.url()));
  page.on('console', (message) => void complaints.push(message.text()));
  page.on('pageerror', (error) => void complaints.push(error.message));
  page.on('dialog', (dialog) => void dialog.accept());
  await page.goto(address);
  // The page is shown before its program is unpacked: a drop in between would find nobody.
  await page.waitForFunction(() => [...document.scripts].some((script) => 'worker' in script));
  return { page, asked, complaints, close: () => context.close() };
}

/** A file in memory, to be chosen. */
export function file(name: string, text: string | Uint8Array) {
  return { name, mimeType: 'text/csv', buffer: Buffer.from(text) };
}

export const read = (page: Page): Promise<unknown> => page.waitForSelector('#own-reading:not([hidden])');
export const done = (page: Page): Promise<unknown> =>
  page.waitForSelector('#own-report section:last-of-type', { state: 'attached', timeout: 60_000 });

/** What is packed in the page's own script: the page's program and its Worker's. */
export function unpackedPrograms(text: string) {
  const script = text.slice(text.indexOf('<script>'));
  const [, packed = ''] = /["'`]([^"'`]{100000,})["'`]/.exec(script) ?? [];
  const programs = gunzipSync(bytesOf(packed)).toString().split(PROGRAMS_PARTED);
  return { script, packed, programs };
}

/** Presses a button and gives the text of the file that the browser then saves. */
export async function savedBy(page: Page, press: () => Promise<void>): Promise<string> {
  const [download] = await Promise.all([page.waitForEvent('download'), press()]);
  return readFileSync(await download.path(), 'utf8');
}

/**
 * What the command writes for files of these names and texts: the page, or what it says on standard error.
 *
 * @param beside files that lie in the folder too, for options that name them
 */
export function commandReport(
  files: readonly { readonly name: string; readonly buffer: Buffer }[],
  words: readonly string[] = [],
  beside: readonly { readonly name: string; readonly buffer: Buffer }[] = [],
): { readonly status: number | null; readonly text: string; readonly said: string } {
  const folder = mkdtempSync(join(tmpdir(), 'fruitodds-own-'));
  try {
    for (const { name, buffer } of [...files, ...beside]) writeFileSync(join(folder, name), buffer);
    const names = files.map(({ name }) => name);
    const { status, stderr } = spawnSync(
      process.execPath,
      [join(root, 'dist', 'lib', 'bin.js'), 'report', ...names, ...words, '-o', 'out.html'],
      { cwd: folder, encoding: 'utf8' },
    );
    const text = status === 2 ? '' : readFileSync(join(folder, 'out.html'), 'utf8');
    return { status, text, said: stderr };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** A finished report as its tree: tags, attributes, texts, with every number of a drawing to a whole unit. */
export function tree(text: string): string {
  return text.replaceAll(/(?<=<(?:path|g|svg|line|text|circle)\b[^>]*)\d+\.\d+/g, (number) =>
    String(Math.round(Number(number))),
  );
}

/** The parts of axe that these tests use. */
interface Axe {
  readonly run: (options: object) => Promise<{
    readonly violations: readonly {
      readonly id: string;
      readonly nodes: readonly { readonly html: string }[];
    }[];
  }>;
}

/**
 * Expects no fault of accessibility in the state that the page is in. Sections that are not in view have a guessed height until
 * they are: axe would measure them lying over each other, so all are laid out while it looks.
 */
export async function expectAccessible(page: Page, state: string): Promise<void> {
  await page.evaluate(axe);
  const { violations } = await page.evaluate(async () => {
    const laidOut = new CSSStyleSheet();
    laidOut.replaceSync('#own-report>section{content-visibility:visible!important}');
    document.adoptedStyleSheets = [laidOut];
    const result = await (globalThis as unknown as { axe: Axe }).axe.run({
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
      resultTypes: ['violations'],
    });
    document.adoptedStyleSheets = [];
    return result;
  });
  const found = violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${state} ${id}: ${html}`));
  expect(found).toEqual([]);
}

/** Expects that nothing reaches beyond the right edge. */
export async function expectNoSideways(page: Page, state: string): Promise<void> {
  const beyond = await page.evaluate(() => {
    const edge = document.documentElement.clientWidth;
    return [...document.querySelectorAll('body *:not(.skip)')]
      .filter((element) => element.getBoundingClientRect().right > edge + 0.5)
      .map((element) => element.outerHTML.slice(0, 120));
  });
  expect({ state, beyond }).toEqual({ state, beyond: [] });
}
