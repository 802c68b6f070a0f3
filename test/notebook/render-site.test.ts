import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { analyse } from '../../lib/analyse.ts';
import { scriptedPages } from '../../lib/browser/scripted-pages.ts';
import { renderSite } from '../../lib/notebook/render-site.ts';
import { savedFile } from '../../lib/notebook/saved-file.ts';
import { readSeason } from '../../lib/season/read-season.ts';

const WITH_SCRIPT = new Set(['explore.html', 'your-own-season.html']);

// `npm test` compiles the notebooks first; these run as the command runs them.
const HEADER =
  'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome,pollen_age_days,seeds,note';
const seasons: readonly (readonly [string, string])[] = [
  ['of one flower', '1,2025-06-01,Candle Weir,Copper Tide,fresh,fruit,,,'],
  [
    'of stored pollen only',
    '1,2025-06-01,Candle Weir,Copper Tide,frozen,none,30,,\n2,2025-06-02,Candle Weir,Salt Moon,frozen,fruit,12,40,',
  ],
  ['of stored pollen without an age', '1,2025-06-01,A,B,cellar,fruit,,,\n2,2025-06-02,B,A,cellar,none,,,'],
  [
    'of hostile names',
    '1,2025-06-01,__proto__,"</script><img src=x onerror=alert(1)>",fresh,fruit,,12,"""><script>alert(1)</script>"\n' +
      '2,2025-06-02,constructor,toString,frozen,none,10,,\n3,2025-06-02,שלום,🌵🌵,frozen,fruit,10,3,x',
  ],
];

async function siteOf(rows: string) {
  const bytes = new TextEncoder().encode(`${HEADER}\n${rows}\n`);
  const season = readSeason([{ name: 'crosses.csv', bytes }]);
  const downloads = [savedFile('results.json', 'Numbers', '{}')];
  const otherPages = (await scriptedPages(season)).pages;
  return renderSite(season, analyse(season), { downloads, otherPages, invented: false });
}

describe.each(seasons)('the site of a season %s', (_, rows) => {
  it('has every page, links only to files of its own, and runs nothing', async () => {
    const { files, leftOut } = await siteOf(rows);
    expect(leftOut).toEqual([]);
    const names = files.map(({ name }) => name);
    expect(names).toEqual(expect.arrayContaining(['index.html', 'season-review.html', 'results.json']));
    for (const { name, text } of files.filter((file) => file.name.endsWith('.html'))) {
      const { document } = parseHTML(text);
      const own = WITH_SCRIPT.has(name) ? 1 : 0;
      expect(document.querySelectorAll('script')).toHaveLength(own);
      expect(document.querySelectorAll('img, [onerror]')).toHaveLength(0);
      const links = [...document.querySelectorAll('a[href]')].map((a) => a.getAttribute('href')!);
      expect({
        name,
        lost: links.filter((link) => !/^(#|https:)/.test(link) && !names.includes(link)),
      }).toEqual({
        name,
        lost: [],
      });
    }
  });
});
