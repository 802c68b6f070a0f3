/**
 * Do the grower's ranges hold, and is the advice worth more than rules of thumb? Seasons and growers drawn from stated worlds,
 * analysed, and compared with their truth.
 *
 *   npm run simulate                            ranges in 2,000 seasons, about two hours of one core; prints the table
 *   npm run simulate -- growers                 verdicts, estimates and plans of 500 growers, about half an hour
 *   npm run simulate -- growers --minutes 20    as many as go into 20 minutes; the next call goes on from there
 *   npm run simulate -- growers --count 50      fewer
 *   npm run simulate -- growers --write         writes test/reference/simulated-growers.json as well (seasons: simulation.json)
 *
 * What is scored is kept in dist/simulation/, in a file named by the code that scored it: changed code starts anew.
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
      contents: "export * from './run.ts'; export * from './coverage.ts'; export * from './decisions.ts';",
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

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    count: { type: 'string' },
    minutes: { type: 'string', default: 'Infinity' },
    write: { type: 'boolean', default: false },
  },
});
const growers = positionals[0] === 'growers';
const { digest, address } = bundle();
const code = await import(address);
const scored = (growers ? code.runGrowers : code.runSeasons)({
  count: Number(values.count ?? (growers ? 500 : 2000)),
  minutes: Number(values.minutes),
  file: join(folder, `${digest}-${growers ? 'growers' : 'seasons'}.jsonl`),
});
const worlds = growers ? code.decisionScores(scored) : code.coverage(scored);
console.log(growers ? code.decisionTable(worlds) : code.coverageTable(worlds));
if (values.write) {
  const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  const table = {
    source: `node scripts/simulate.mjs ${growers ? 'growers ' : ''}--write`,
    version,
    code: digest,
    level: 0.95,
    seeds: `from 0 on; of the first kind all, of the others every ${growers ? 'tenth' : 'fourth'}`,
    worlds,
  };
  const name = growers ? 'simulated-growers.json' : 'simulation.json';
  writeFileSync(join(root, 'test', 'reference', name), `${JSON.stringify(table, null, 2)}\n`);
}
