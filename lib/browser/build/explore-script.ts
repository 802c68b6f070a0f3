/** The script of the page to explore, with the charts' library inside; its charts are compiled here, not in the page. */

import type { Language } from '../../words/language.ts';
import type { Words } from '../../words/languages.ts';
import { exploreSpec } from '../explore-spec.ts';
import { bundle, wordsOf } from './bundle.ts';

/** What the part of a language is called in the page. */
const SAID = 'fruitoddsSays';

/**
 * Bundles the script from the compiled library. It is the same for every season and language; what `exploreWords` gives
 * must stand before it.
 *
 * @param folder absolute path of dist/, from where the packages of charts can be found
 */
export async function exploreScript(folder: string): Promise<string> {
  const { code } = await bundle(
    `import { parse, View } from 'vega';
import { expressionInterpreter } from 'vega-interpreter';
import { startExplore } from './lib/browser/explore.js';
startExplore({ parse, View, expressionInterpreter }, ${SAID}.chart, ${SAID});`,
    folder,
  );
  return code;
}

/**
 * What the page says in a language: its words, and its chart with them.
 *
 * @param folder absolute path of dist/
 * @param words of that language
 * @param compile what turns a Vega-Lite specification into Vega's: it stays out of the page
 */
export async function exploreWords(
  folder: string,
  { languageWords, RATE_AXIS }: Words,
  compile: (specification: ReturnType<typeof exploreSpec>) => object,
): Promise<string> {
  const language: Language = languageWords.code;
  const chart = compile(exploreSpec(RATE_AXIS));
  const { code } = await bundle(
    `export { EXPLORE, choiceLabel, choiceSaid, chosenSaid, countCells, rowCounts } from '${wordsOf(language)}';
export const chart = ${JSON.stringify(chart)};`,
    folder,
    { language, name: SAID },
  );
  return code;
}
