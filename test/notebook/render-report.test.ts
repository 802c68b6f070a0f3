import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseHTML } from 'linkedom';
import { expect, it } from 'vitest';
import { analyse } from '../../lib/analyse.ts';
import { renderReport } from '../../lib/notebook/render-report.ts';
import { readSeason } from '../../lib/season/read-season.ts';

const crosses = `cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome
1,2025-06-01,Candle Weir,__proto__,fresh,fruit
2,2025-06-02,"</script><img src=x onerror=alert(1)>",Copper Tide,fresh,none
3,2025-06-02,Candle Weir,Copper Tide,fresh,none
`;

it('makes the season review of a season, with names as text', async () => {
  // `npm test` compiles the season review first.
  expect(existsSync(fileURLToPath(new URL('../../dist/reports/season-review.js', import.meta.url)))).toBe(
    true,
  );
  const season = readSeason([{ name: 'crosses.csv', bytes: new TextEncoder().encode(crosses) }]);
  const report = await renderReport(season, analyse(season));
  const { document } = parseHTML(report);
  expect(document.querySelectorAll('script, img')).toHaveLength(0);
  expect(document.querySelectorAll('main section').length).toBeGreaterThan(1);
  expect(document.querySelector('main')?.textContent).toContain('crosses.csv');
});
