// Renders the compiled notebooks of dist/reports on the demo season to a folder, site/ if none is named.

import { readdirSync, readFileSync } from 'node:fs';
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

/** One page a notebook, and what it saves beside its page. */
async function renderNotebooks() {
  const { analyse, readSeason } = await fromDist('lib', 'index.js');
  const { openPaper } = await fromDist('lib', 'charts', 'paper.js');
  const { runNotebook } = await fromDist('lib', 'notebook', 'run.js');
  const { renderPage } = await fromDist('lib', 'notebook', 'page.js');
  const season = readSeason(demoFiles());
  const given = { season, analysis: analyse(season) };
  const paper = await openPaper();
  const files = [];
  for (const name of readdirSync(join(root, 'dist', 'reports')).sort()) {
    const { notebook } = await fromDist('reports', name);
    const filled = await runNotebook(notebook, given);
    files.push({ name: `${notebook.name}.html`, text: renderPage(filled, paper) });
    files.push(...filled.savedFiles.map((file) => ({ name: file.name, text: file.text })));
  }
  return files;
}

/** Renders everything, then puts it in place at once; the exit status. What fails leaves the old site as it was. */
export async function renderSite(folder = join(root, 'site')) {
  try {
    const { writeSite } = await fromDist('lib', 'notebook', 'site.js');
    const { disk } = await fromDist('lib', 'notebook', 'output.js');
    const files = await renderNotebooks();
    writeSite(disk, folder, files);
    console.log(`${folder}: ${files.map(({ name }) => name).join(', ')}`);
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
