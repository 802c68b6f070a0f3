import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isBlankRow, trimmed } from '../../lib/season/rows.ts';

describe('trimmed', () => {
  it("is the language's own trim", () => {
    const text = fc.oneof(
      fc.string(),
      fc.string({ unit: 'binary' }),
      fc.constantFrom('\u00a0a', 'a\ufeff', ' a b ', '\t'),
    );
    fc.assert(
      fc.property(text, (cell) => {
        expect(trimmed(cell)).toBe(cell.trim());
      }),
      { seed: 5, numRuns: 500 },
    );
  });
});

describe('isBlankRow', () => {
  it('finds a row of nothing but space', () => {
    expect([[], [''], [' ', '\u00a0'], ['', '0']].map(isBlankRow)).toEqual([true, true, true, false]);
  });
});
