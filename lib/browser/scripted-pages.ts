/** The pages of a site that have a script, from what `prepare` built beside the compiled notebooks. */

import type { FoundNotebooks } from '../notebook/compiled-notebooks.ts';
import type { OtherPage } from '../notebook/site-pages.ts';
import type { Season } from '../season/season.ts';
import { explorePage } from './explore-page.ts';
import { escapedScript } from './scripted-page.ts';

/** Built for every season alike: a finished page, and a script. */
const OWN_SEASON = 'fruitodds/reports/_own-season.js';
const EXPLORE = 'fruitodds/reports/_explore.js';

/** Pages with a script, what they hold whatever the season, and those that could not be built. */
export interface ScriptedPages {
  readonly pages: readonly OtherPage[];
  /** Pieces of text that are the same in every site: nobody's names can stand in them. */
  readonly constant: readonly string[];
  readonly leftOut: FoundNotebooks['leftOut'];
}

/**
 * The page to explore a season and the page for one's own. A page whose parts were not built, since the packages of
 * charts were not installed, is left out and named.
 *
 * @param season null where no single flower may be shown: then there is nothing to explore
 * @param load how a module of this package is loaded
 */
export async function scriptedPages(
  season: Season | null,
  load: (address: string) => Promise<unknown> = (address) => import(address),
): Promise<ScriptedPages> {
  const own = ((await load(OWN_SEASON)) as { readonly page: OtherPage }).page;
  const constant = typeof own.text === 'string' ? [own.text] : [];
  if (season === null) return { pages: [own], constant, leftOut: [] };
  const { script } = (await load(EXPLORE)) as { readonly script: string | null };
  if (script === null) {
    return { pages: [own], constant, leftOut: [{ name: 'explore', package: 'vega' }] };
  }
  return {
    pages: [explorePage(script, season), own],
    constant: [...constant, escapedScript(script)],
    leftOut: [],
  };
}
