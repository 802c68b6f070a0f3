import { readdirSync, readFileSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { FileJson } from '../../lib/command/json.ts';
import { run } from '../command/memory-world.ts';
import { OTHER_PROGRAMS } from '../season/program-files.ts';
import { hasChromium, openBrowser } from './finished-pages.ts';
import { file, type OpenedPage, openOwnSeason, read } from './own-season-page.ts';

/*
 * One page, many files in turn: whatever the bytes are, the page must say of them what the command says. The command is
 * the second voice, so what is compared comes from outside the page.
 */

const fixtures = new URL('../season/fixtures/', import.meta.url);
const HEAD = 'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome';
const picture = Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0, 0, 13, 73, 72, 68, 82]);

/** Every fixture of the reader (encodings, separators, faults of cells and rows), other programs' files, odd ones. */
const FILES: readonly (readonly [name: string, bytes: Uint8Array])[] = [
  ...readdirSync(fixtures).map((name): [string, Uint8Array] => [name, readFileSync(new URL(name, fixtures))]),
  ...Object.entries(OTHER_PROGRAMS).map(([kind, bytes]): [string, Uint8Array] => [`season ${kind}`, bytes]),
  ['crosses.pdf', Buffer.from('%PDF-1.7\n%âãÏÓ\n1 0 obj')],
  ['crosses.html', Buffer.from('<!doctype html><html><table><tr><td>1</td></tr></table></html>')],
  ['picture.png', picture],
  ['nothing.csv', new Uint8Array()],
  ['half a workbook.xlsx', Buffer.from('PK\u0003\u0004 and more')],
  ['other.csv', Buffer.from('x,y\n1,2\n')],
  ['short.csv', Buffer.from('cross_id,pollination_date,seed_parent\nT1,2025-06-01,A\n')],
  ['headers.csv', Buffer.from(`${HEAD}\n`)],
  ['broken.csv', Buffer.from(`${HEAD}\nT1,2025-02-30,A,B,fresh,fruit\n`)],
  ['open.csv', Buffer.from(`${HEAD}\nT1,2025-06-01,A,B,fresh,unknown\n`)],
  ['vials alone.csv', Buffer.from('vial,pollen_parent,collected,storage\nF-01,A,2024-07-17,frozen\n')],
  [
    'windows-1252;.csv',
    Buffer.from(`${HEAD.replaceAll(',', ';')}\nT1;14.06.2025;Zo\xEB;K\xF6nigin;fresh;fruit\n`, 'latin1'),
  ],
  [
    'utf-16 with tabs.txt',
    Buffer.from(
      `\uFEFF${HEAD.replaceAll(',', '\t')}\nT1\t2025-06-14\tZoë\tKönigin\tfresh\tfruit\n`,
      'utf16le',
    ),
  ],
];

const squeezed = (text: string | null): string => (text ?? '').replaceAll(/\s+/g, ' ').trim();

/** What the command says of a file: what was found in it, and why nothing can be counted. */
async function commandSays(name: string, bytes: Uint8Array) {
  const files = { [name]: bytes };
  const check = JSON.parse((await run(['check', name, '--json'], { files })).out) as { files: FileJson[] };
  const report = await run(['report', name, '-o', 'out.html'], { files });
  const refused = report.status === 2 ? report.err.replace(/^fruitodds: /, '').split('\n')[0]! : null;
  return { found: check.files, refused };
}

async function pageSays({ page }: OpenedPage, name: string, bytes: Uint8Array) {
  await page.locator('#own-files').setInputFiles([file(name, bytes)]);
  await read(page);
  const text = squeezed(await page.locator('#own-read-files').textContent());
  const refused = page.locator('#own-read-files > .error');
  const said = {
    text,
    refused: (await refused.count()) > 0 ? squeezed(await refused.first().textContent()) : null,
    asks: await page.locator('#own-questions').isVisible(),
    errors: await page.locator('#own-read-files li.error').count(),
    goesOn: await page.locator('#own-work').isVisible(),
  };
  await page.locator('#own-chosen [data-remove]').click();
  expect(await page.locator('#own-reading').isVisible()).toBe(false);
  return said;
}

describe.runIf(hasChromium())('of each file the page says what the command says', () => {
  let browser: Browser;
  let opened: OpenedPage;
  beforeAll(async () => {
    browser = await openBrowser();
    opened = await openOwnSeason(browser);
  });
  afterAll(() => browser.close());

  it('has files of every kind', () => {
    expect(FILES.length).toBeGreaterThan(130);
    expect(new Set(FILES.map(([name]) => name)).size).toBe(FILES.length);
  });

  it.each(FILES)('%s', async (name, bytes) => {
    const command = await commandSays(name, bytes);
    const page = await pageSays(opened, name, bytes);
    for (const { rows, used, leftOut, problems } of command.found) {
      expect(page.text).toContain(
        `${rows === 1 ? '1 row' : `${rows} rows`}, ${used} used, ${leftOut} left out.`,
      );
      // The first problem of each code: others of its kind may be told in one sentence with it.
      const firsts = new Map(problems.toReversed().map((problem) => [problem.code, problem]));
      for (const { message, fix } of firsts.values()) {
        expect(page.text).toContain(squeezed(message.replace(/^Row \d+: /, '')));
        if (!/ --[a-z]/.test(fix) && command.refused === null)
          expect(page.text).toContain(fix.split(/[.:,;]/)[0]);
      }
    }
    expect(page.text).not.toMatch(/ --[a-z]/);
    if (command.refused === null) expect(page).toMatchObject({ refused: null, goesOn: true });
    else {
      expect(page.goesOn).toBe(false);
      // An open question is asked, or is an error in the list.
      if (page.refused === null) expect(page.asks || page.errors > 0).toBe(true);
      else expect(page.refused.startsWith(squeezed(command.refused))).toBe(true);
    }
    expect({ asked: opened.asked, complaints: opened.complaints }).toEqual({ asked: [], complaints: [] });
  });
});
