// `npm run reports [-- FOLDER]`: compiles library and notebooks, then renders reports/*.md on data-demo/ and the
// library's own pages to site/.

import { resolve } from 'node:path';
import { apiPages } from './api-pages.mjs';
import { compileAll } from './prepare.mjs';
import { renderSite } from './render.mjs';

const folder = process.argv[2] === undefined ? undefined : resolve(process.argv[2]);
let status = await compileAll();
if (status === 0) {
  const api = await apiPages();
  status = api === null ? 1 : await renderSite(folder, api);
}
process.exitCode = status;
