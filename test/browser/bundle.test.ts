import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import vm from 'node:vm';
import { afterAll, expect, it } from 'vitest';
import { bundle } from '../../lib/browser/build/bundle.ts';

const folder = mkdtempSync(join(tmpdir(), 'fruitodds-bundle-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

it('makes one classic script, in which an address of a module is no address of the disk', () => {
  writeFileSync(join(folder, 'part.js'), 'export const part = () => [import.meta.url, "é"];');
  const { code, bytesFrom } = bundle('import { part } from "./part.js"; found = part();', folder);
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
])('finds no program of the own-season page that opens another address: %s', (program) => {
  const { code } = bundle(program, fileURLToPath(new URL('../../dist', import.meta.url)));
  expect(code.length).toBeGreaterThan(10_000);
  expect(
    code.match(/(?:window|self|globalThis)\.open\b|[^.#\w]open\([^)]*\)(?!\{)|\blocation\b|RTC\w+/g),
  ).toBeNull();
});

it('refuses what only Node has', () => {
  expect(() => bundle('import "node:fs";', folder)).toThrow('node:fs');
});
