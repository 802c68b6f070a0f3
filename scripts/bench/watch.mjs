/**
 * How soon does the watch answer? `node scripts/bench/watch.mjs` after `npm run reports`: a copy of the project is
 * watched, a notebook and each data file are saved, and the times are told: by the wall clock, and of the processor,
 * which other work does not lengthen.
 */
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const place = mkdtempSync(join(tmpdir(), 'watched-'));
for (const name of ['dist', 'lib', 'scripts', 'reports', 'data-demo', 'package.json'])
  cpSync(join(root, name), join(place, name), { recursive: true });
symlinkSync(join(root, 'node_modules'), join(place, 'node_modules'), 'junction');
const { watchSite } = await import(pathToFileURL(join(place, 'scripts', 'watch.mjs')).href);

let told = 0;
const tell = () => {
  told += 1;
};
const stop = new AbortController();
const watching = watchSite(join(place, 'site'), [], stop.signal, {
  say: tell,
  sayFault: tell,
  now: () => performance.now(),
});
const toldTimes = async (times) => {
  while (told < times) await new Promise((done) => setTimeout(done, 5));
};
await toldTimes(2);

const cases = [
  ['reports/old-vials.md', (text) => text.replace('is not a worse vial', 'is no worse vial')],
  ['reports/season-review.md', (text) => text.replace('Raw rates are', 'The raw rates are')],
  ['data-demo/vials.csv', (text) => text.replace(/\n[^\n]+\n$/, '\n')],
  ['data-demo/crosses.csv', (text) => text.replace(/\n[^\n]+\n$/, '\n')],
];
for (const [file, change] of cases) {
  const path = join(place, file);
  const before = readFileSync(path, 'utf8');
  const [from, began, cpu] = [told, performance.now(), process.cpuUsage()];
  writeFileSync(path, change(before));
  await toldTimes(from + 1);
  const { user, system } = process.cpuUsage(cpu);
  const [wall, busy] = [performance.now() - began, (user + system) / 1000];
  console.log(`${file}: ${(wall / 1000).toFixed(2)} s, processor ${(busy / 1000).toFixed(2)} s`);
  // The page for one's own season follows the season review, told of by itself.
  if (file.endsWith('season-review.md')) await toldTimes(from + 2);
}
stop.abort();
await watching;
rmSync(place, { recursive: true, force: true });
