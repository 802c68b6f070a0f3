/**
 * Do the grower's ranges hold? Seasons drawn from stated worlds, analysed, and compared with their truth.
 *
 *   npm run simulate                       2,000 seasons, about two hours of one core; prints the table
 *   npm run simulate -- --minutes 20       as many as go into 20 minutes; the next call goes on from there
 *   npm run simulate -- --seasons 400      fewer
 *   npm run simulate -- --write            writes test/reference/simulation.json as well
 *
 * Scored seasons are kept in dist/simulation/, in a file named by the code that scored them: changed code starts anew.
 */
import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { buildSync } from 'esbuild';

const root = fileURLToPath(new URL('..', import.meta.url));
const folder = join(root, 'dist', 'simulation');

/** Bundles the simulation with the library as it is now; its address and the digest of its code. */
function bundle() {
  const { outputFiles } = buildSync({
    stdin: {
      contents: "export * from './run.ts'; export * from './coverage.ts';",
      resolveDir: join(root, 'scripts', 'simulation'),
    },
    bundle: true,
    platform: 'node',
    format: 'esm',
    write: false,
  });
  const code = outputFiles[0].text;
  const digest = createHash('sha256').update(code).digest('hex').slice(0, 12);
  mkdirSync(folder, { recursive: true });
  const file = join(folder, `${digest}.mjs`);
  writeFileSync(file, code);
  return { digest, address: pathToFileURL(file).href };
}

const { values } = parseArgs({
  options: {
    seasons: { type: 'string', default: '2000' },
    minutes: { type: 'string', default: 'Infinity' },
    write: { type: 'boolean', default: false },
  },
});
const { digest, address } = bundle();
const { run, coverage, coverageTable } = await import(address);
const scored = run({
  seasons: Number(values.seasons),
  minutes: Number(values.minutes),
  file: join(folder, `${digest}.jsonl`),
});
const worlds = coverage(scored);
console.log(coverageTable(worlds));
if (values.write) {
  const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  const table = {
    source: 'node scripts/simulate.mjs --write',
    version,
    code: digest,
    level: 0.95,
    seeds: 'from 0 on; the worlds that do not match take every fourth',
    worlds,
  };
  writeFileSync(join(root, 'test', 'reference', 'simulation.json'), `${JSON.stringify(table, null, 2)}\n`);
}
