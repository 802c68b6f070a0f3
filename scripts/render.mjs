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
  return [{ name: 'api/index', title: 'The library', description, order: 95, text: start.text }];
}

/**
 * How compiled notebooks are loaded when they may have changed since: under another address each time. One that is as it
 * was stays the same module.
 */
function freshLoader() {
  const known = new Map();
  return async (address) => {
    const path = join(root, 'dist', 'reports', address.slice('fruitodds/reports/'.length));
    const code = readFileSync(path, 'utf8');
    const before = known.get(address);
    if (before?.code === code) return before.module;
    const version = (before?.version ?? -1) + 1;
    const module = await import(
      version === 0 ? pathToFileURL(path).href : `${pathToFileURL(path).href}?${version}`
    );
    known.set(address, { code, module, version });
    return module;
  };
}

/** Fits the season once for nothing: code that has run is compiled by the engine, and the next fits take half the time. */
export async function warmUp() {
  const { analyse, readSeason } = await fromDist('lib', 'index.js');
  analyse(readSeason(demoFiles()));
}

/**
 * What makes the files of the demo season's site, as `fruitodds site` makes them of a grower's, with the library's own
 * pages. It may be asked again and again: fits are kept while the data are the same, pages while their notebook is too.
 * English alone where no languages are named: a watch has one second.
 */
export async function siteMaker(api = [], languages = ['en']) {
  const { analyse, readSeason } = await fromDist('lib', 'index.js');
  const { cleanFiles, siteDownloads } = await fromDist('lib', 'command', 'site-downloads.js');
  const { renderSite: render } = await fromDist('lib', 'notebook', 'render-site.js');
  const { scriptedPages } = await fromDist('lib', 'browser', 'scripted-pages.js');
  const { wordsIn } = await fromDist('lib', 'words', 'languages.js');
  const [words, ...others] = await Promise.all(languages.map(wordsIn));
  const load = freshLoader();
  const kept = new Map();
  let counted = null;
  const count = () => {
    const files = demoFiles();
    const same = counted?.files.every(({ bytes }, at) => Buffer.compare(bytes, files[at].bytes) === 0);
    if (same) return counted;
    const season = readSeason(files);
    counted = { files, season, analysis: analyse(season) };
    return counted;
  };
  return async () => {
    const { season, analysis } = count();
    const scripted = await scriptedPages(season, languages, load);
    const otherPages = [...scripted.pages, ...libraryEntry(api)];
    const downloads = siteDownloads(analysis, cleanFiles(season, words), words, others);
    const site = await render(
      season,
      analysis,
      { downloads, otherPages, invented: true, kept },
      languages,
      load,
    );
    const listed = new Set(otherPages.map(({ name }) => `${name}.html`));
    return {
      season,
      files: [...site.files, ...api.filter(({ name }) => !listed.has(name))],
      leftOut: [...site.leftOut, ...scripted.leftOut],
    };
  };
}

/** Puts files in place: those that differ from the last ones where the names are the same, else the folder as a whole. */
export async function siteWriter(folder) {
  const { writeSite } = await fromDist('lib', 'notebook', 'site.js');
  const { disk, replaceFile } = await fromDist('lib', 'notebook', 'output.js');
  let last = null;
  return (files) => {
    const before = new Map((last ?? []).map(({ name, text }) => [name, text]));
    const changed = files.filter(({ name, text }) => before.get(name) !== text);
    const sameNames = files.length === before.size && files.every(({ name }) => before.has(name));
    if (!sameNames) writeSite(disk, folder, files);
    else for (const { name, text } of changed) replaceFile(disk, join(folder, name), text);
    last = files;
    return changed.map(({ name }) => name);
  };
}

/** What is wrong, as a person needs it: a fault of a notebook by its places, anything else as it comes. */
export function faultText(error) {
  const named = error instanceof Error && error.name === 'NotebookError';
  return named ? error.message : error;
}

/** Renders everything, then puts it in place at once; the exit status. What fails leaves the old site as it was. */
export async function renderSite(folder = join(root, 'site'), api = []) {
  try {
    const { LANGUAGES } = await fromDist('lib', 'words', 'languages.js');
    const { files, leftOut } = await (await siteMaker(api, LANGUAGES))();
    (await siteWriter(folder))(files);
    const pages = files.map(({ name }) => name).filter((name) => !name.startsWith('api/'));
    console.log(`${folder}: ${pages.join(', ')}${api.length > 0 ? `, api (${api.length} files)` : ''}`);
    for (const page of leftOut) console.log(`${page.name} was left out: ${page.package} is not installed.`);
    return 0;
  } catch (error) {
    console.error(faultText(error));
    console.error('Nothing was written: the site is as it was.');
    return 1;
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  process.exitCode = await renderSite(process.argv[2] === undefined ? undefined : resolve(process.argv[2]));
}
