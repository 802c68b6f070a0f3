/** Compiled notebooks become the pages of a site: each run on the same season, the start page last. */

import { renderPage } from './page.ts';
import type { CompiledNotebook, FilledNotebook, Given } from './run.ts';
import { runNotebook } from './run.ts';
import type { SavedFile } from './saved-file.ts';
import type { SiteFile } from './site.ts';
import type { SiteEntry } from './site-contents.ts';

/** The notebook that lists the others. */
const START = 'index';

/** What a site is made of besides its season. */
export interface SiteParts {
  readonly notebooks: readonly CompiledNotebook[];
  /** Files to download that no notebook makes, such as the results as JSON. */
  readonly downloads: readonly SavedFile[];
  /** Finished pages that no notebook makes, with the text of each. */
  readonly otherPages: readonly (Omit<SiteEntry, 'bytes'> & { readonly text: string })[];
  /** Whether the season is the invented one of the demo. */
  readonly invented: boolean;
}

/**
 * The files of a site: one page a notebook, the files that notebooks save, the downloads, the other pages.
 *
 * All names are relative, so that the site works from any folder and from a disk.
 *
 * A summary for sharing has only the notebooks that name no single plant.
 *
 * @param given the season and its analysis
 * @param document a document to draw charts in
 * @throws NotebookError naming the notebook's file, line and column where a cell fails
 */
export async function sitePages(parts: SiteParts, given: Given, document: Document): Promise<SiteFile[]> {
  const { downloads, otherPages, invented } = parts;
  const summary = given.analysis.provenance.coded?.level === 'summary';
  const notebooks = inOrder(parts.notebooks).filter((notebook) => !summary || notebook.summary);
  const start = notebooks.find(({ name }) => name === START);
  const listed = [...notebooks.map(entryOf), ...otherPages.map((page) => ({ ...page, bytes: 0 }))];
  const made: { readonly entry: SiteEntry; readonly text: string }[] = [];
  const saved: SavedFile[] = [];
  for (const notebook of notebooks.filter((each) => each !== start)) {
    const filled = await runNotebook(notebook, given);
    saved.push(...filled.savedFiles);
    made.push(sized(entryOf(notebook), renderPage(filled, document, listed)));
  }
  made.push(...otherPages.map((page) => sized({ ...page, bytes: 0 }, page.text)));
  const files = [...downloads, ...saved];
  const site = { pages: made.map(({ entry }) => entry), downloads: files.map(downloadEntry), invented };
  const first = start === undefined ? null : await runNotebook(start, { ...given, site });
  return [
    ...(first === null ? [] : pageFiles(first, renderPage(first, document, listed))),
    ...made.map(({ entry, text }) => ({ name: entry.name, text })),
    ...files.map(({ name, text }) => ({ name, text })),
  ];
}

/** By the order that their front lines give; those without one after the others, by name. */
function inOrder(notebooks: readonly CompiledNotebook[]): CompiledNotebook[] {
  const place = ({ name, order }: CompiledNotebook): number =>
    name === START ? -1 : (order ?? Number.MAX_SAFE_INTEGER);
  return [...notebooks].sort((a, b) => place(a) - place(b) || (a.name < b.name ? -1 : 1));
}

function entryOf({ name, title, description }: CompiledNotebook): SiteEntry {
  return { name: `${name}.html`, title, description, bytes: 0 };
}

function sized(entry: SiteEntry, text: string): { entry: SiteEntry; text: string } {
  const { name, title, description } = entry;
  return { entry: { name, title, description, bytes: byteLength(text) }, text };
}

function downloadEntry({ name, label, text }: SavedFile): SiteEntry {
  return { name, title: label, description: '', bytes: byteLength(text) };
}

function byteLength(text: string): number {
  return new TextEncoder().encode(text).length;
}

function pageFiles({ name, savedFiles }: FilledNotebook, text: string): SiteFile[] {
  return [
    { name: `${name}.html`, text },
    ...savedFiles.map((file) => ({ name: file.name, text: file.text })),
  ];
}
