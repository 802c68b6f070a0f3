/**
 * How fast are the fits? Where Rscript is found, R does the same fits beside them and the ratio is printed.
 *
 *   npm run bench                          every case, a few minutes
 *   npm run bench -- --case firth          only the cases whose name holds this word
 *   npm run bench -- --case watch          how soon a saved notebook or data file is on the site
 *   npm run bench -- --without-r           ours only
 *   npm run bench -- --import              reading a file of a million flowers, beside csv-parse alone
 *   npm run bench -- --memory              peak memory at n, 2 n and 4 n rows instead of times
 *
 * R needs the packages lme4, brglm2 and, for the profile ranges, brglm; a case whose package is missing is run
 * without R.
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { buildSync } from 'esbuild';

const root = fileURLToPath(new URL('..', import.meta.url));
const folder = join(root, 'dist', 'bench');

const { values } = parseArgs({
  options: {
    case: { type: 'string', default: '' },
    'without-r': { type: 'boolean', default: false },
    memory: { type: 'boolean', default: false },
    import: { type: 'boolean', default: false },
    rows: { type: 'string', default: '1000000' },
    // One fit of so many rows and its peak memory: what --memory starts in a process of its own.
    peak: { type: 'string' },
  },
});

mkdirSync(folder, { recursive: true });
const { outputFiles } = buildSync({
  entryPoints: [join(root, 'scripts', 'bench', 'run.ts')],
  bundle: true,
  platform: 'node',
  format: 'esm',
  packages: 'external',
  write: false,
});
const file = join(folder, 'run.mjs');
writeFileSync(file, outputFiles[0].text);
const { times, memory, peak, importTimes } = await import(pathToFileURL(file).href);
if (values.peak !== undefined) console.log(peak(values.case, Number(values.peak)));
else if (values.import) importTimes(Number(values.rows));
else if (values.memory) memory(fileURLToPath(import.meta.url));
else {
  await times({ word: values.case, withR: !values['without-r'], folder });
  // A process of its own: what other cases left to be collected is no part of a watch.
  if ('the watch'.includes(values.case)) {
    spawnSync(process.execPath, [join(root, 'scripts', 'bench', 'watch.mjs')], { stdio: 'inherit' });
  }
}
