/** The text that `prepare` gathers beside the compiled notebooks. */

import type { Language } from '../words/language.ts';

const OWN_TEXT = 'fruitodds/reports/_own-text.js';

/** What the gathered module exports. */
interface OwnText {
  readonly ownText: string;
  readonly ownTextIn: Readonly<Partial<Record<Language, string>>>;
}

/**
 * All text that pages and results bring along themselves, whatever the season. In Node only.
 *
 * @param language of the pages: their words, and the English ones that stand in every page's code
 */
export async function ownText(language: Language = 'en'): Promise<string> {
  const { ownText: always, ownTextIn } = (await import(OWN_TEXT)) as OwnText;
  return [always, ownTextIn[language] ?? ''].join('\n');
}
