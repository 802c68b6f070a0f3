// `npm run reports [-- FOLDER]`: compiles library and notebooks, then renders reports/*.md on data-demo/ to site/.

import { resolve } from 'node:path';
import { compileAll } from './prepare.mjs';
import { renderSite } from './render.mjs';

const folder = process.argv[2] === undefined ? undefined : resolve(process.argv[2]);
process.exitCode = (await compileAll()) || (await renderSite(folder));
