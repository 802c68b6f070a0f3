// The library's own pages from its doc comments, a page a topic: files under api/ for the site.

import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { byTopic, nameMarkup } from './api-text.mjs';

const root = dirname(dirname(fileURLToPath(import.meta.url)));

/** How typedoc is asked to read the sources: what stands in them and no more; a warning is an error. */
const options = {
  entryPoints: [join(root, 'lib', 'index.ts')],
  tsconfig: join(root, 'tsconfig.json'),
  name: 'fruitodds',
  readme: 'none',
  basePath: join(root, 'lib'),
  disableGit: true,
  sourceLinkTemplate: '{path}',
  skipErrorChecking: true,
  blockTags: ['@param', '@returns', '@throws', '@source', '@example'],
  validation: { notExported: false, notDocumented: false, invalidLink: true },
  treatWarningsAsErrors: true,
  logLevel: 'Warn',
};

/** Names of the exports that have no doc comment; their properties may go without. */
function uncommented(project) {
  const hasComment = (reflection) =>
    reflection.hasComment() || (reflection.signatures ?? []).some(hasComment);
  return (project.children ?? []).filter((child) => !hasComment(child)).map(({ name }) => name);
}

const INTRODUCTION = `<p>Every public name of the package <code>fruitodds</code>, by topic: how it is written, its method and source, and an
example. What each example states is checked by the project's tests.</p>
`;

const section = (heading, id, markup) => ({ heading, id, pieces: [markup], working: [] });

/** The pages of all public names in the frame of the site's own: the same style and policy, no script. */
function pagesOf(topics, renderPage) {
  const entries = topics.map(({ page, title }) => ({ name: `${page}.html`, title: `The library: ${title}` }));
  const pages = [
    { name: '../index.html', title: 'All pages of the site' },
    { name: 'index.html', title: 'The library' },
    ...entries,
  ];
  const placesFrom = (here) =>
    new Map(
      topics.flatMap(({ page, names }) =>
        names.map(({ name }) => [name, `${page === here ? '' : `${page}.html`}#${name}`]),
      ),
    );
  const page = (address, title, description, sections) => ({
    name: `api/${address}`,
    text: renderPage({ name: address, title, description, sections, savedFiles: [] }, null, {
      address,
      pages,
      twins: [],
    }),
  });
  const listed = ({ page: file, title, names }) => {
    const links = names.map(({ name }) => `<a href="${file}.html#${name}"><code>${name}</code></a>`);
    return section(title, file, `<p>${links.join(', ')}</p>\n`);
  };
  const start = [section(null, '', INTRODUCTION), ...topics.map(listed)];
  return [
    page('index.html', 'The library', 'For those who write programs: every public name, by topic.', start),
    ...topics.map(({ page: file, names }, index) => {
      const places = placesFrom(file);
      const sections = names.map((child) => section(child.name, child.name, nameMarkup(child, places)));
      return page(
        `${file}.html`,
        entries[index].title,
        `${names.length} public names, with sources and examples.`,
        sections,
      );
    }),
  ];
}

/** The pages; null where typedoc has something to complain about, which it has then printed. */
export async function apiPages() {
  const { Application } = await import('typedoc');
  const app = await Application.bootstrap(options);
  const project = await app.convert();
  if (project === undefined) return null;
  app.validate(project);
  for (const name of uncommented(project))
    app.logger.error(`${name}: an export must have a doc comment, got none`);
  if (app.logger.hasErrors() || app.logger.hasWarnings()) return null;
  const { renderPage } = await import(pathToFileURL(join(root, 'dist', 'lib', 'notebook', 'page.js')).href);
  return pagesOf(byTopic(project), renderPage);
}
