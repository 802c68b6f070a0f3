/** Letters to insert, delete or replace to turn one word into the other (Levenshtein 1966), row by row. */
function distance(from: string, to: string): number {
  let above = Array.from({ length: to.length + 1 }, (_, j) => j);
  for (let i = 1; i <= from.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= to.length; j += 1) {
      const replaced = above[j - 1]! + (from[i - 1] === to[j - 1] ? 0 : 1);
      row.push(Math.min(replaced, above[j]! + 1, row[j - 1]! + 1));
    }
    above = row;
  }
  return above[to.length]!;
}

/**
 * The known word that a mistyped one most likely means: one it begins, or the nearest by letters to change, at
 * most a third of its letters (two at least); the first of equals.
 *
 * @returns null where none is near
 * @example
 * nearest('--levle', ['--level', '--json']); // '--level'
 */
export function nearest(word: string, known: readonly string[]): string | null {
  const begun = known.find((candidate) => word.length > 3 && candidate.startsWith(word));
  if (begun !== undefined) return begun;
  let best: string | null = null;
  let least = Math.max(2, Math.floor(word.length / 3)) + 1;
  for (const candidate of known) {
    const letters = distance(word, candidate);
    if (letters < least) [best, least] = [candidate, letters];
  }
  return best;
}
