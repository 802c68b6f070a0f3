/**
 * How soon is a saved file on the site? `npm run bench -- --case watch`, after `npm run prepare`: a copy of the project is
 * watched, notebooks and data files are saved five times each, and the times from a save to the written pages are told, by
 * the wall clock, and of the processor, which other work does not lengthen as much.
 */
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const TARGET = 1;
const SAVES = 5;
const root = fileURLToPath(new URL('../..', import.meta.url));

const withoutLastRow = (text) => text.replace(/\n[^\n]+\n$/, '\n');
const SAVED = [
  { file: 'reports/old-vials.md', change: (text) => text.replace('is not a worse vial', 'is no worse vial') },
  { file: 'reports/season-review.md', change: (text) => text.replace('Raw rates are', 'The raw rates are') },
  { file: 'data-demo/vials.csv', change: withoutLastRow },
  { file: 'data-demo/flowers.csv', change: withoutLastRow },
  { file: 'data-demo/crosses.csv', change: withoutLastRow },
];

/** A copy of all that a watch reads and writes. */
function copiedProject() {
  const place = mkdtempSync(join(tmpdir(), 'watched-'));
  for (const name of ['dist', 'lib', 'scripts', 'reports', 'data-demo', 'package.json'])
    cpSync(join(root, name), join(place, name), { recursive: true });
  symlinkSync(join(root, 'node_modules'), join(place, 'node_modules'), 'junction');
  return place;
}

/** Saves a file as changed and as it was in turn; the seconds of each save until the watch told of it. */
async function timesOf(place, { file, change }, nextTold) {
  const path = join(place, file);
  const before = readFileSync(path, 'utf8');
  const changed = change(before);
  if (changed === before) throw new Error(`${file}: the change of the bench does not change it`);
  const times = [];
  for (let save = 0; save < SAVES; save += 1) {
    const [began, cpu] = [performance.now(), process.cpuUsage()];
    writeFileSync(path, save % 2 === 0 ? changed : before);
    await nextTold();
    const { user, system } = process.cpuUsage(cpu);
    times.push({ wall: (performance.now() - began) / 1000, busy: (user + system) / 1e6 });
    // The page for one's own season follows the season review, told of by itself.
    if (file.endsWith('season-review.md')) await nextTold();
  }
  return times;
}

const sorted = (numbers) => [...numbers].sort((a, b) => a - b);
const median = (numbers) => sorted(numbers)[numbers.length >> 1];

function line(file, times) {
  const wall = times.map((time) => time.wall);
  const [middle, longest] = [median(wall), Math.max(...wall)];
  const busy = median(times.map((time) => time.busy));
  return (
    `the watch, ${file} saved: ${middle.toFixed(2)} s, the longest of ${SAVES} ${longest.toFixed(2)} s (processor ` +
    `${busy.toFixed(2)} s), to be within ${TARGET} s: ${middle <= TARGET ? 'met' : 'MISSED'}`
  );
}

const place = copiedProject();
const { watchSite } = await import(pathToFileURL(join(place, 'scripts', 'watch.mjs')).href);
let told = 0;
let heard = () => {};
const tell = () => {
  told += 1;
  heard();
};
const afterTold = async (times) => {
  while (told < times) {
    await new Promise((done) => {
      heard = done;
    });
  }
};
const stop = new AbortController();
const world = { say: tell, sayFault: tell, now: () => performance.now() };
const watching = watchSite(join(place, 'site'), [], stop.signal, world);
await afterTold(2);
for (const each of SAVED) {
  const times = await timesOf(place, each, () => afterTold(told + 1));
  console.log(line(each.file, times));
}
stop.abort();
await watching;
rmSync(place, { recursive: true, force: true });
