import { byCodePoint } from './flowers.ts';

/**
 * Items gathered by a name, names in code-point order, items in the order they had.
 *
 * @example gather([{ p: 'B' }, { p: 'A' }, { p: 'B' }], ({ p }) => p).map(([name, all]) => [name, all.length]) // [['A', 1], ['B', 2]]
 */
export function gather<T>(items: readonly T[], nameOf: (item: T) => string): [string, T[]][] {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const group = groups.get(nameOf(item));
    if (group === undefined) groups.set(nameOf(item), [item]);
    else group.push(item);
  }
  return [...groups].sort(([a], [b]) => byCodePoint(a, b));
}
