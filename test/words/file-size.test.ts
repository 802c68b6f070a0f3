import { expect, it } from 'vitest';
import { fileSize } from '../../lib/words/file-size.ts';

// A kilobyte is 1,000 bytes, a megabyte 1,000 of them (IEC 80000-13).
it.each([
  [0, '0 kB'],
  [1, '1 kB'],
  [1000, '1 kB'],
  [123_321, '124 kB'],
  [999_000, '999 kB'],
  [999_001, '1.0 MB'],
  [1_000_001, '1.1 MB'],
  [12_340_000, '12.4 MB'],
])('says %i bytes as %s, never too small', (bytes, said) => {
  expect(fileSize(bytes)).toBe(said);
});

it('refuses what is no size', () => {
  expect(() => fileSize(-1)).toThrow('fileSize: bytes must be a whole number from 0 on, got -1');
  expect(() => fileSize(0.5)).toThrow(RangeError);
});
