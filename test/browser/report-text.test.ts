import { expect, it } from 'vitest';
import { analyse } from '../../lib/analyse.ts';
import { drawnReport } from '../../lib/browser/report-text.ts';
import { openPaper } from '../../lib/charts/paper.ts';
import { renderPage } from '../../lib/notebook/page.ts';
import type { CompiledNotebook } from '../../lib/notebook/run.ts';
import { runNotebook } from '../../lib/notebook/run.ts';
import { flowersOf, seasonOf } from '../season-of.ts';

const seasonReview = 'fruitodds/reports/season-review.js';

it('is the text that the page renderer writes, and its parts stand in it in their order', async () => {
  const { notebook } = (await import(seasonReview)) as { notebook: CompiledNotebook };
  const season = seasonOf([
    ...flowersOf(3, 4, { storage: 'fresh' }),
    ...flowersOf(1, 4, { storage: 'frozen', ageDays: 30 }),
  ]);
  const given = { season, analysis: analyse(season) };
  const { text, parts } = await drawnReport(notebook, given);
  expect(text).toBe(renderPage(await runNotebook(notebook, given), await openPaper()));
  expect(parts).toHaveLength(1 + notebook.sections.length);
  expect(text.indexOf(parts.slice(1).join(''))).toBeGreaterThan(text.indexOf(parts[0]!));
});
