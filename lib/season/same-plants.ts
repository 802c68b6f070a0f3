/** Names that the grower says are one plant → the one that is kept. */

import { tidyName } from './cell.ts';

/**
 * What the grower says about names: each list is of one plant, its first name is kept, and lists that share a name are
 * one. It remembers which names it has met, so that a name that no file has can be told.
 *
 * @example new SamePlants([['Nocturna', 'nocturna', 'N.']]).keptFor('N.') // 'Nocturna'
 */
export class SamePlants {
  readonly #kept = new Map<string, string>();
  readonly #met = new Set<string>();

  constructor(lists: readonly (readonly string[])[]) {
    const joined = new Map<string, string>();
    const end = (name: string): string => {
      let current = name;
      for (let next = joined.get(current); next !== undefined; next = joined.get(current)) current = next;
      return current;
    };
    for (const [first, ...others] of lists.map((names) => names.map(tidyName))) {
      for (const other of others) {
        const [to, from] = [end(first), end(other)];
        if (to !== from) joined.set(from, to);
      }
    }
    for (const name of joined.keys()) this.#kept.set(name, end(name));
  }

  /** The name that a plant is kept under; its own where nothing is said of it. */
  keptFor(name: string): string {
    const kept = this.#kept.get(name);
    if (kept === undefined) return name;
    this.#met.add(name);
    return kept;
  }

  /** The names that were to be joined to another and stood nowhere. */
  neverMet(): string[] {
    return [...this.#kept.keys()].filter((name) => !this.#met.has(name));
  }
}
