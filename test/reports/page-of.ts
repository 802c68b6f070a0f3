/** One compiled notebook of the package, run on a season as the site runs it. `npm test` compiles them first. */

import { analyse } from '../../lib/analyse.ts';
import { openPaper } from '../../lib/charts/paper.ts';
import { renderPage } from '../../lib/notebook/page.ts';
import { type CompiledNotebook, runNotebook } from '../../lib/notebook/run.ts';
import { readSeason } from '../../lib/season/read-season.ts';

/** The page `name` of the season in a crosses file. */
export async function pageOf(name: string, crosses: string | Uint8Array): Promise<string> {
  const bytes = typeof crosses === 'string' ? new TextEncoder().encode(crosses) : crosses;
  const season = readSeason([{ name: 'crosses.csv', bytes }]);
  const module: { notebook: CompiledNotebook } = await import(`fruitodds/reports/${name}.js`);
  return renderPage(
    await runNotebook(module.notebook, { season, analysis: analyse(season) }),
    await openPaper(),
  );
}
