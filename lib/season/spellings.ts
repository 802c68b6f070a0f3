/** Names that differ only in case, spaces, dashes or Unicode form: told to the grower, never joined unasked. */

import type { RowCells } from './row-cells.ts';

/** A name, the column it stands in and the cells of its row. */
export interface NameUse {
  readonly name: string;
  readonly column: string;
  readonly cells: RowCells;
}

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

interface Spelling {
  readonly name: string;
  readonly first: NameUse;
  uses: number;
}

/** One warning for each spelling that another, more frequent one resembles. */
export function reportSpellings(uses: Iterable<NameUse>): void {
  const byFold = new Map<string, Map<string, Spelling>>();
  const foldOf = new Map<string, string>();
  for (const use of uses) {
    const fold = foldOf.get(use.name) ?? foldName(use.name);
    foldOf.set(use.name, fold);
    const spellings = byFold.get(fold) ?? new Map<string, Spelling>();
    byFold.set(fold, spellings);
    const spelling = spellings.get(use.name);
    if (spelling === undefined) spellings.set(use.name, { name: use.name, first: use, uses: 1 });
    else spelling.uses += 1;
  }
  for (const spellings of byFold.values()) {
    const [usual, ...others] = [...spellings.values()].sort(
      (a, b) => b.uses - a.uses || (a.name < b.name ? -1 : 1),
    );
    for (const { name, first, uses } of others) {
      const details = { spelling: name, uses, usual: usual.name, usualUses: usual.uses };
      first.cells.report('warning', 'name-spellings', { column: first.column, value: name, details });
    }
  }
}
