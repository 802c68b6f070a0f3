// The site made again whenever a notebook or a data file is saved.

import { watch as watchFolder } from 'node:fs';
import { join } from 'node:path';
import { compileOwnSeason, notebookCompiler, root } from './prepare.mjs';
import { faultText, siteMaker, siteWriter, warmUp } from './render.mjs';

/** Editors save in several steps: this many milliseconds without another change, and the file is taken for saved. */
const QUIET = 40;

const FOLDERS = [
  { folder: 'reports', ending: '.md' },
  { folder: 'data-demo', ending: '.csv' },
];

/**
 * Calls `build` after changes, one run at a time: what is saved meanwhile is built after it, all of it at once.
 *
 * @param build takes the names of changed files; must not throw
 * @param clock what waits: `set` and `clear` as setTimeout and clearTimeout
 * @returns `changed`, to be told of each change, and `idle`, which waits until nothing is left to build
 */
export function afterChanges(build, clock = { set: setTimeout, clear: clearTimeout }) {
  let waiting = null;
  let names = new Set();
  let running = Promise.resolve();
  const start = () => {
    waiting = null;
    running = running.then(() => {
      const taken = [...names];
      names = new Set();
      return taken.length === 0 ? undefined : build(taken);
    });
  };
  return {
    changed: (name) => {
      names.add(name);
      if (waiting !== null) clock.clear(waiting);
      waiting = clock.set(start, QUIET);
    },
    idle: async () => {
      while (waiting !== null || names.size > 0) {
        if (waiting !== null) {
          clock.clear(waiting);
          start();
        }
        await running;
      }
      await running;
    },
  };
}

/** What is wrong in the data, one line a fault: file, line, column and what to do. */
async function dataFaults({ files }) {
  const { problemWords } = await import('fruitodds');
  return files.flatMap(({ file, problems }) =>
    problems
      .filter(({ severity }) => severity === 'error')
      .map((problem) => {
        const { message, fix } = problemWords(problem);
        return `data-demo/${file}:${problem.line ?? 1}: ${message} ${fix}`;
      }),
  );
}

/** Makes the site again and again; says how it went. What fails leaves the site as it was. */
async function siteBuilder(folder, api, { say, sayFault, now }) {
  const [compile, make, write] = await Promise.all([notebookCompiler(), siteMaker(api), siteWriter(folder)]);
  const once = async (began) => {
    const { season, files } = await make();
    const written = write(files);
    for (const fault of await dataFaults(season)) sayFault(fault);
    const pages = written.filter((name) => !name.startsWith('api/'));
    say(`${pages.length === 0 ? 'nothing changed' : pages.join(', ')} (${Math.round(now() - began)} ms)`);
  };
  return async (names) => {
    const began = now();
    try {
      compile();
      await once(began);
      // The page for one's own season holds the season review too; bundling it takes longer than anybody wants to wait.
      if (names.some((name) => name.endsWith('season-review.md'))) {
        await compileOwnSeason(['en']);
        await once(began);
      }
    } catch (error) {
      sayFault(faultText(error));
      sayFault('Nothing was written: the site is as it was.');
    }
  };
}

/**
 * Makes the site, then again at each change, until the signal.
 *
 * @param folder of the site
 * @param api the library's own pages
 * @param signal ends the watch
 * @param world what is said, and by which clock
 */
export async function watchSite(
  folder,
  api,
  signal,
  world = { say: console.log, sayFault: console.error, now: () => performance.now() },
) {
  const build = await siteBuilder(folder, api, world);
  const { changed, idle } = afterChanges(build);
  const watchers = FOLDERS.map(({ folder: name, ending }) =>
    watchFolder(join(root, name), (_, file) => {
      if (file?.endsWith(ending) && !file.startsWith('.')) changed(`${name}/${file}`);
    }),
  );
  await build([]);
  // What is wrong with the data was said by the build.
  await warmUp().catch(() => {});
  world.say(`Watching ${FOLDERS.map((each) => each.folder).join(' and ')}. Ctrl-C ends it.`);
  if (!signal.aborted) await new Promise((done) => signal.addEventListener('abort', done, { once: true }));
  for (const watcher of watchers) watcher.close();
  await idle();
}
