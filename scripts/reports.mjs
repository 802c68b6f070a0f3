// `npm run reports [-- FOLDER]`: compiles library and notebooks, then renders reports/*.md on data-demo/ and the
// library's own pages to site/. With --watch (`npm run watch`) it goes on: each saved notebook or data file is rendered
// again, until Ctrl-C.

import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { apiPages } from './api-pages.mjs';
import { compileAll, root } from './prepare.mjs';
import { renderSite } from './render.mjs';
import { watchSite } from './watch.mjs';

const USAGE = 'npm run reports [-- FOLDER], npm run watch [-- FOLDER]: FOLDER is site where it is left out.';

/** What was asked for; null where it cannot be understood, which is then said. */
function asked() {
  try {
    const { values, positionals } = parseArgs({
      options: { watch: { type: 'boolean', default: false } },
      allowPositionals: true,
    });
    if (positionals.length > 1) throw new Error(`One folder at most, got ${positionals.join(', ')}`);
    return { watch: values.watch, folder: resolve(positionals[0] ?? resolve(root, 'site')) };
  } catch (error) {
    console.error(`${error.message}\n${USAGE}`);
    return null;
  }
}

async function run({ watch, folder }) {
  if ((await compileAll()) !== 0) return 1;
  const api = await apiPages();
  if (api === null) return 1;
  if (!watch) return renderSite(folder, api);
  const stop = new AbortController();
  process.once('SIGINT', () => stop.abort());
  process.once('SIGTERM', () => stop.abort());
  await watchSite(folder, api, stop.signal);
  return 0;
}

const wanted = asked();
process.exitCode = wanted === null ? 2 : await run(wanted);
