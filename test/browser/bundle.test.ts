import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
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

it('refuses what only Node has', () => {
  expect(() => bundle('import "node:fs";', folder)).toThrow('node:fs');
});
