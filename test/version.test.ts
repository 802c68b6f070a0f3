import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { VERSION } from '../lib/version.ts';

it('names the version of the package', () => {
  const text = readFileSync(new URL('../package.json', import.meta.url), 'utf8');
  const manifest = JSON.parse(text) as { version: string };
  expect(VERSION).toBe(manifest.version);
});
