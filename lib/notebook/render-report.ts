/** A grower's report: the compiled season review, run on their season. The third door of the library. */

import type { Analysis } from '../analyse.ts';
import { openPaper } from '../charts/paper.ts';
import type { MixName } from '../decisions/mix.ts';
import type { Season } from '../season/season.ts';
import type { Language } from '../words/language.ts';
import { wordsIn } from '../words/languages.ts';
import { renderPage } from './page.ts';
import type { CompiledNotebook, Given } from './run.ts';
import { runNotebook } from './run.ts';

/** The package's own compiled notebook, found through its `exports`: a source folder has none beside it. */
const reports = 'fruitodds/reports';

/**
 * The season review of a season, as one HTML file.
 *
 * Answers: what does a grower read about their season? Not for further pages of one's own: write a notebook. In Node
 * only; a page that runs in a browser calls `runNotebook` and `renderPage` with its own document.
 *
 * @param season as `readSeason` gives it
 * @param analysis of that season, as `analyse` gives it
 * @param language of its text, English where left out
 * @returns the text of a file with no script, no font, no raster image and no request; same input, same bytes
 * @throws NotebookError naming the notebook's file, line and column where a cell fails
 * @example
 * const report = await renderReport(season, analyse(season));
 * report.startsWith('<!doctype html>'); // true
 */
export async function renderReport(
  season: Season,
  analysis: Analysis,
  language: Language = 'en',
): Promise<string> {
  return rendered('season-review', { season, analysis }, language);
}

/** The crossing sheet of one mix of a season's plan, as one HTML file to print. */
export async function renderSheet(
  season: Season,
  analysis: Analysis,
  mix: MixName,
  language: Language = 'en',
): Promise<string> {
  return rendered('crossing-sheet', { season, analysis, mix }, language);
}

async function rendered(name: string, given: Given, language: Language): Promise<string> {
  const address = `${reports}/${name}${language === 'en' ? '' : `.${language}`}.js`;
  const [module, paper, words] = await Promise.all([import(address), openPaper(), wordsIn(language)]);
  const { notebook } = module as { readonly notebook: CompiledNotebook };
  return renderPage(await runNotebook(notebook, given), paper, null, words);
}
