import { gunzipSync } from 'node:zlib';
import { expect, it } from 'vitest';
import { packed } from '../../lib/browser/build/bundle.ts';
import { bytesOf, DIGITS, unpacked } from '../../lib/browser/unpacked.ts';

it('is what was packed, whatever letters it has', async () => {
  const text = 'const name = "Écho ♀ × 🌵";\n'.repeat(1000);
  expect(packed(text).length).toBeLessThan(text.length / 10);
  expect(await unpacked(packed(text))).toBe(text);
});

it('counts in 85 signs as Ascii85 does, none of which means anything in a string or in a page', () => {
  // "Man " is 24, 73, 80, 78, 61 (Adobe, PostScript Language Reference, 3rd edition, ASCII85Encode; worked out by hand).
  const man = [24, 73, 80, 78, 61].map((digit) => DIGITS[digit]).join('');
  expect(Buffer.from(bytesOf(man)).toString()).toBe('Man ');
  expect(new Set(DIGITS).size).toBe(85);
  expect(DIGITS).toMatch(/^[!-~]+$/);
  expect(DIGITS).not.toMatch(/["'`\\<>&$-]/);
});

it('has as many bytes as were packed, whatever is left over by fours', () => {
  const texts = Array.from({ length: 12 }, (_, i) => 'x'.repeat(i) + i);
  expect(texts.map((text) => gunzipSync(bytesOf(packed(text))).toString())).toEqual(texts);
});
