/** Compiles a notebook's text and loads it as Node would, from a file of its own outside of the test runner's reach. */

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { onTestFinished } from 'vitest';
import { readNotebook } from '../../lib/notebook/build/cells.ts';
import { compileNotebook } from '../../lib/notebook/build/compile.ts';
import type { CompiledNotebook } from '../../lib/notebook/run.ts';

const front = '---\ntitle: A season\ndescription: What it says.\n---\n';

/** The notebook of this text, whose first line is line 5. Cells that import from the library are not for here. */
export async function compiled(text: string): Promise<CompiledNotebook> {
  const folder = mkdtempSync(join(tmpdir(), 'notebook-'));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  const path = join(folder, 'season.mjs');
  writeFileSync(path, compileNotebook(readNotebook('reports/season.md', front + text)));
  const module: { notebook: CompiledNotebook } = await import(/* @vite-ignore */ pathToFileURL(path).href);
  return module.notebook;
}
