/** Compiled notebooks become the pages of a site: each run on the same season, the start page last. */

import type { Analysis } from '../analyse.ts';
import type { Language } from '../words/language.ts';
import { englishFrame, type PageWords, renderPage } from './page.ts';
import type { CompiledNotebook, FilledNotebook, Given } from './run.ts';
import { runNotebook } from './run.ts';
import type { SavedFile } from './saved-file.ts';
import type { SiteFile } from './site.ts';
import type { SiteEntry, SitePlace } from './site-contents.ts';
import {
  type LanguagePages,
  listedIn,
  type PageVersion,
  type PlannedPage,
  pagesByLanguage,
  twinsOf,
} from './site-languages.ts';

/** The notebook that lists the others. */
const START = 'index';

/** A page that no notebook makes, in one language; names without ending are the same in all, as those of notebooks. */
export interface OtherPage extends PageVersion {
  /** Its place in the list of pages, as a notebook's. */
  readonly order: number | null;
  /** The whole page; where it leads to others, made from its place among them. */
  readonly text: string | ((place: SitePlace) => string);
}

type Version = CompiledNotebook | OtherPage;

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
 * A summary for sharing has only the notebooks that name no single plant, a season without a plan none that needs one.
 *
 * @param given the season and its analysis
 * @param document a document to draw charts in
 * @throws NotebookError naming the notebook's file, line and column where a cell fails
 */
export async function sitePages(parts: SiteParts, given: Given, document: Document): Promise<SiteFile[]> {
  const summary = given.analysis.provenance.coded?.level === 'summary';
  const planned = (given.analysis.plan?.frontier.length ?? 0) > 0;
  const notebooks = parts.notebooks.filter(
    (notebook) => (!summary || notebook.summary) && (planned || !notebook.plan),
  );
  const versions = inOrder<Version>([...notebooks, ...parts.otherPages]);
  const all = pagesByLanguage(versions, parts.words ?? [englishFrame], englishFrame);
  const made: MadePages = { starts: [], pages: [], saved: [] };
  for (const one of all) await makePages(one, { parts, given, document, all }, made);
  return [
    ...made.starts,
    ...made.pages,
    ...[...parts.downloads, ...made.saved].map(({ name, text }) => ({ name, text })),
  ];
}

/** What the pages of a language are made from. */
interface Making {
  readonly parts: SiteParts;
  readonly given: Given;
  readonly document: Document;
  readonly all: readonly LanguagePages<Version>[];
}

interface MadePages {
  readonly starts: SiteFile[];
  readonly pages: SiteFile[];
  readonly saved: SavedFile[];
}

/** Adds the pages and saved files of one language; its start page last, when the sizes of the others are known. */
async function makePages(one: LanguagePages<Version>, making: Making, made: MadePages): Promise<void> {
  const { parts, all } = making;
  const listed = listedIn(one, all);
  const ownAddress = new Map(all[0]!.pages.map(({ address }, at) => [address, listed[at]!.name]));
  const render = async (page: PlannedPage<Version>, more: Partial<Given> = {}): Promise<string> => {
    const { version, address, words } = page;
    const place = { address, pages: listed, twins: twinsOf(page, all) };
    if ('text' in version) return typeof version.text === 'string' ? version.text : version.text(place);
    const make = async () => {
      const ran = await runNotebook(version, { ...making.given, ...more }, one.suffix);
      const filled = withOwnLinks(ran, ownAddress);
      return { filled, text: renderPage(filled, making.document, place, words) };
    };
    const isStart = more.site !== undefined;
    const { filled, text } = await (isStart ? make() : keptOr(make, parts, { version, place, ...making }));
    made.saved.push(...filled.savedFiles);
    return text;
  };
  const before = made.saved.length;
  for (const page of one.pages.filter(({ version }) => version.name !== START)) {
    made.pages.push({ name: page.address, text: await render(page) });
  }
  const start = one.pages.find(({ version }) => version.name === START);
  if (start === undefined) return;
  const others = listed.filter(({ name }) => name !== start.address);
  const pages = others.map((entry) => sized(entry, made.pages));
  const downloads = [...parts.downloads, ...made.saved.slice(before)].map((file) =>
    downloadEntry(file, one.language),
  );
  const site = { pages, downloads, invented: parts.invented };
  made.starts.push({ name: start.address, text: await render(start, { site }) });
}

/** A link in prose to a page of the site leads to that page in the reader's language. */
function withOwnLinks(notebook: FilledNotebook, ownAddress: ReadonlyMap<string, string>): FilledNotebook {
  const led = (markup: string): string =>
    markup.replaceAll(/(?<=<a href=")[^"#]+/g, (address) => ownAddress.get(address) ?? address);
  const sections = notebook.sections.map(({ pieces, ...section }) => ({
    ...section,
    pieces: pieces.map((piece) => (typeof piece === 'string' ? led(piece) : piece)),
  }));
  return { ...notebook, sections };
}

/** A page that was made before from the same, else a new one, which is kept. The start page is always new. */
async function keptOr(
  make: () => Promise<MadePage>,
  { kept }: SiteParts,
  {
    version,
    place,
    given,
  }: { readonly version: CompiledNotebook; readonly place: SitePlace; readonly given: Given },
): Promise<MadePage> {
  const key = JSON.stringify(place);
  const before = kept?.get(version)?.get(key);
  if (before?.analysis === given.analysis) return before.page;
  const page = await make();
  const pages = kept?.get(version) ?? new Map<string, KeptPage>();
  kept?.set(version, pages.set(key, { analysis: given.analysis, page }));
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

function downloadEntry({ name, label, labels, text }: SavedFile, language: Language): SiteEntry {
  return { name, title: labels?.get(language) ?? label, description: '', bytes: byteLength(text) };
}

function byteLength(text: string): number {
  return new TextEncoder().encode(text).length;
}
