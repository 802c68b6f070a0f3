/** The page on which a season can be explored: one file, with the charts' library and the flowers inside. */

import { pageStyle } from '../../notebook/style.ts';
import type { Season } from '../../season/season.ts';
import { EXPLORE } from '../../words/explore.ts';
import { exploreSkeleton, exploreStyle } from '../explore-skeleton.ts';
import { exploreSpec } from '../explore-spec.ts';
import { packFlowers } from '../explored-flowers.ts';
import { scriptedStyle } from '../style.ts';
import { bundle } from './bundle.ts';
import type { BuiltPage } from './own-season-page.ts';
import { scriptedPage } from './scripted-page.ts';

/**
 * Builds the page from the compiled library. Its script is the same for every season.
 *
 * @param folder absolute path of dist/, from where the packages of charts can be found
 * @param compile what turns a Vega-Lite specification into Vega's: it stays out of the page
 */
export function explorePage(
  folder: string,
  compile: (specification: typeof exploreSpec) => object,
  season: Season,
): BuiltPage['page'] {
  const { code } = bundle(
    `import { parse, View } from 'vega';
import { expressionInterpreter } from 'vega-interpreter';
import { startExplore } from './lib/browser/explore.js';
startExplore({ parse, View, expressionInterpreter }, ${JSON.stringify(compile(exploreSpec))});`,
    folder,
  );
  const { title, description } = EXPLORE;
  const text = scriptedPage({
    title,
    description,
    body: exploreSkeleton(packFlowers(season)),
    style: `${pageStyle}\n${scriptedStyle}\n${exploreStyle}`,
    script: code,
  });
  return { name: 'explore.html', title, description, text };
}
