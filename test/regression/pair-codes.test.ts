import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PairCodes } from '../../lib/regression/pair-codes.ts';

describe('PairCodes', () => {
  it('gives what a dictionary of written pairs gives, in order of appearance, past its first size', () => {
    const pair = fc.tuple(fc.integer({ min: 0, max: 30 }), fc.constantFrom(0, 0.1, -7, 1e300, 5e-324));
    fc.assert(
      fc.property(fc.array(pair, { maxLength: 300 }), (pairs) => {
        const codes = new PairCodes();
        const known = new Map<string, number>();
        for (const [code, value] of pairs) {
          const key = `${code} ${value}`;
          if (!known.has(key)) known.set(key, known.size);
          expect(codes.codeOf(code, value)).toBe(known.get(key));
        }
        expect(codes.count).toBe(known.size);
      }),
      { numRuns: 50, seed: 1 },
    );
    const many = new PairCodes();
    for (let k = 0; k < 5000; k += 1) expect(many.codeOf(k % 7, k / 3)).toBe(k);
    for (let k = 0; k < 5000; k += 1) expect(many.codeOf(k % 7, k / 3)).toBe(k);
  });
});
