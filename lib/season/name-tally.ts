/** How often each name is used, and where first. */

import type { RowCells } from './row-cells.ts';

/** A name, how often it is used, and the cell in which it stands first. */
export interface NameUses {
  readonly name: string;
  readonly first: { readonly column: string; readonly cells: RowCells };
  uses: number;
}

/** Counts the uses of names. */
export class NameTally {
  readonly #byName = new Map<string, NameUses>();

  /** Counts one use, in a column of a row. */
  add(name: string, column: string, cells: RowCells): void {
    const known = this.#byName.get(name);
    if (known === undefined) this.#byName.set(name, { name, first: { column, cells }, uses: 1 });
    else known.uses += 1;
  }

  /** Every name once, in the order of their first uses. */
  names(): NameUses[] {
    return [...this.#byName.values()];
  }

  has(name: string): boolean {
    return this.#byName.has(name);
  }
}
