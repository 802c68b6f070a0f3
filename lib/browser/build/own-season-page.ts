/** The page on which growers try a file of their own: one file, with its Worker inside. */

import { html } from '../../notebook/html.ts';
import { pageStyle } from '../../notebook/style.ts';
import type { Language } from '../../words/language.ts';
import type { Words } from '../../words/languages.ts';
import { scriptedPage } from '../scripted-page.ts';
import type { OwnSeasonParts } from '../scripted-pages.ts';
import { skeleton } from '../skeleton.ts';
import { PROGRAMS_PARTED } from '../starter.ts';
import { scriptedStyle } from '../style.ts';
import { bundle, packed } from './bundle.ts';
import { keptPieces } from './kept-pieces.ts';

/** Where the links to other pages of a site come. */
const LINKS = html`<!-- links -->`;

/** Both programs of the page, the starter's text, in one language. */
async function programs(folder: string, language: Language): Promise<{ page: string; worker: string }> {
  // A translated notebook with the library it is bundled with, which speaks its language.
  const notebook = language === 'en' ? 'season-review' : `_season-review.${language}`;
  const [worker, page] = await Promise.all([
    bundle(
      `import { notebook } from './reports/${notebook}.js';
import { serveJobs } from './lib/browser/worker.js';
serveJobs(globalThis, notebook);`,
      folder,
      { language },
    ),
    bundle(
      `import { startPage } from './lib/browser/page.js';
startPage(document.currentScript);`,
      folder,
      { language },
    ),
  ]);
  return { page: page.code, worker: worker.code };
}

/**
 * Builds the page of a language from the compiled library and notebook.
 *
 * @param folder absolute path of dist/
 * @param words of the language; nothing of another is in the page
 * @param ownText what the command takes for the own text of pages in that language
 */
export async function ownSeasonPage(folder: string, words: Words, ownText: string): Promise<OwnSeasonParts> {
  const { OWN_SEASON, languageWords } = words;
  const { title, description } = OWN_SEASON;
  const { page, worker } = await programs(folder, languageWords.code);
  const both = packed([page, worker, keptPieces(worker, ownText)].join(PROGRAMS_PARTED));
  const starter = await bundle(
    `import { startPacked } from './lib/browser/starter.js';
startPacked(${JSON.stringify(both)}, ${JSON.stringify(OWN_SEASON.noWorker)});`,
    folder,
  );
  const text = scriptedPage({
    ...{ title, description, language: languageWords.code },
    body: skeleton(words, LINKS),
    style: `${pageStyle}\n${scriptedStyle}`,
    script: starter.code,
    later: page,
  });
  const [before = '', after = ''] = text.split(LINKS.markup);
  return { title, description, before, after };
}

/** How many bytes of the page are the charts' library, packed as it is in the file: the library by itself, no more. */
export async function chartLibraryBytes(folder: string): Promise<number> {
  const charts = await bundle(
    `import * as plot from './lib/charts/plot.js'; globalThis.plot = plot;`,
    folder,
  );
  return packed(charts.code).length;
}
