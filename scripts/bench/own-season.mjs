// `node scripts/bench/own-season.mjs`: how long the page for one's own file keeps a telephone busy, a sixth as fast as
// this computer.
//
// Chromium can slow the page's own thread sixfold, but no Worker, and on a busy computer the clock says little. So the
// processor time of both threads is taken from Chromium's trace and counted sixfold. `--first` stops at the first answer.

import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';
import { findChromium } from '../chromium.mjs';

const SLOWED = 6;
const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
const address = pathToFileURL(join(root, 'site', 'your-own-season.html')).href;
const firstOnly = process.argv.includes('--first');
const CATEGORIES = [
  ...['devtools.timeline', 'disabled-by-default-devtools.timeline', 'blink.user_timing'],
  ...['v8', 'disabled-by-default-v8.gc'],
];
const seasons = [
  ['291 rows, 20 vials', ['data-demo/crosses.csv', 'data-demo/vials.csv', 'data-demo/flowers.csv']],
  ['600 rows', ['test/reference/k-season600.csv']],
  ['5000 rows', ['test/reference/k-season5000.csv']],
];

/** Goes through the page's steps, and marks in the trace where each is over. */
async function walk(page, paths) {
  const mark = (name) => page.evaluate((text) => void performance.mark(`step ${text}`), name);
  await page.goto(address);
  await page.waitForTimeout(1500);
  await mark('opened');
  // By path: to hand over their bytes would be work for the page's thread that no grower causes.
  await page.setInputFiles(
    '#own-files',
    paths.map((path) => join(root, path)),
  );
  await page.waitForSelector('#own-reading:not([hidden])');
  await mark('read');
  await page.click('#own-work');
  await page.waitForSelector('#own-counts-said section:nth-of-type(3)', { state: 'attached' });
  await mark('first answer');
  if (firstOnly) return;
  const last = '#own-report section:last-of-type';
  await page.waitForSelector(last, { state: 'attached', timeout: 600_000 });
  await page.waitForTimeout(1000);
  await mark('whole report');
}

/** Events of the page's thread and of its Worker's, and the marks. */
function partsOf(events) {
  const marks = events.filter(({ name }) => name.startsWith('step '));
  const { pid } = marks[0];
  const own = events.filter((event) => event.pid === pid);
  const threads = own.filter(({ name }) => name === 'thread_name');
  const of = (pattern) => {
    const ids = new Set(threads.filter(({ args }) => pattern.test(args.name)).map(({ tid }) => tid));
    return own.filter(({ tid, tts }) => ids.has(tid) && tts !== undefined);
  };
  return { marks, page: of(/^CrRendererMain$/), worker: of(/^DedicatedWorker/) };
}

/** Milliseconds of its processor that a thread had used up at a moment. */
function usedUp(events, moment) {
  const before = events.filter(({ ts }) => ts <= moment);
  return Math.max(0, ...before.map(({ tts }) => tts)) / 1000;
}

/** Each step's processor time, and the longest task of the page's thread in it, both sixfold. */
function steps({ marks, page, worker }) {
  const tasks = page.filter(({ name, dur }) => name === 'RunTask' && dur !== undefined);
  return marks.map(({ name, ts }, i) => {
    const since = i === 0 ? 0 : marks[i - 1].ts;
    const spent = (events) => SLOWED * (usedUp(events, ts) - usedUp(events, since));
    const within = tasks.filter((task) => task.ts >= since && task.ts < ts);
    const longest = SLOWED * Math.max(0, ...within.map(({ tdur = 0 }) => tdur / 1000));
    return { name: name.slice(5), page: spent(page), worker: spent(worker), longest };
  });
}

const browser = await chromium.launch({
  executablePath: findChromium() ?? '',
  args: ['--no-sandbox', '--disable-gpu'],
});
for (const [name, paths] of seasons) {
  const page = await browser.newPage({ viewport: { width: 412, height: 800 } });
  await browser.startTracing(page, { categories: CATEGORIES });
  await walk(page, paths);
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString());
  console.log(`${name}, milliseconds counted sixfold`);
  for (const step of steps(partsOf(traceEvents))) {
    const [own, worker, longest] = [step.page, step.worker, step.longest].map(Math.round);
    console.log(
      `  ${step.name}: ${own + worker} (page ${own}, Worker ${worker}); longest task of the page ${longest}`,
    );
  }
  await page.close();
}
await browser.close();
