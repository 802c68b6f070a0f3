import { expect, it } from 'vitest';
import { problemCatalogue } from '../../lib/words/problem-catalogue.ts';
import { crossesCsv } from '../command/memory-world.ts';
import { pageOf } from './page-of.ts';

it('the page of problems is made from the catalogue: every code, what becomes of the row, how to mend it', async () => {
  const page = await pageOf(
    'problems',
    crossesCsv(['2025-06-20,A,A,fresh,fruit', '2025-06-21,A,B,fresh,none']),
  );
  const text = page.replaceAll('&#39;', "'").replaceAll('&quot;', '"').replaceAll('&amp;', '&');
  const entries = problemCatalogue();
  expect(entries.length).toBeGreaterThan(80);
  for (const { code, severity, used, mend } of entries) {
    expect(text).toContain(`${code} (${severity})`);
    expect(text).toContain(used);
    expect(text).toContain(mend);
  }
  expect(text).toContain('own-pollen.');
});
