/** The text that `prepare` gathers beside the compiled notebooks. */

const OWN_TEXT = 'fruitodds/reports/_own-text.js';

/** All text that pages and results bring along themselves, whatever the season. In Node only. */
export async function ownText(): Promise<string> {
  return ((await import(OWN_TEXT)) as { readonly ownText: string }).ownText;
}
