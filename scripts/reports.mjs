// Renders the notebooks of reports/ on the demo season to site/: `npm run reports [-- FOLDER]`.

import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { compileLibrary, compileNotebooks, root } from './prepare.mjs';

const fromDist = (...names) => import(pathToFileURL(join(root, 'dist', ...names)).href);

/** The demo season under the names that its pages show, whatever folder the project stands in. */
function demoFiles() {
  return ['crosses.csv', 'vials.csv', 'flowers.csv'].map((name) => ({
    name,
    bytes: new Uint8Array(readFileSync(join(root, 'data-demo', name))),
  }));
}

async function renderSite(folder) {
  if (!compileLibrary())
    throw new Error('The library has faults of type, listed above: nothing was rendered.');
  const names = await compileNotebooks({ nodeOnly: true });
  const { analyse, readSeason } = await fromDist('lib', 'index.js');
  const { openPaper } = await fromDist('lib', 'charts', 'paper.js');
  const { runNotebook } = await fromDist('lib', 'notebook', 'run.js');
  const { renderPage } = await fromDist('lib', 'notebook', 'page.js');
  const { writeSite } = await fromDist('lib', 'notebook', 'site.js');
  const { disk } = await fromDist('lib', 'notebook', 'output.js');
  const season = readSeason(demoFiles());
  const analysis = analyse(season);
  const paper = await openPaper();
  const files = [];
  for (const name of names) {
    const { notebook } = await fromDist('reports', `${name}.js`);
    const filled = await runNotebook(notebook, { season, analysis });
    files.push({ name: `${name}.html`, text: renderPage(filled, paper) });
    files.push(...filled.savedFiles.map((file) => ({ name: file.name, text: file.text })));
  }
  writeSite(disk, folder, files);
  return files.map(({ name }) => name);
}

try {
  const folder = resolve(process.argv[2] ?? join(root, 'site'));
  const names = await renderSite(folder);
  console.log(`${names.join(', ')} → ${folder}`);
} catch (error) {
  console.error(
    error instanceof Error ? (error.name === 'NotebookError' ? error.message : error.stack) : error,
  );
  console.error('The site stays as it was.');
  process.exitCode = 1;
}
