// Renders the compiled notebooks of dist/reports on the demo season to a folder, site/ if none is named.

import { readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const fromDist = (...names) => import(pathToFileURL(join(root, 'dist', ...names)).href);

/** The demo season under the names that its pages show, whatever folder the project stands in. */
function demoFiles() {
  return ['crosses.csv', 'vials.csv', 'flowers.csv'].map((name) => ({
    name,
    bytes: new Uint8Array(readFileSync(join(root, 'data-demo', name))),
  }));
}

/** The library's own pages as one entry of the start page; none where they were not made. */
function libraryEntry(api) {
  const start = api.find(({ name }) => name === 'api/index.html');
  if (start === undefined) return [];
  const description =
    'Every function of the library with its method, its source and an example. In English, for those who write programs.';
  return [{ ...start, title: 'The library', description, order: 95 }];
}

/** The files of the demo season's site, as `fruitodds site` makes them of a grower's, and the library's own pages. */
async function demoSite(api) {
  const { analyse, readSeason } = await fromDist('lib', 'index.js');
  const { cleanFiles, siteDownloads } = await fromDist('lib', 'command', 'site-downloads.js');
  const { renderSite: render } = await fromDist('lib', 'notebook', 'render-site.js');
  const season = readSeason(demoFiles());
  const analysis = analyse(season);
  const { scriptedPages } = await fromDist('lib', 'browser', 'scripted-pages.js');
  const scripted = await scriptedPages(season);
  const otherPages = [...scripted.pages, ...libraryEntry(api)];
  const downloads = siteDownloads(analysis, cleanFiles(season));
  const site = await render(season, analysis, { downloads, otherPages, invented: true });
  const listed = new Set(otherPages.map(({ name }) => name));
  return {
    files: [...site.files, ...api.filter(({ name }) => !listed.has(name))],
    leftOut: [...site.leftOut, ...scripted.leftOut],
  };
}

/** Renders everything, then puts it in place at once; the exit status. What fails leaves the old site as it was. */
export async function renderSite(folder = join(root, 'site'), api = []) {
  try {
    const { writeSite } = await fromDist('lib', 'notebook', 'site.js');
    const { disk } = await fromDist('lib', 'notebook', 'output.js');
    const { files, leftOut } = await demoSite(api);
    writeSite(disk, folder, files);
    const pages = files.map(({ name }) => name).filter((name) => !name.startsWith('api/'));
    console.log(`${folder}: ${pages.join(', ')}${api.length > 0 ? `, api (${api.length} files)` : ''}`);
    for (const page of leftOut) console.log(`${page.name} was left out: ${page.package} is not installed.`);
    return 0;
  } catch (error) {
    const named = error instanceof Error && error.name === 'NotebookError';
    console.error(named ? error.message : error);
    console.error('Nothing was written: the site is as it was.');
    return 1;
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  process.exitCode = await renderSite(process.argv[2] === undefined ? undefined : resolve(process.argv[2]));
}
