import { expect, it } from 'vitest';
import { packed } from '../../lib/browser/build/bundle.ts';
import { unpacked } from '../../lib/browser/unpacked.ts';

it('is what was packed, whatever letters it has', async () => {
  const text = 'const name = "Écho ♀ × 🌵";\n'.repeat(1000);
  expect(packed(text).length).toBeLessThan(text.length / 10);
  expect(await unpacked(packed(text))).toBe(text);
});
