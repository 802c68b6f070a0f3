/** The pages of a site that have a script, from what `prepare` built beside the compiled notebooks. */

import type { FoundNotebooks } from '../notebook/compiled-notebooks.ts';
import { placeMarkup } from '../notebook/page.ts';
import type { OtherPage } from '../notebook/site-pages.ts';
import type { Season } from '../season/season.ts';
import type { Language } from '../words/language.ts';
import { type Words, wordsIn } from '../words/languages.ts';
import { explorePage } from './explore-page.ts';
import { escapedScript } from './scripted-page.ts';

/** Built for every season alike. */
const PARTS = 'fruitodds/reports/_';

/** The page for one's own season in one language, without the links that lead from it. */
export interface OwnSeasonParts {
  readonly title: string;
  readonly description: string;
  readonly before: string;
  readonly after: string;
}

/** The script of the page to explore, null where the charts' library is not installed, and what it says, by language. */
interface ExploreParts {
  readonly script: string | null;
  readonly said: Readonly<Partial<Record<Language, string>>>;
}

/** Pages with a script, what they hold whatever the season, and those that could not be built. */
export interface ScriptedPages {
  readonly pages: readonly OtherPage[];
  /** Pieces of text that are the same in every site: nobody's names can stand in them. */
  readonly constant: readonly string[];
  readonly leftOut: FoundNotebooks['leftOut'];
}

/** The page for one's own season. Mailed by itself it works all the same; only the links to its neighbours lead nowhere then. */
function ownSeasonPage({ title, description, before, after }: OwnSeasonParts, words: Words): OtherPage {
  return {
    ...{ name: 'your-own-season', language: words.languageWords.code, title, description, order: 55 },
    text: (place) => before + placeMarkup(place, words).markup + after,
  };
}

/**
 * The page to explore a season and the page for one's own, in English and other languages. A page whose parts were not
 * built, since the packages of charts were not installed, is left out and named.
 *
 * @param season null where no single flower may be shown: then there is nothing to explore
 * @param languages besides English
 * @param load how a module of this package is loaded
 */
export async function scriptedPages(
  season: Season | null,
  languages: readonly Language[] = [],
  load: (address: string) => Promise<unknown> = (address) => import(address),
): Promise<ScriptedPages> {
  const all = await Promise.all([...new Set<Language>(['en', ...languages])].map(wordsIn));
  const own = await Promise.all(
    all.map(async (words) => {
      const module = await load(`${PARTS}own-season.${words.languageWords.code}.js`);
      return { words, parts: (module as { readonly parts: OwnSeasonParts }).parts };
    }),
  );
  const ownPages = own.map(({ parts, words }) => ownSeasonPage(parts, words));
  const constant = own.flatMap(({ parts: { before, after } }) => [before, after]);
  if (season === null) return { pages: ownPages, constant, leftOut: [] };
  const { script, said } = (await load(`${PARTS}explore.js`)) as ExploreParts;
  if (script === null) return { pages: ownPages, constant, leftOut: [{ name: 'explore', package: 'vega' }] };
  const explored = all.map((words) => explorePage([said[words.languageWords.code]!, script], season, words));
  const pieces = [script, ...Object.values(said)].map(escapedScript);
  return { pages: [...explored, ...ownPages], constant: [...constant, ...pieces], leftOut: [] };
}
