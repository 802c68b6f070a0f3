// `node scripts/bench/own-season.mjs`: how long the page for one's own file takes at a sixth of this computer's speed.
//
// Chromium slows the page's own thread sixfold, but no Worker: the Worker's time is measured and counted sixfold.

import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';
import { findChromium } from '../chromium.mjs';

const SLOWED = 6;
const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
const address = pathToFileURL(join(root, 'site', 'your-own-season.html')).href;
/** `--first`: only up to the first answer, without the whole report. */
const firstOnly = process.argv.includes('--first');
const seasons = [
  ['291 rows, 20 vials', ['data-demo/crosses.csv', 'data-demo/vials.csv', 'data-demo/flowers.csv']],
  ['600 rows', ['test/reference/k-season600.csv']],
  ['5000 rows', ['test/reference/k-season5000.csv']],
];

/** Runs in the page before its own script: notes when tasks go to the Worker, when replies come, and long tasks. */
function note() {
  const noted = { posted: 0, replies: [], tasks: [] };
  globalThis.noted = noted;
  new PerformanceObserver((list) => {
    for (const { duration, startTime } of list.getEntries()) noted.tasks.push({ duration, startTime });
  }).observe({ type: 'longtask', buffered: true });
  const { Worker: Real } = globalThis;
  globalThis.Worker = class extends Real {
    constructor(...words) {
      super(...words);
      this.addEventListener('message', ({ data, timeStamp }) => {
        noted.replies.push({ kind: data.reply.stage ?? data.reply.kind, at: timeStamp });
      });
    }
    postMessage(job) {
      noted.posted = performance.now();
      super.postMessage(job);
    }
  };
}

/** Milliseconds from a press to what it shows, the Worker's share of it sixfold. */
async function timed(page, press, shown, kind) {
  const began = await page.evaluate(() => performance.now());
  await press();
  await page.waitForSelector(shown, { state: 'attached', timeout: 600_000 });
  const { ended, posted, replies } = await page.evaluate(() => ({
    ended: performance.now(),
    ...globalThis.noted,
  }));
  const reply = replies.findLast((each) => each.kind === kind);
  const worker = reply.at - posted;
  return Math.round(ended - began + (SLOWED - 1) * worker);
}

async function measure(browser, paths) {
  const page = await browser.newPage();
  await page.addInitScript(note);
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWED });
  await page.goto(address);
  await page.waitForTimeout(1000);
  const files = paths.map((path) => join(root, path));
  const read = await timed(
    page,
    () => page.setInputFiles('#own-files', files),
    '#own-reading:not([hidden])',
    'read',
  );
  const work = () => page.click('#own-work');
  const first = await timed(page, work, '#own-counts-said section:nth-of-type(3)', 'first');
  const whole = firstOnly
    ? null
    : await timed(page, async () => {}, '#own-report section:last-of-type', 'done');
  await page.waitForTimeout(1000);
  const tasks = await page.evaluate(() => globalThis.noted.tasks);
  const opening = tasks.filter(({ startTime }) => startTime < 1000).map(({ duration }) => duration);
  const longest = (list) => Math.round(Math.max(0, ...list));
  await page.close();
  return {
    read,
    first,
    whole,
    longest: longest(tasks.filter(({ startTime }) => startTime >= 1000).map(({ duration }) => duration)),
    opening: longest(opening),
  };
}

const browser = await chromium.launch({
  executablePath: findChromium() ?? '',
  args: ['--no-sandbox', '--disable-gpu'],
});
for (const [name, paths] of seasons) {
  const { read, first, whole, longest, opening } = await measure(browser, paths);
  console.log(
    `${name}: read ${read} ms, first answer ${first} ms after the press, whole report ${whole ?? 'not timed'}${whole === null ? '' : ' ms'}; ` +
      `longest task of the page ${longest} ms, while opening ${opening} ms`,
  );
}
await browser.close();
