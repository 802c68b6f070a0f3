/** The library as cells of a notebook in another language find it: the same functions, in that language's words. */

import * as library from './index.ts';
import { formulaIn } from './notebook/formula.ts';
import type { Words } from './words/languages.ts';

/** What a cell may import from 'fruitodds'. */
type Library = typeof library;

/**
 * The library with its sentences, captions and charts in a language.
 *
 * @param words of that language
 */
export function libraryIn(words: Words): Library {
  const inItsWords = {
    formula: formulaIn(words.FORMULA_WORDS),
    ageFigure: (...[analysis, storage]) => library.ageFigure(analysis, storage, words),
    differenceFigure: (entry) => library.differenceFigure(entry, words),
    pairsFigure: (analysis) => library.pairsFigure(analysis, words),
    planFigure: (analysis) => library.planFigure(analysis, words),
    seasonFigure: (analysis) => library.seasonFigure(analysis, words),
    storageFigure: (analysis) => library.storageFigure(analysis, words),
    vialsFigure: (analysis) => library.vialsFigure(analysis, words),
  } satisfies Partial<Library>;
  // The types hold each language to all that English has; they do not know that its texts may differ.
  return { ...library, ...words, ...inItsWords } as unknown as Library;
}
