/** Compiled notebooks become the pages of a site: each run on the same season, the start page last. */

import type { Analysis } from '../analyse.ts';
import { englishFrame, type PageWords, renderPage } from './page.ts';
import type { CompiledNotebook, FilledNotebook, Given } from './run.ts';
import { runNotebook } from './run.ts';
import type { SavedFile } from './saved-file.ts';
import type { SiteFile } from './site.ts';
import type { SiteEntry, SitePlace } from './site-contents.ts';
import {
  type LanguagePages,
  listedIn,
  type PlannedPage,
  pagesByLanguage,
  twinsOf,
} from './site-languages.ts';

/** The notebook that lists the others. */
const START = 'index';

/** A page that no notebook makes. */
export interface OtherPage extends Omit<SiteEntry, 'bytes'> {
  /** Its place in the list of pages, as a notebook's. */
  readonly order: number | null;
  /** The whole page; where it lists the pages of its site, made from that list. */
  readonly text: string | ((pages: readonly SiteEntry[]) => string);
}

/** Pages by their notebook and the place they stand in. */
export type KeptPages = Map<CompiledNotebook, Map<string, KeptPage>>;

interface KeptPage {
  readonly analysis: Analysis;
  readonly page: MadePage;
}

interface MadePage {
  readonly filled: FilledNotebook;
  readonly text: string;
}

/** What a site is made of besides its season. */
export interface SiteParts {
  readonly notebooks: readonly CompiledNotebook[];
  /** Files to download that no notebook makes, such as the results as JSON. */
  readonly downloads: readonly SavedFile[];
  /** Pages that no notebook makes. */
  readonly otherPages: readonly OtherPage[];
  /** Whether the season is the invented one of the demo. */
  readonly invented: boolean;
  /** Frames of pages in the site's languages, that of its pages first; English where left out. */
  readonly words?: readonly PageWords[];
  /** Pages made before, taken again while notebook, analysis and place are the same; added to. */
  readonly kept?: KeptPages;
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
  const listed = listedWith(all[0]!, all, parts.otherPages);
  const others = parts.otherPages.map(({ name, text }) => ({
    name,
    text: typeof text === 'string' ? text : text(listed),
  }));
  const made: MadePages = { starts: [], pages: [], saved: [] };
  for (const one of all) await makePages(one, { parts, given, document, all, others }, made);
  return [
    ...made.starts,
    ...made.pages,
    ...[...others, ...parts.downloads, ...made.saved].map(({ name, text }) => ({ name, text })),
  ];
}

/** What the pages of a language are made from. */
interface Making {
  readonly parts: SiteParts;
  readonly given: Given;
  readonly document: Document;
  readonly all: readonly LanguagePages[];
  /** The finished pages that no notebook makes. */
  readonly others: readonly SiteFile[];
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
  const listed = listedWith(one, all, otherPages);
  const render = async ({ notebook, address, words, ...page }: PlannedPage, more: Partial<Given> = {}) => {
    const place = { address, pages: listed, twins: twinsOf({ notebook, address, words, ...page }, all) };
    const make = async () => {
      const filled = await runNotebook(notebook, { ...given, ...more }, one.suffix);
      return { filled, text: renderPage(filled, document, place, words) };
    };
    return more.site === undefined ? keptOr(make, parts, { notebook, place, given }) : make();
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
    const pages = others.map((entry) => sized(entry, [...made.pages, ...making.others]));
    const site = { pages, downloads: [...downloads, ...saved].map(downloadEntry), invented };
    const { filled, text } = await render(start, { site });
    saved.push(...filled.savedFiles);
    made.starts.push({ name: start.address, text });
  }
  made.saved.push(...saved);
}

/** All pages that readers of a language are shown; those that no notebook makes are in English. */
function listedWith(
  one: LanguagePages,
  all: readonly LanguagePages[],
  otherPages: readonly OtherPage[],
): SiteEntry[] {
  const language = one.language === 'en' ? {} : { language: 'en' as const };
  const own = listedIn(one, all).map((entry, at) => ({ entry, ...all[0]!.pages[at]!.notebook }));
  const others = otherPages.map(({ name, order, title, description }) => ({
    entry: { name, title, description, bytes: 0, ...language },
    ...{ name, order },
  }));
  return inOrder([...own, ...others]).map(({ entry }) => entry);
}

/** A page that was made before from the same, else a new one, which is kept. The start page is always new. */
async function keptOr(
  make: () => Promise<MadePage>,
  { kept }: SiteParts,
  {
    notebook,
    place,
    given,
  }: { readonly notebook: CompiledNotebook; readonly place: SitePlace; readonly given: Given },
): Promise<MadePage> {
  const key = JSON.stringify(place);
  const before = kept?.get(notebook)?.get(key);
  if (before?.analysis === given.analysis) return before.page;
  const page = await make();
  const pages = kept?.get(notebook) ?? new Map<string, KeptPage>();
  kept?.set(notebook, pages.set(key, { analysis: given.analysis, page }));
  return page;
}

function sized(entry: SiteEntry, files: readonly SiteFile[]): SiteEntry {
  return { ...entry, bytes: byteLength(files.find(({ name }) => name === entry.name)?.text ?? '') };
}
/** By the order that their front lines give; those without one after the others, by name. */
function inOrder<T extends { readonly name: string; readonly order: number | null }>(
  pages: readonly T[],
): T[] {
  const place = ({ name, order }: T): number => (name === START ? -1 : (order ?? Number.MAX_SAFE_INTEGER));
  return [...pages].sort((a, b) => place(a) - place(b) || (a.name < b.name ? -1 : 1));
}

function downloadEntry({ name, label, text }: SavedFile): SiteEntry {
  return { name, title: label, description: '', bytes: byteLength(text) };
}

function byteLength(text: string): number {
  return new TextEncoder().encode(text).length;
}
