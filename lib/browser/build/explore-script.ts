/** The script of the page to explore, with the charts' library inside; its charts are compiled here, not in the page. */

import { exploreSpec } from '../explore-spec.ts';
import { bundle } from './bundle.ts';

/**
 * Bundles the script from the compiled library. It is the same for every season.
 *
 * @param folder absolute path of dist/, from where the packages of charts can be found
 * @param compile what turns a Vega-Lite specification into Vega's: it stays out of the page
 */
export function exploreScript(
  folder: string,
  compile: (specification: typeof exploreSpec) => object,
): string {
  const { code } = bundle(
    `import { parse, View } from 'vega';
import { expressionInterpreter } from 'vega-interpreter';
import { startExplore } from './lib/browser/explore.js';
startExplore({ parse, View, expressionInterpreter }, ${JSON.stringify(compile(exploreSpec))});`,
    folder,
  );
  return code;
}
