import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, it, onTestFinished } from 'vitest';
import { compiledNotebooks } from '../../lib/notebook/compiled-notebooks.ts';

/** Modules by address; an address that is not there fails as Node's own loader does. */
function loader(modules: Readonly<Record<string, unknown>>, missing = 'arquero') {
  return async (address: string): Promise<unknown> => {
    const module = Object.hasOwn(modules, address) ? modules[address] : undefined;
    if (module !== undefined) return module;
    const error = new Error(`Cannot find package '${missing}' imported from /x/reports/y.js`);
    throw Object.assign(error, { code: 'ERR_MODULE_NOT_FOUND' });
  };
}

const list = { 'fruitodds/reports/_list.js': { names: ['index', 'charts'] } };

it('loads every notebook that is listed, in that order', async () => {
  const modules = {
    ...list,
    'fruitodds/reports/index.js': { notebook: { name: 'index' } },
    'fruitodds/reports/charts.js': { notebook: { name: 'charts' } },
  };
  const { notebooks, leftOut } = await compiledNotebooks([], loader(modules));
  expect(notebooks.map(({ name }) => name)).toEqual(['index', 'charts']);
  expect(leftOut).toEqual([]);
});

it('leaves out a notebook whose optional package is not installed, and names both', async () => {
  const modules = { ...list, 'fruitodds/reports/index.js': { notebook: { name: 'index' } } };
  const { notebooks, leftOut } = await compiledNotebooks([], loader(modules));
  expect(notebooks.map(({ name }) => name)).toEqual(['index']);
  expect(leftOut).toEqual([{ name: 'charts', package: 'arquero' }]);
});

it('hides no other fault of a notebook', async () => {
  const load = async (address: string): Promise<unknown> => {
    if (address.endsWith('_list.js')) return { names: ['broken'] };
    throw new SyntaxError('Unexpected token');
  };
  await expect(compiledNotebooks([], load)).rejects.toThrow('Unexpected token');
});

it('knows the words in which this Node says that a package is missing', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'notebooks-'));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  const path = join(folder, 'charts.mjs');
  writeFileSync(path, "import 'a-package-that-nobody-has';\nexport const notebook = { name: 'charts' };\n");
  const load = async (address: string): Promise<unknown> =>
    address.endsWith('_list.js')
      ? { names: ['charts'] }
      : import(/* @vite-ignore */ pathToFileURL(path).href);
  expect((await compiledNotebooks([], load)).leftOut).toEqual([
    { name: 'charts', package: 'a-package-that-nobody-has' },
  ]);
});
