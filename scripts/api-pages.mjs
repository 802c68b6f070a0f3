// The library's own pages, a page a public name, from the doc comments: files under api/ for the site.

import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = dirname(dirname(fileURLToPath(import.meta.url)));

/** How typedoc is asked: nothing fetched, no dates, no links to outside, a warning is an error. */
const options = {
  entryPoints: [join(root, 'lib', 'index.ts')],
  tsconfig: join(root, 'tsconfig.json'),
  name: 'fruitodds',
  readme: 'none',
  disableSources: true,
  hideGenerator: true,
  skipErrorChecking: true,
  blockTags: ['@param', '@returns', '@throws', '@source', '@example'],
  validation: { notExported: false, notDocumented: false, invalidLink: true },
  treatWarningsAsErrors: true,
  logLevel: 'Warn',
};

/** Every file of a folder, by its name within it. */
function filesOf(folder) {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => statSync(join(folder, name)).isFile())
    .map((name) => ({
      name: `api/${name.split(sep).join('/')}`,
      text: readFileSync(join(folder, name), 'utf8'),
    }));
}

/** Names of the exports that have no doc comment; their properties may go without. */
function uncommented(project) {
  const hasComment = (reflection) =>
    reflection.hasComment() || (reflection.signatures ?? []).some(hasComment);
  return (project.children ?? []).filter((child) => !hasComment(child)).map(({ name }) => name);
}

/** The pages; null where typedoc has something to complain about, which it has then printed. */
export async function apiPages() {
  const { Application } = await import('typedoc');
  const folder = mkdtempSync(join(tmpdir(), 'fruitodds-api-'));
  try {
    const app = await Application.bootstrap(options);
    const project = await app.convert();
    if (project === undefined) return null;
    app.validate(project);
    for (const name of uncommented(project))
      app.logger.error(`${name}: an export must have a doc comment, got none`);
    if (app.logger.hasErrors() || app.logger.hasWarnings()) return null;
    await app.generateDocs(project, folder);
    return app.logger.hasErrors() ? null : filesOf(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
