/** All pages about a season: every compiled notebook of the package, run on it. */

import type { Analysis } from '../analyse.ts';
import { openPaper } from '../charts/paper.ts';
import type { Season } from '../season/season.ts';
import type { Language } from '../words/language.ts';
import { wordsIn } from '../words/languages.ts';
import type { FoundNotebooks } from './compiled-notebooks.ts';
import { compiledNotebooks } from './compiled-notebooks.ts';
import type { SiteFile } from './site.ts';
import type { SiteParts } from './site-pages.ts';
import { sitePages } from './site-pages.ts';

/**
 * The files of a site about a season. In Node only.
 *
 * @param parts what the site is made of besides the package's own notebooks
 * @param languages of the site: that of its pages, then those in which they can be had besides
 * @param load how a compiled notebook of the package is loaded
 * @returns the files, and the pages left out because a package that they need is not installed
 * @throws NotebookError naming the notebook's file, line and column where a cell fails
 */
export async function renderSite(
  season: Season,
  analysis: Analysis,
  parts: Omit<SiteParts, 'notebooks' | 'words'>,
  languages: readonly [Language, ...Language[]] = ['en'],
  load?: (address: string) => Promise<unknown>,
): Promise<{ files: SiteFile[]; leftOut: FoundNotebooks['leftOut'] }> {
  const [{ notebooks, leftOut }, paper, words] = await Promise.all([
    compiledNotebooks(languages, load),
    openPaper(),
    Promise.all(languages.map(wordsIn)),
  ]);
  return { files: await sitePages({ ...parts, notebooks, words }, { season, analysis }, paper), leftOut };
}
