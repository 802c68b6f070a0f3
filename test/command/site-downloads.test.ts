import { expect, it } from 'vitest';
import { analyse } from '../../lib/analyse.ts';
import { siteDownloads } from '../../lib/command/site-downloads.ts';
import { readSeason } from '../../lib/season/read-season.ts';
import { CLEAN, run } from './memory-world.ts';

it('offers the very text that analyse --json prints', async () => {
  const season = readSeason([{ name: 'crosses.csv', bytes: new TextEncoder().encode(CLEAN) }]);
  const { out } = await run(['analyse', 'crosses.csv', '--json'], { files: { 'crosses.csv': CLEAN } });
  const [results] = siteDownloads(analyse(season));
  expect(results).toMatchObject({ name: 'results.json', text: out });
});
