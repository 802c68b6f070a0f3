import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { editDistance } from '../../lib/season/edit-distance.ts';

/** The same by its definition, as a recursion: slow and plain. */
function slowly(a: string, b: string): number {
  if (a === '' || b === '') return a.length + b.length;
  const last = a.at(-1) === b.at(-1) ? 0 : 1;
  const exchanged = a.length > 1 && b.length > 1 && a.at(-1) === b.at(-2) && a.at(-2) === b.at(-1);
  return Math.min(
    slowly(a.slice(0, -1), b) + 1,
    slowly(a, b.slice(0, -1)) + 1,
    slowly(a.slice(0, -1), b.slice(0, -1)) + last,
    exchanged ? slowly(a.slice(0, -2), b.slice(0, -2)) + 1 : Number.POSITIVE_INFINITY,
  );
}

describe('editDistance', () => {
  // kitten and sitting: the usual example of Levenshtein's distance (from memory); ca and abc: 3, since no letter is edited twice.
  it('counts letters to insert, delete, replace or exchange', () => {
    expect(editDistance('kitten', 'sitting')).toBe(3);
    expect(editDistance('ca', 'abc')).toBe(3);
    expect(editDistance('frozen', 'frozne')).toBe(1);
    expect(editDistance('', 'abc')).toBe(3);
  });

  it('is what its definition says', () => {
    const word = fc
      .array(fc.constantFrom('a', 'b', 'c'), { maxLength: 5 })
      .map((letters) => letters.join(''));
    fc.assert(
      fc.property(word, word, (a, b) => {
        expect(editDistance(a, b)).toBe(slowly(a, b));
      }),
      { seed: 11, numRuns: 200 },
    );
  });
});
