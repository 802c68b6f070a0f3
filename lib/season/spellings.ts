/** Names that differ only in case, spaces, dashes or Unicode form: told to the grower, never joined unasked. */

import type { NameTally, NameUses } from './name-tally.ts';

/** A name as it is compared: lower case, × as x, without marks that do not show, without spaces and dashes except between digits. */
export function foldName(name: string): string {
  return name
    .normalize('NFKC')
    .toLowerCase()
    .replace(/×/g, 'x')
    .replace(/['’‘`"“”.]|\p{Cf}/gu, '')
    .replace(/[\s_\u2010-\u2015-]+/g, ' ')
    .replace(/(?<!\d) | (?!\d)/g, '');
}

/** The names of a tally by what they are compared as; of those that look like one, the most used first. */
export function lookalikes(tally: NameTally): NameUses[][] {
  const byFold = new Map<string, NameUses[]>();
  for (const name of tally.names()) {
    const fold = foldName(name.name);
    const alike = byFold.get(fold);
    if (alike === undefined) byFold.set(fold, [name]);
    else alike.push(name);
  }
  for (const alike of byFold.values()) alike.sort((a, b) => b.uses - a.uses || (a.name < b.name ? -1 : 1));
  return [...byFold.values()];
}

/** One warning for each spelling that another, more frequent one resembles. */
export function reportSpellings(tally: NameTally): void {
  for (const [usual, ...others] of lookalikes(tally)) {
    for (const { name, first, uses } of others) {
      const details = { spelling: name, uses, usual: usual.name, usualUses: usual.uses };
      first.cells.report('warning', 'name-spellings', { column: first.column, value: name, details });
    }
  }
}
