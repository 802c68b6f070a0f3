/** A sentence in a language beside the English one that says the same. */

import type { Language } from '../../lib/words/language.ts';
import { numeralsIn } from './numerals.ts';

const UNFILLED = /undefined|NaN|\[object/;

/** What must not change on the way: values, options, columns and files, numbers. */
const citedIn = (text: string, language: Language): string[] =>
  [
    ...(text.match(/‹[a-z]+›/g) ?? []),
    ...(text.match(/--[a-z]+(?:-[a-z]+)*/g) ?? []),
    ...numeralsIn(text, language),
  ].sort();

/** What is wrong with a sentence whose twin is `theirs`: unsaid, left unfilled, not translated, or citing something else. */
export function faultsIn(language: Language, own: string, theirs: string, what: string): string[] {
  const [cited, meant] = [citedIn(own, language), citedIn(theirs, 'en')].map((values) => values.join(' '));
  const wrong = [
    /\S/.test(own) ? '' : 'says nothing',
    UNFILLED.test(own) ? 'has a gap' : '',
    own === theirs ? 'is English' : '',
    cited === meant ? '' : `cites ${cited}, not ${meant}`,
  ];
  return wrong.filter((fault) => fault !== '').map((fault) => `${what} ${fault}: ${own}`);
}
