import { expect, it } from 'vitest';
import { ownText } from '../../lib/notebook/own-text.ts';

// `npm test` gathers it first.
it('holds what pages, results and charts say, and no name of the demo season', async () => {
  const text = await ownText();
  for (const phrase of ['Did frozen pollen work?', 'Wilson', 'seedParent', 'use first'])
    expect(text).toContain(phrase);
  expect(text).not.toContain('Quiet Harbour');
});
