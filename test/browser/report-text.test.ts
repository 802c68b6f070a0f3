import { expect, it } from 'vitest';
import { analyse } from '../../lib/analyse.ts';
import { reportText } from '../../lib/browser/report-text.ts';
import { openPaper } from '../../lib/charts/paper.ts';
import { renderPage } from '../../lib/notebook/page.ts';
import type { CompiledNotebook } from '../../lib/notebook/run.ts';
import { runNotebook } from '../../lib/notebook/run.ts';
import { flowersOf, seasonOf } from '../season-of.ts';

const seasonReview = 'fruitodds/reports/season-review.js';

it('is the text that the page renderer writes, with a pause after each drawing', async () => {
  const { notebook } = (await import(seasonReview)) as { notebook: CompiledNotebook };
  const season = seasonOf([
    ...flowersOf(3, 4, { storage: 'fresh' }),
    ...flowersOf(1, 4, { storage: 'frozen', ageDays: 30 }),
  ]);
  const given = { season, analysis: analyse(season) };
  const paper = await openPaper();
  let pauses = 0;
  const text = await reportText(notebook, given, paper, async () => {
    pauses += 1;
  });
  expect(text).toBe(renderPage(await runNotebook(notebook, given), paper));
  expect(pauses).toBe(2 + text.split('<figure').length - 1);
});
