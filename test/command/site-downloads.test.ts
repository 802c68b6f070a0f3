import { expect, it } from 'vitest';
import { analyse } from '../../lib/analyse.ts';
import { cleanFiles, siteDownloads } from '../../lib/command/site-downloads.ts';
import { readSeason } from '../../lib/season/read-season.ts';
import * as english from '../../lib/words/index.ts';
import { wordsIn } from '../../lib/words/languages.ts';
import { CLEAN, run } from './memory-world.ts';

it('offers the very text that analyse --json prints', async () => {
  const season = readSeason([{ name: 'crosses.csv', bytes: new TextEncoder().encode(CLEAN) }]);
  const { out } = await run(['analyse', 'crosses.csv', '--json'], { files: { 'crosses.csv': CLEAN } });
  const [results] = siteDownloads(analyse(season), []);
  expect(results).toMatchObject({ name: 'results.json', text: out });
});

it('offers the season as it was understood, each file with words of its own', () => {
  const season = readSeason([{ name: 'crosses.csv', bytes: new TextEncoder().encode(CLEAN) }]);
  const files = siteDownloads(analyse(season), cleanFiles(season)).slice(1);
  expect(files.map(({ name, label }) => [name, label])).toEqual([
    ['crosses.csv', 'The crosses as they were understood (CSV)'],
    ['datapackage.json', 'What the columns of these files mean (JSON)'],
    ['rates.vl.json', 'The chart “Fruit set by storage of the pollen”, for programs (Vega-Lite)'],
    ['pairs.vl.json', 'The chart “Fruit set of every pair, seed parent first”, for programs (Vega-Lite)'],
  ]);
  expect(files[0]!.text).toContain('Lantern Creek,Salt Moon,fresh');
});

it('says the links in each language of the site, of one file each', async () => {
  const season = readSeason([{ name: 'crosses.csv', bytes: new TextEncoder().encode(CLEAN) }]);
  const german = await wordsIn('de');
  const files = siteDownloads(analyse(season), cleanFiles(season), english, [german]);
  const alone = siteDownloads(analyse(season), cleanFiles(season, german), german);
  expect(files.map(({ labels }) => labels!.get('de'))).toEqual(alone.map(({ label }) => label));
  for (const { label, labels } of files) expect(labels!.get('de')).not.toBe(label);
});
