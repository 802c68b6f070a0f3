/** The page on which growers try a file of their own: one file, with its Worker inside. */

import type { OtherPage } from '../../notebook/site-pages.ts';
import { pageStyle } from '../../notebook/style.ts';
import { OWN_SEASON } from '../../words/own-season.ts';
import { scriptedPage } from '../scripted-page.ts';
import { skeleton } from '../skeleton.ts';
import { PROGRAMS_PARTED } from '../starter.ts';
import { scriptedStyle } from '../style.ts';
import { bundle, packed } from './bundle.ts';
import { keptPieces } from './kept-pieces.ts';

/** A page for the site, and how many of its bytes are the charts’ library, packed as it is in the file. */
export interface BuiltPage {
  readonly page: OtherPage & { readonly text: string };
  readonly chartLibraryBytes: number;
}

/**
 * Builds the page from the compiled library and notebook.
 *
 * @param folder absolute path of dist/
 * @param ownText what the command takes for the pages' own text
 */
export function ownSeasonPage(folder: string, ownText: string): BuiltPage {
  const worker = bundle(
    `import { notebook } from './reports/season-review.js';
import { serveJobs } from './lib/browser/worker.js';
serveJobs(globalThis, notebook);`,
    folder,
  );
  // The library by itself: what the file would be without it, no more.
  const charts = bundle(`import * as plot from './lib/charts/plot.js'; globalThis.plot = plot;`, folder);
  const page = bundle(
    `import { startPage } from './lib/browser/page.js';
startPage(document.currentScript);`,
    folder,
  );
  const programs = packed([page.code, worker.code, keptPieces(worker.code, ownText)].join(PROGRAMS_PARTED));
  const starter = bundle(
    `import { startPacked } from './lib/browser/starter.js';
startPacked(${JSON.stringify(programs)}, ${JSON.stringify(OWN_SEASON.noWorker)});`,
    folder,
  );
  const text = scriptedPage({
    title: OWN_SEASON.title,
    description: OWN_SEASON.description,
    body: skeleton,
    style: `${pageStyle}\n${scriptedStyle}`,
    script: starter.code,
    later: page.code,
  });
  const { title, description } = OWN_SEASON;
  return {
    page: { name: 'your-own-season.html', title, description, order: 55, text },
    chartLibraryBytes: packed(charts.code).length,
  };
}
