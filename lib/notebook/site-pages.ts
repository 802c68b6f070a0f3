/** Compiled notebooks become the pages of a site: each run on the same season, the start page last. */

import type { Language } from '../words/language.ts';
import { englishFrame, type PageWords, renderPage } from './page.ts';
import type { CompiledNotebook, Given } from './run.ts';
import { runNotebook } from './run.ts';
import type { SavedFile } from './saved-file.ts';
import type { SiteFile } from './site.ts';
import type { SiteEntry } from './site-contents.ts';
import {
  type LanguagePages,
  listedIn,
  type PlannedPage,
  pagesByLanguage,
  twinsOf,
} from './site-languages.ts';

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
  /** Frames of pages in the site's languages, that of its pages first; English where left out. */
  readonly words?: readonly PageWords[];
}

/**
 * The files of a site: one page a notebook and language, the files that notebooks save, the downloads, the other pages.
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
  const summary = given.analysis.provenance.coded?.level === 'summary';
  const notebooks = inOrder(parts.notebooks).filter((notebook) => !summary || notebook.summary);
  const all = pagesByLanguage(notebooks, parts.words ?? [englishFrame], englishFrame);
  const { otherPages, downloads } = parts;
  const made: MadePages = { starts: [], pages: [], saved: [] };
  for (const one of all) await makePages(one, { parts, given, document, all }, made);
  return [
    ...made.starts,
    ...made.pages,
    ...[...otherPages, ...downloads, ...made.saved].map(({ name, text }) => ({ name, text })),
  ];
}

/** What the pages of a language are made from. */
interface Making {
  readonly parts: SiteParts;
  readonly given: Given;
  readonly document: Document;
  readonly all: readonly LanguagePages[];
}

interface MadePages {
  readonly starts: SiteFile[];
  readonly pages: SiteFile[];
  readonly saved: SavedFile[];
}

/** Adds the pages and saved files of one language; its start page last, when the sizes of the others are known. */
async function makePages(one: LanguagePages, making: Making, made: MadePages): Promise<void> {
  const { parts, given, document, all } = making;
  const { downloads, otherPages, invented } = parts;
  const listed = [...listedIn(one, all), ...otherPages.map((page) => otherEntry(page, one.language))];
  const render = async ({ notebook, address, words, ...page }: PlannedPage, more: Partial<Given> = {}) => {
    const filled = await runNotebook(notebook, { ...given, ...more }, one.suffix);
    const twins = twinsOf({ notebook, address, words, ...page }, all);
    return { filled, text: renderPage(filled, document, { address, pages: listed, twins }, words) };
  };
  const saved: SavedFile[] = [];
  for (const page of one.pages.filter(({ notebook }) => notebook.name !== START)) {
    const { filled, text } = await render(page);
    saved.push(...filled.savedFiles);
    made.pages.push({ name: page.address, text });
  }
  const start = one.pages.find(({ notebook }) => notebook.name === START);
  if (start !== undefined) {
    const others = listed.filter(({ name }) => name !== start.address);
    const pages = others.map((entry) => sized(entry, [...made.pages, ...otherPages]));
    const site = { pages, downloads: [...downloads, ...saved].map(downloadEntry), invented };
    const { filled, text } = await render(start, { site });
    saved.push(...filled.savedFiles);
    made.starts.push({ name: start.address, text });
  }
  made.saved.push(...saved);
}

/** A page that no notebook makes, which is in English, as readers of a language are shown it. */
function otherEntry(
  { name, title, description }: SiteParts['otherPages'][number],
  reading: Language,
): SiteEntry {
  return { name, title, description, bytes: 0, ...(reading === 'en' ? {} : { language: 'en' }) };
}

function sized(entry: SiteEntry, files: readonly SiteFile[]): SiteEntry {
  return { ...entry, bytes: byteLength(files.find(({ name }) => name === entry.name)?.text ?? '') };
}

/** By the order that their front lines give; those without one after the others, by name. */
function inOrder(notebooks: readonly CompiledNotebook[]): CompiledNotebook[] {
  const place = ({ name, order }: CompiledNotebook): number =>
    name === START ? -1 : (order ?? Number.MAX_SAFE_INTEGER);
  return [...notebooks].sort((a, b) => place(a) - place(b) || (a.name < b.name ? -1 : 1));
}

function downloadEntry({ name, label, text }: SavedFile): SiteEntry {
  return { name, title: label, description: '', bytes: byteLength(text) };
}

function byteLength(text: string): number {
  return new TextEncoder().encode(text).length;
}
