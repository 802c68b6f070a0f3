/** The page on which a season can be explored: one file, with the charts' library and the flowers inside. */

import { pagesMarkup } from '../notebook/page.ts';
import type { OtherPage } from '../notebook/site-pages.ts';
import { pageStyle } from '../notebook/style.ts';
import type { Season } from '../season/season.ts';
import { EXPLORE } from '../words/explore.ts';
import { exploreSkeleton, exploreStyle } from './explore-skeleton.ts';
import { packFlowers } from './explored-flowers.ts';
import { scriptedPage } from './scripted-page.ts';
import { scriptedStyle } from './style.ts';

const NAME = 'explore.html';

/**
 * The page about a season.
 *
 * @param script as `exploreScript` builds it: the same for every season
 */
export function explorePage(script: string, season: Season): OtherPage {
  const { title, description } = EXPLORE;
  return {
    name: NAME,
    title,
    description,
    order: 45,
    text: (pages) =>
      scriptedPage({
        title,
        description,
        body: exploreSkeleton(packFlowers(season), pagesMarkup({ address: NAME, pages, twins: [] })),
        style: `${pageStyle}\n${scriptedStyle}\n${exploreStyle}`,
        script,
      }),
  };
}
