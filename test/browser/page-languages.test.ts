/** The pages with a script in other languages than English: one whole way in German, shorter ones in the others. */

import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { rawRates } from '../../lib/analysis/raw.ts';
import { readSeason } from '../../lib/season/read-season.ts';
import { LANGUAGES, wordsIn } from '../../lib/words/languages.ts';
import { hasChromium, openBrowser, siteAddress, siteText } from './finished-pages.ts';
import {
  commandReport,
  DEMO,
  demoFile,
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
const PHONE = { viewport: { width: 320, height: 640 } };
const HEAD = 'cross_id,pollination_date,seed_parent,pollen_parent,storage,pollen_age_days,outcome';
const small = (seedParent: string) =>
  file(
    'crosses.csv',
    [
      HEAD,
      ...Array.from(
        { length: 8 },
        (_, i) => `T${i},13/0${1 + i}/2025,${seedParent},B,fresh,,${i % 2 ? 'fruit' : 'none'}`,
      ),
    ].join('\n'),
  );

describe.runIf(hasChromium())('your own season in another language', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());

  it('goes in German from a question to the report that the command writes in German, on a telephone', async () => {
    const { page, asked, complaints, close } = await openOwnSeason(browser, PHONE, 'your-own-season.de.html');
    const look = async (state: string) => {
      await expectAccessible(page, state);
      await expectNoSideways(page, state);
    };
    const unclear = file('unklar.csv', `${HEAD}\nT1,03/04/2025,A,B,fresh,,fruit`);
    await page.locator('#own-files').setInputFiles(unclear);
    await read(page);
    await page.locator('input[name=date-order][value=dmy]').check();
    expect(await page.locator('#own-asked').textContent()).toContain('Tag-Monat-Jahr: 2025-04-03');
    await look('question');
    await page.locator('#own-questions button').click();
    await page.waitForSelector('#own-questions', { state: 'hidden' });
    await page.locator('button[data-remove]').click();
    await page.locator('#own-files').setInputFiles(demo);
    await read(page);
    expect(await page.locator('#own-read-files').textContent()).toContain(
      '291 Zeilen, 272 verwendet, 19 ausgelassen.',
    );
    await page.locator('#own-work').click();
    await done(page);
    for (const fold of ['#own-change', '#own-more', '#own-share'])
      await page.locator(`${fold} > summary`).click();
    await look('done');
    const saved = await savedBy(page, () => page.locator('#own-save-report').click());
    expect(await page.locator('#own-status').textContent()).toBe(
      'season-review.html wurde Ihrem Browser zum Speichern übergeben.',
    );
    const command = commandReport(demo, ['--language', 'de', '--date-order', 'dmy']);
    expect(command.status).toBe(0);
    expect(tree(saved)).toBe(tree(command.text));
    expect(saved).toContain('<html lang="de">');
    expect([asked, complaints]).toEqual([[], []]);
    await close();
  });

  it('uses in Spanish the settings that the German page saved, with a decimal comma', async () => {
    const german = await openOwnSeason(browser, {}, 'your-own-season.de.html');
    await german.page.locator('#own-files').setInputFiles(small('A'));
    await read(german.page);
    await german.page.locator('#own-change > summary').click();
    await german.page.fill('#own-worth', '33,3');
    await german.page.locator('#own-settings button[type=submit]').click();
    await done(german.page);
    const text = await savedBy(german.page, () => german.page.locator('#own-save-settings').click());
    await german.close();
    expect(JSON.parse(text)).toMatchObject({ version: 1, worth: 0.333 });
    const { page, complaints, close } = await openOwnSeason(browser, {}, 'your-own-season.es.html');
    const settings = file('settings.json', text);
    await page.locator('#own-files').setInputFiles([settings, small('A')]);
    await read(page);
    expect(await page.locator('#own-status').textContent()).toBe('Se usan los ajustes de settings.json.');
    await page.locator('#own-work').click();
    await done(page);
    const saved = await savedBy(page, () => page.locator('#own-save-report').click());
    const words = ['--language', 'es', '--settings', 'settings.json'];
    expect(tree(saved)).toBe(tree(commandReport([small('A')], words, [settings]).text));
    expect(complaints).toEqual([]);
    await close();
  });

  it('makes in French a coded copy of a plant that has a French word of the report for a name', async () => {
    const { page, complaints, close } = await openOwnSeason(browser, PHONE, 'your-own-season.fr.html');
    await page.locator('#own-files').setInputFiles(small('fourchette'));
    await read(page);
    await page.locator('#own-work').click();
    await done(page);
    await page.locator('#own-share > summary').click();
    await page.locator('#own-share-form button[type=submit]').click();
    await page.waitForSelector('#own-shared button');
    expect(await page.locator('#own-share-status').textContent()).toContain('ont été cherchés dans la copie');
    await expectNoSideways(page, 'copy');
    const copy = await savedBy(page, () => page.locator('#own-shared button').first().click());
    expect(copy).toContain('<html lang="fr">');
    expect(complaints).toEqual([]);
    await close();
  });

  it('says in each language what follows the choice on the page to explore', async () => {
    const bytes = new Uint8Array(readFileSync(demoFile('crosses.csv')));
    const season = readSeason([{ name: 'crosses.csv', bytes }]);
    const frozen = season.crosses.filter(({ storage }) => storage === 'frozen');
    const { overall } = rawRates({ ...season, crosses: frozen });
    for (const language of LANGUAGES.filter((code) => code !== 'en')) {
      const { chosenSaid, choiceSaid, EXPLORE, storageLabel } = await wordsIn(language);
      const context = await browser.newContext(PHONE);
      const page = await context.newPage();
      const complaints: string[] = [];
      page.on('console', (message) => void complaints.push(message.text()));
      page.on('pageerror', (error) => void complaints.push(error.message));
      await page.goto(siteAddress(`explore.${language}.html`));
      await page.locator('#explore-chart-storage text', { hasText: storageLabel('frozen') }).click();
      expect(await page.locator('#explore-sentence').textContent()).toBe(chosenSaid(overall));
      const chosen = choiceSaid([{ dimension: 'storage', labels: [storageLabel('frozen')] }]);
      expect(await page.locator('#explore-chosen').textContent()).toBe(chosen);
      const heads = await page.locator('#explore-tables table >> nth=0 >> th').allTextContents();
      expect(heads).toEqual(expect.arrayContaining([...EXPLORE.storageColumns]));
      await expectAccessible(page, language);
      await expectNoSideways(page, language);
      expect(complaints).toEqual([]);
      await context.close();
    }
  });
});

describe.each(LANGUAGES.filter((code) => code !== 'en'))(
  'the file for one’s own season in %s',
  (language) => {
    it('holds the words of its language, and no sentence of the English ones', async () => {
      const [own, english] = await Promise.all([wordsIn(language), wordsIn('en')]);
      const text = siteText(`your-own-season.${language}.html`);
      const [page = '', worker = ''] = unpackedPrograms(text).programs;
      const sentences = ({ OWN_SEASON, OWN_SETTINGS, OWN_SHARING }: typeof own) =>
        [OWN_SEASON, OWN_SETTINGS, OWN_SHARING].flatMap((said) =>
          Object.values(said).filter((each) => typeof each === 'string' && each.length > 25),
        ) as string[];
      const whole = text + page + worker;
      expect(sentences(english).length).toBeGreaterThan(50);
      expect(sentences(english).filter((sentence) => whole.includes(sentence))).toEqual([]);
      expect(page).toContain(own.OWN_SEASON.done);
      expect(worker).toContain(own.reasonSentence('one-outcome'));
      expect(worker).not.toContain(english.reasonSentence('one-outcome'));
    });
  },
);
