import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import vm from 'node:vm';
import { afterAll, expect, it } from 'vitest';
import { bundle } from '../../lib/browser/build/bundle.ts';

const folder = mkdtempSync(join(tmpdir(), 'fruitodds-bundle-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

it('makes one classic script, in which an address of a module is no address of the disk', async () => {
  writeFileSync(join(folder, 'part.js'), 'export const part = () => [import.meta.url, "é"];');
  const { code, bytesFrom } = await bundle('import { part } from "./part.js"; found = part();', folder);
  const world = vm.createContext({ found: null });
  vm.runInContext(code, world);
  expect([...(world.found as string[])]).toEqual(['fruitodds:notebook', 'é']);
  expect(code).not.toContain(folder);
  expect(bytesFrom('part.js')).toBeGreaterThan(10);
  expect(bytesFrom('elsewhere.js')).toBe(0);
});

// The ways that a policy leaves open (Content Security Policy Level 3, W3C: navigation and WebRTC are not fetches of a page):
// what the page says of itself is that its program takes none of them.
it.each([
  "import { startPage } from './lib/browser/page.js'; startPage(document.currentScript);",
  "import { serveJobs } from './lib/browser/worker.js'; serveJobs(globalThis, null);",
])('finds no program of the own-season page that opens another address: %s', async (program) => {
  const { code } = await bundle(program, fileURLToPath(new URL('../../dist', import.meta.url)));
  expect(code.length).toBeGreaterThan(10_000);
  expect(
    code.match(/(?:window|self|globalThis)\.open\b|[^.#\w]open\([^)]*\)(?!\{)|\blocation\b|RTC\w+/g),
  ).toBeNull();
});

it('refuses what only Node has', async () => {
  await expect(bundle('import "node:fs";', folder)).rejects.toThrow('node:fs');
});

it('gives whoever asks for English words those of the page’s language, and no others', async () => {
  const words = join(folder, 'lib', 'words');
  mkdirSync(join(words, 'german'), { recursive: true });
  mkdirSync(join(words, 'told'));
  writeFileSync(join(words, 'page.js'), 'export const said = "All pages";');
  writeFileSync(join(words, 'told', 'count.js'), 'export const count = 2;');
  writeFileSync(join(words, 'german', 'index.js'), 'export const said = "Alle Seiten", more = "Mehr";');
  writeFileSync(
    join(folder, 'asks.js'),
    'import { said } from "./lib/words/page.js"; import { count } from "./lib/words/told/count.js"; export { said, count };',
  );
  const english = await bundle('export * from "./asks.js";', folder, { name: 'asked' });
  const german = await bundle('export * from "./asks.js";', folder, { name: 'asked', language: 'de' });
  const run = ({ code }: { readonly code: string }) =>
    vm.runInNewContext(`${code}; [asked.said, asked.count].join()`) as string;
  expect([run(english), run(german)]).toEqual(['All pages,2', 'Alle Seiten,2']);
  expect(german.code).not.toContain('All pages');
  const lacking = bundle('import { gone } from "./lib/words/page.js"; found = gone;', folder, {
    language: 'de',
  });
  await expect(lacking).rejects.toThrow('gone');
});
