/** The package's own compiled notebooks, found through its `exports`: a source folder has none beside it. */

import type { Language } from '../words/language.ts';
import type { CompiledNotebook } from './run.ts';

/** What `prepare` writes beside the compiled notebooks. */
interface NotebookList {
  readonly names: readonly string[];
}

/** Compiled notebooks, and those whose packages are not installed. */
export interface FoundNotebooks {
  readonly notebooks: readonly CompiledNotebook[];
  readonly leftOut: readonly { readonly name: string; readonly package: string }[];
}

const LIST = 'fruitodds/reports/_list.js';

/**
 * Loads every compiled notebook, and its translations into some languages where it has them. One that needs an optional
 * package which is not installed is left out and named.
 *
 * @param languages besides English
 * @param load how a module of this package is loaded
 */
export async function compiledNotebooks(
  languages: readonly Language[] = [],
  load: (address: string) => Promise<unknown> = (address) => import(address),
): Promise<FoundNotebooks> {
  const { names } = (await load(LIST)) as NotebookList;
  const notebooks: CompiledNotebook[] = [];
  const leftOut: { name: string; package: string }[] = [];
  const wanted = names.filter((name) => {
    const [, language] = name.split('.');
    return language === undefined || languages.some((code) => code === language);
  });
  for (const name of wanted) {
    try {
      const module = await load(`fruitodds/reports/${name}.js`);
      notebooks.push((module as { readonly notebook: CompiledNotebook }).notebook);
    } catch (error) {
      const missing = missingPackage(error);
      if (missing === null) throw error;
      if (!name.includes('.')) leftOut.push({ name, package: missing });
    }
  }
  return { notebooks, leftOut };
}

/** The package that an import failed to find, or null where something else went wrong. */
function missingPackage(error: unknown): string | null {
  if (!(error instanceof Error) || !('code' in error) || error.code !== 'ERR_MODULE_NOT_FOUND') return null;
  return /Cannot find package '([^']+)'/.exec(error.message)?.[1] ?? null;
}
