import { editDistance } from '../season/edit-distance.ts';

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
    const letters = editDistance(word, candidate);
    if (letters < least) [best, least] = [candidate, letters];
  }
  return best;
}
