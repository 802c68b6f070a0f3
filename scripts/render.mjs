// Renders the compiled notebooks of dist/reports on the demo season to a folder, site/ if none is named.

import { existsSync, readFileSync } from 'node:fs';
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
  return [{ ...start, title: 'The library', description }];
}

/** The files of the demo season's site, as `fruitodds site` makes them of a grower's, and the library's own pages. */
async function demoSite(api) {
  const { analyse, readSeason } = await fromDist('lib', 'index.js');
  const { cleanFiles, siteDownloads } = await fromDist('lib', 'command', 'site-downloads.js');
  const { renderSite: render } = await fromDist('lib', 'notebook', 'render-site.js');
  const season = readSeason(demoFiles());
  const analysis = analyse(season);
  const otherPages = [...(await explore(season)), ...(await ownSeason()), ...libraryEntry(api)];
  const downloads = siteDownloads(analysis, cleanFiles(season));
  const site = await render(season, analysis, { downloads, otherPages, invented: true });
  const listed = new Set(otherPages.map(({ name }) => name));
  return { ...site, files: [...site.files, ...api.filter(({ name }) => !listed.has(name))] };
}

/**
 * The page on which a grower tries a file of their own, where the notebook that it shows was compiled; it is built here,
 * since esbuild is there in development only.
 */
async function ownSeason() {
  if (!existsSync(join(root, 'dist', 'reports', 'season-review.js'))) return [];
  const { ownSeasonPage } = await fromDist('lib', 'browser', 'build', 'own-season-page.js');
  return [ownSeasonPage(join(root, 'dist')).page];
}

/** The page on which the season can be explored; left out, and said so, where the packages of charts are not installed. */
async function explore(season) {
  const { explorePage } = await fromDist('lib', 'browser', 'build', 'explore-page.js');
  try {
    const { compile } = await import('vega-lite');
    return [explorePage(join(root, 'dist'), (specification) => compile(specification).spec, season)];
  } catch (error) {
    if (error.code !== 'ERR_MODULE_NOT_FOUND') throw error;
    console.log('explore was left out: vega-lite is not installed.');
    return [];
  }
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
