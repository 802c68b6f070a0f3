/** The page on which a season can be explored: one file, with the charts' library and the flowers inside. */

import { placeMarkup } from '../notebook/page.ts';
import type { OtherPage } from '../notebook/site-pages.ts';
import { pageStyle } from '../notebook/style.ts';
import type { Season } from '../season/season.ts';
import type { Words } from '../words/languages.ts';
import { exploreSkeleton, exploreStyle } from './explore-skeleton.ts';
import { packFlowers } from './explored-flowers.ts';
import { scriptedPage } from './scripted-page.ts';
import { scriptedStyle } from './style.ts';

/**
 * The page about a season.
 *
 * @param scripts as `exploreWords` builds it for a language, and as `exploreScript` does for all
 * @param words of that language
 */
export function explorePage(
  scripts: readonly [said: string, script: string],
  season: Season,
  words: Words,
): OtherPage {
  const { title, description } = words.EXPLORE;
  const language = words.languageWords.code;
  return {
    ...{ name: 'explore', language, title, description, order: 45 },
    text: (place) =>
      scriptedPage({
        ...{ title, description, language },
        body: exploreSkeleton(packFlowers(season), words, placeMarkup(place, words)),
        style: `${pageStyle}\n${scriptedStyle}\n${exploreStyle}`,
        script: scripts.join(''),
      }),
  };
}
