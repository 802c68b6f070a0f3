import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import writeExcelFile from 'write-excel-file/node';
import { readSeason } from '../../lib/season/read-season.ts';
import { hasChromium, openBrowser, siteAddress } from './finished-pages.ts';
import {
  commandReport,
  demoFile,
  done,
  expectAccessible,
  expectNoSideways,
  file,
  openOwnSeason,
  read,
  savedBy,
  tree,
} from './own-season-page.ts';

const HEAD = 'cross_id,pollination_date,seed_parent,pollen_parent,storage,pollen_age_days,outcome';
const CANARY = 'Canary-4f1c9e';
const HOSTILE = [
  '</script><script>document.title="ran"</script>',
  '"><img src=x onerror="document.title=`ran`">',
  '\u202Eגן הלילה\u202C',
  '🌵🌙 é 花',
  'W'.repeat(200),
  `${CANARY}.example`,
];

/** A season in which each of the names is a mother and a father, fresh and frozen. */
function seasonWith(names: readonly string[]): string {
  const quoted = names.map((name) => `"${name.replaceAll('"', '""')}"`);
  const rows = quoted.flatMap((mother, i) =>
    quoted.flatMap((father, j) =>
      i === j
        ? []
        : [
            [mother, father, 'fresh', '', (i + j) % 3 === 0 ? 'none' : 'fruit'],
            [mother, father, 'frozen', 30 + 10 * j, (i * j) % 2 === 0 ? 'none' : 'fruit'],
          ],
    ),
  );
  return [HEAD, ...rows.map((row, i) => [`T${i}`, `2025-06-${10 + (i % 5)}`, ...row].join(','))].join('\n');
}

const SMALL = seasonWith(['Lantern Creek', 'Salt Moon', 'Pale Otter']);
const small = file('crosses.csv', SMALL);

describe.runIf(hasChromium())('files on the page', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());

  const choose = (page: Page, ...files: readonly ReturnType<typeof file>[]) =>
    page.locator('#own-files').setInputFiles([...files]);
  const status = (page: Page) => page.locator('#own-status').textContent();

  it('can be worked out with the keyboard alone', async () => {
    const { page, close } = await openOwnSeason(browser);
    const tabTo = async (selector: string) => {
      for (let presses = 0; presses < 60; presses += 1) {
        if (await page.locator(selector).evaluate((element) => element === document.activeElement)) return;
        await page.keyboard.press('Tab');
      }
      throw new Error(`${selector} was not reached by Tab`);
    };
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.className)).toBe('skip');
    await tabTo('#own-files');
    await tabTo('details:has(#own-pasted) > summary');
    await page.keyboard.press('Enter');
    await tabTo('#own-pasted');
    await page.keyboard.insertText(SMALL.replaceAll('2025-06-1', '03/04/201'));
    await tabTo('#own-paste');
    await page.keyboard.press('Enter');
    await read(page);
    // A question that only the grower can answer: an arrow key chooses, Enter sends.
    await tabTo('#own-questions input[value=dmy]');
    await page.keyboard.press('Space');
    await page.keyboard.press('Enter');
    await page.waitForSelector('#own-confirm:not([hidden])');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('own-read');
    await tabTo('#own-work');
    await page.keyboard.press('Space');
    await done(page);
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('own-answer-heading');
    await tabTo('#own-save-report');
    expect(await savedBy(page, () => page.keyboard.press('Enter'))).toMatch(/^<!doctype html>/);
    await close();
  });

  it('may hold any name: nothing runs, nothing is sent, nothing is stored, nothing runs over the edge', async () => {
    const { page, asked, complaints, close } = await openOwnSeason(browser, {
      viewport: { width: 320, height: 640 },
    });
    const title = await page.title();
    await choose(page, file(`${'N'.repeat(180)}<b>.csv`, seasonWith(HOSTILE)));
    await read(page);
    await expectNoSideways(page, 'read');
    await page.locator('#own-work').click();
    await done(page);
    for (const details of await page.locator('details').all()) {
      await details.evaluate((element) => {
        (element as HTMLDetailsElement).open = true;
      });
    }
    await expectNoSideways(page, 'done');
    await expectAccessible(page, 'done');
    expect(await page.title()).toBe(title);
    expect(await page.locator('#own-report img, #own-report script, #own-flowers img').count()).toBe(0);
    expect(await page.locator('#own-report').textContent()).toContain(HOSTILE[0]!);
    const saved = await savedBy(page, () => page.locator('#own-save-report').click());
    expect(saved).toContain(CANARY);
    expect(saved).not.toMatch(/<script|<img/i);
    expect(asked).toEqual([]);
    expect(complaints).toEqual([]);
    const kept = await page.evaluate(async () => ({
      local: localStorage.length,
      session: sessionStorage.length,
      cookie: document.cookie,
      databases: (await indexedDB.databases()).length,
    }));
    expect(kept).toEqual({ local: 0, session: 0, cookie: '', databases: 0 });
    await close();
  });

  it('are refused before they are read where they are too large, with the page’s limit in the command’s words', async () => {
    const { page, close } = await openOwnSeason(browser);
    const huge = file('huge.csv', Buffer.alloc(20_000_001, `${HEAD}\n`));
    await choose(page, huge);
    await page.waitForSelector('#own-chosen .error');
    const said = (await page.locator('#own-chosen .error').textContent()) ?? '';
    expect(said).toMatch(/^The file has 21 MB; files of up to 20 MB can be read\. /);
    expect(await page.locator('label[for=own-files]').textContent()).toContain('up to 20 MB');
    await close();
  });

  it('are read once where they are chosen twice, and a mended one takes the place of the one before', async () => {
    const { page, close } = await openOwnSeason(browser);
    await choose(page, small);
    await read(page);
    await choose(page, small);
    await page.waitForFunction(() =>
      document.getElementById('own-status')?.textContent?.includes('is the same'),
    );
    expect(await page.locator('#own-chosen li').count()).toBe(1);
    await choose(page, file('crosses.csv', `${SMALL}\nT99,2025-06-20,A,B,fresh,,fruit`));
    await page.waitForFunction(() =>
      document.getElementById('own-status')?.textContent?.includes('took the place'),
    );
    await page.waitForFunction(() =>
      document.getElementById('own-read-files')?.textContent?.includes('13 rows'),
    );
    expect(await page.locator('#own-chosen li').count()).toBe(1);
    await close();
  });

  it('stop the work when they change, and the work stops when that is asked', async () => {
    const { page, complaints, close } = await openOwnSeason(browser);
    const large = file('large.csv', readFileSync(new URL('../reference/k-season600.csv', import.meta.url)));
    await choose(page, large);
    await read(page);
    await page.locator('#own-work').click();
    await page.waitForSelector('#own-counts-said section');
    await page.locator('#own-cancel').click();
    expect(await status(page)).toMatch(/^Stopped\./);
    expect(await page.locator('#own-working').isVisible()).toBe(false);
    await page.locator('#own-work').click();
    await page.waitForSelector('#own-counts-said section');
    await choose(page, file('vials.csv', readFileSync(demoFile('vials.csv'))));
    await page.waitForFunction(() =>
      document.getElementById('own-status')?.textContent?.includes('begins anew'),
    );
    await page.waitForFunction(() =>
      document.getElementById('own-read-files')?.textContent?.includes('vials.csv'),
    );
    // The stopped task must not come back with its report.
    await page.waitForTimeout(1500);
    expect(await page.locator('#own-answer').isVisible()).toBe(false);
    await page.locator('button[data-remove="large.csv"]').click();
    await page.locator('button[data-remove="vials.csv"]').click();
    expect(await page.locator('#own-reading').isVisible()).toBe(false);
    expect(complaints).toEqual([]);
    await close();
  });

  it('are gone after a reload and after going back, without a word left open', async () => {
    const { page, complaints, close } = await openOwnSeason(browser);
    const asked: string[] = [];
    page.on('dialog', (dialog) => void asked.push(dialog.type()));
    await choose(page, small);
    await read(page);
    // A browser asks only where something was pressed before.
    await page.locator('#own-work').click();
    await page.reload();
    expect(asked).toEqual(['beforeunload']);
    await page.waitForFunction(() => document.querySelectorAll('#own-chosen li').length === 0);
    await choose(page, small);
    await read(page);
    await page.goto(siteAddress('index.html'));
    await page.goBack();
    const again = async () => {
      if ((await page.locator('#own-chosen li').count()) === 0) await choose(page, small);
      await read(page);
      await page.locator('#own-work').click();
      await done(page);
    };
    await again();
    expect(complaints).toEqual([]);
    await close();
  });

  it('are given back cleaned, to be read again as the same season', async () => {
    const { page, close } = await openOwnSeason(browser);
    await choose(
      page,
      file('mine.csv', SMALL.replace('seed_parent', 'Mutter').replaceAll('fresh', 'Fresh ')),
    );
    await read(page);
    await page.locator('#own-work').click();
    await done(page);
    const cleaned = await savedBy(page, () => page.locator('#own-save-crosses').click());
    const crosses = (text: string) =>
      readSeason([{ name: 'x.csv', bytes: new TextEncoder().encode(text) }]).crosses.map(
        ({ crossId, seedParent, storage, outcome }) => [crossId, seedParent, storage, outcome],
      );
    expect(crosses(cleaned)).toEqual(crosses(SMALL));
    await close();
  });

  it('may be a workbook, read sheet by sheet as the command reads it', async () => {
    const { page, complaints, close } = await openOwnSeason(browser);
    const cells = (line: string) => line.split(',').map((cell) => cell.replace(/^"|"$/g, ''));
    // Written by write-excel-file, a writer from outside the project.
    const rows = SMALL.split('\n').map((line) => cells(line).map((value) => ({ value })));
    const book = file('season.xlsx', await writeExcelFile(rows).toBuffer());
    await choose(page, book);
    await read(page);
    await page.locator('#own-work').click();
    await done(page);
    const saved = await savedBy(page, () => page.locator('#own-save-report').click());
    expect(tree(saved)).toBe(tree(commandReport([book]).text));
    expect(complaints).toEqual([]);
    await close();
  });

  it('may be dropped, several at once, or pasted as a spreadsheet copies them, with tabs', async () => {
    const { page, complaints, close } = await openOwnSeason(browser);
    const vials = readFileSync(demoFile('vials.csv'), 'utf8');
    const give = (kind: 'drop' | 'paste', files: readonly (readonly [string, string])[]) =>
      page.evaluate(
        ([event, list]) => {
          const data = new DataTransfer();
          for (const [name, text] of list) data.items.add(new File([text], name));
          const init = { bubbles: true, cancelable: true };
          document.body.dispatchEvent(
            event === 'drop'
              ? new DragEvent('drop', { ...init, dataTransfer: data })
              : new ClipboardEvent('paste', { ...init, clipboardData: data }),
          );
        },
        [kind, files] as const,
      );
    await give('drop', [
      ['crosses.csv', SMALL],
      ['vials.csv', vials],
    ]);
    await read(page);
    expect(await page.locator('#own-chosen li').count()).toBe(2);
    await give('paste', [['vials.csv', vials]]);
    await page.waitForFunction(() =>
      document.getElementById('own-status')?.textContent?.includes('is the same'),
    );
    for (const name of ['crosses.csv', 'vials.csv']) await page.locator(`[data-remove="${name}"]`).click();
    await page.locator('details:has(#own-pasted) > summary').click();
    await page.locator('#own-paste').click();
    expect(await status(page)).toContain('Nothing was pasted yet');
    await page.fill('#own-pasted', SMALL.replaceAll('"', '').replaceAll(',', '\t'));
    await page.locator('#own-paste').click();
    await read(page);
    expect(await page.locator('#own-read-files').textContent()).toContain('12 rows, 12 used, 0 left out');
    expect(complaints).toEqual([]);
    await close();
  });

  it('that the browser may not read are told of, and the others are read', async () => {
    const { page, close } = await openOwnSeason(browser);
    await page.evaluate((text) => {
      const locked = new File(['x'], 'locked.csv');
      locked.arrayBuffer = () => Promise.reject(new DOMException('locked', 'NotReadableError'));
      const files = [locked, new File([text], 'crosses.csv')];
      const drop = new DragEvent('drop', { bubbles: true, cancelable: true });
      Object.defineProperty(drop, 'dataTransfer', { value: { files } });
      document.body.dispatchEvent(drop);
    }, SMALL);
    await read(page);
    expect(await page.locator('#own-chosen .error').textContent()).toMatch(/^locked\.csv can’t be read: /);
    await page.locator('#own-work').click();
    await done(page);
    await close();
  });

  it('may have a column that was not understood, which can be named', async () => {
    const { page, close } = await openOwnSeason(browser);
    const season = file('mine.csv', SMALL.replace('pollen_age_days', 'Qux'));
    await choose(page, season);
    await read(page);
    await page.locator('#own-change > summary').click();
    await page.locator('#own-more > summary').click();
    await page.selectOption('#own-map-first', 'Qux');
    await page.selectOption('#own-map-second', 'pollen_age_days');
    await page.locator('[data-add=map]').click();
    await page.locator('#own-settings button[type=submit]').click();
    await done(page);
    const saved = await savedBy(page, () => page.locator('#own-save-report').click());
    expect(tree(saved)).toBe(tree(commandReport([season], ['--map', 'Qux=pollen_age_days']).text));
    await close();
  });

  it('may lack a column or a kind, which is asked for', async () => {
    const { page, close } = await openOwnSeason(browser);
    await choose(page, file('mine.csv', SMALL.replace('outcome', 'Zorn').replace('storage', 'Qux')));
    await read(page);
    await page.selectOption('select[data-column=outcome]', 'Zorn');
    await page.selectOption('select[data-column=storage]', 'Qux');
    await page.locator('#own-questions button[type=submit]').click();
    await page.waitForSelector('#own-confirm:not([hidden])');
    expect(await page.locator('#own-read-files').textContent()).toContain('12 rows, 12 used, 0 left out');
    await close();
  });
});
