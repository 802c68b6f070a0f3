/** Names whose letters were lost or exchanged before the file came here: told, since nobody writes them so. */

import type { NameTally } from './name-tally.ts';

/**
 * The sign for a lost letter (U+FFFD), or what letters of UTF-8 look like where they were read as Windows-1252: Ã¶ for ö,
 * â€™ for an apostrophe.
 */
const GARBLED = /\ufffd|[ÂÃÅ][\u0080-\u00bf‚ƒ„…†‡ˆ‰‹‘’“”•–—˜™›Œœ\u0160\u0161\u0178\u017d\u017e]|â[€\u0080]/;

/** Whether a name holds letters that look like an accident of encodings. */
export function isGarbled(name: string): boolean {
  return GARBLED.test(name);
}

/** One warning for each garbled name, where it stands first. */
export function reportGarbled(tally: NameTally): void {
  for (const { name, first } of tally.names())
    if (isGarbled(name)) first.cells.report('warning', 'name-garbled', { column: first.column, value: name });
}
