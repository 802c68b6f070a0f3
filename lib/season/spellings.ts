/** Names that differ only in case, spaces, dashes, accents or Unicode form: told to the grower, never joined unasked. */

import type { NameTally, NameUses } from './name-tally.ts';
import { speltOut, withoutMarks } from './umlauts.ts';

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

/**
 * All that a name is compared as: as it stands, and where it has accents or umlauts without them and spelt out. So Königin
 * meets konigin and Koenigin.
 *
 * @example nameKeys('Königin') // ['königin', 'konigin', 'koenigin']
 */
export function nameKeys(name: string): string[] {
  const fold = foldName(name);
  return PLAIN.test(fold) ? [fold] : [...new Set([fold, withoutMarks(fold), speltOut(fold)])];
}

const PLAIN = /^[ -~]*$/;

/** The names of a tally that look like one together, the most used of them first. */
export function lookalikes(tally: NameTally): NameUses[][] {
  const byKey = new Map<string, NameUses[]>();
  const groups = new Set<NameUses[]>();
  for (const name of tally.names()) {
    const keys = nameKeys(name.name);
    const met = new Set<NameUses[]>();
    for (const key of keys) if (byKey.has(key)) met.add(byKey.get(key)!);
    const [group = [], ...others] = met;
    group.push(name);
    groups.add(group);
    for (const key of keys) byKey.set(key, group);
    for (const other of others) {
      groups.delete(other);
      group.push(...other);
      for (const { name: each } of other) for (const key of nameKeys(each)) byKey.set(key, group);
    }
  }
  for (const group of groups) group.sort((a, b) => b.uses - a.uses || (a.name < b.name ? -1 : 1));
  return [...groups];
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
