/** How many slips of the pen lie between two words. */

/**
 * Letters to insert, delete, replace or exchange with their neighbour to turn one word into the other: the restricted
 * distance of Damerau (1964), row by row.
 *
 * @example editDistance('frozen', 'frozne') // 1
 */
export function editDistance(from: string, to: string): number {
  let twoAbove: number[] = [];
  let above = Array.from({ length: to.length + 1 }, (_, j) => j);
  for (let i = 1; i <= from.length; i++) {
    const row = [i];
    for (let j = 1; j <= to.length; j++) {
      const replaced = above[j - 1] + (from[i - 1] === to[j - 1] ? 0 : 1);
      const exchanged = i > 1 && j > 1 && from[i - 1] === to[j - 2] && from[i - 2] === to[j - 1];
      const swapped = exchanged ? twoAbove[j - 2] + 1 : replaced;
      row.push(Math.min(replaced, swapped, above[j] + 1, row[j - 1] + 1));
    }
    twoAbove = above;
    above = row;
  }
  return above[to.length];
}
