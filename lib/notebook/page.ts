/** A notebook that has run becomes one HTML file: no script, no font, no raster image, no request. */

import type { Figure } from '../charts/figure.ts';
import { sha256 } from '../season/sha256.ts';
import { languageWords } from '../words/language.ts';
import type { Words } from '../words/languages.ts';
import { pageWords } from '../words/page.ts';
import type { Html } from './html.ts';
import { escapeHtml, html } from './html.ts';
import type { FilledNotebook } from './run.ts';
import type { SiteEntry, SitePlace } from './site-contents.ts';
import { pageStyle } from './style.ts';
import { dataTable } from './table.ts';

/** What a page says around its notebook. */
export type PageWords = Pick<Words, 'pageWords' | 'languageWords'>;

/** The frame of a page in English. */
export const englishFrame: PageWords = { pageWords, languageWords };

/** A contents list is shown from this many headings on. */
const headingsWorthAList = 3;

/**
 * The HTML page of a notebook that has run.
 *
 * Same notebook, same bytes: ids are counted, nothing is drawn from the clock, the place or the machine.
 *
 * @param notebook as `runNotebook` gives it
 * @param document a document to draw charts in: the page's own in a browser, `openPaper()` in Node
 * @param place in the site that it belongs to; null for a report, which is a file of its own
 * @param words of the notebook's language; English where left out
 * @throws Error where a drawing or a cell's `html` holds what the page's policy would block
 */
export function renderPage(
  notebook: FilledNotebook,
  document: Document,
  place: SitePlace | null = null,
  words: PageWords = englishFrame,
): string {
  return framedPage(notebook, drawnParts(notebook, document, words), place, words);
}

/** The parts of a page that are its own: a list of its headings, and its sections from top to bottom. */
export interface PageParts {
  /** Empty where there are few headings. */
  readonly contents: string;
  readonly sections: readonly string[];
}

/**
 * The parts of a page, for a browser that shows one after another: `framedPage` puts its frame around them.
 *
 * @param notebook, document, words as `renderPage` takes them
 * @throws Error where they hold what the page's policy would block
 */
export function drawnParts(
  notebook: FilledNotebook,
  document: Document,
  words: PageWords = englishFrame,
): PageParts {
  let figures = 0;
  const drawn = (figure: Figure): string => {
    figures += 1;
    return figureMarkup(figure, document, `figure-${figures}`, words);
  };
  const sections = notebook.sections.map(({ heading, id, pieces, working }) => {
    const body = pieces.map((piece) => (typeof piece === 'string' ? piece : drawn(piece))).join('');
    const whole = working.length > 0 ? body + workingMarkup(working, words).markup : body;
    if (heading === null) return whole;
    return `<section aria-labelledby="${id}">\n<h2 id="${id}">${escapeHtml(heading)}</h2>\n${whole}</section>\n`;
  });
  for (const section of sections) refuseBlocked(section);
  return { contents: contentsMarkup(notebook, words), sections };
}

/**
 * A whole page around its drawn sections.
 *
 * @param notebook as `runNotebook` gives it
 * @param parts what `drawnParts` gave
 * @param place in the site that it belongs to; null for a report, which is a file of its own
 * @param words of the notebook's language; English where left out
 */
export function framedPage(
  notebook: FilledNotebook,
  { contents, sections }: PageParts,
  place: SitePlace | null = null,
  words: PageWords = englishFrame,
): string {
  return `<!doctype html>
<html lang="${words.languageWords.code}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<meta name="description" content="${escapeHtml(notebook.description)}">
<title>${escapeHtml(notebook.title)}</title>
<style>${pageStyle}</style>
</head>
<body>
<a class="skip" href="#main">${escapeHtml(words.pageWords.skip)}</a>
<header>
<h1>${escapeHtml(notebook.title)}</h1>
<p>${escapeHtml(notebook.description)}</p>
${unreadMarkup(words).markup}</header>
${placeMarkup(place, words).markup}${contents}<main id="main">
${sections.join('')}</main>
</body>
</html>
`;
}

/** What a policy allows a script or stylesheet by: the digest of its text. */
export function policyDigest(text: string): string {
  const bytes = sha256(new TextEncoder().encode(text)).match(/../g)!;
  return `'sha256-${btoa(String.fromCharCode(...bytes.map((pair) => Number.parseInt(pair, 16))))}'`;
}

/** Whom a reader of an untested translation should not trust blindly. */
export function unreadMarkup({ languageWords: { unread } }: PageWords): Html {
  return unread === ''
    ? html``
    : html`<p class="unread">${unread}</p>
`;
}

/** What leads from a page to the others of its site: the same page in other languages, then all pages; nothing where it has none. */
export function placeMarkup(place: SitePlace | null, words: PageWords): Html {
  return place === null ? html`` : html`${twinsMarkup(place, words)}${pagesMarkup(place, words)}`;
}

/** The same page in other languages, each named in its own. */
function twinsMarkup({ twins }: SitePlace, { pageWords: said }: PageWords): Html {
  if (twins.length === 0) return html``;
  const links = twins.map(
    ({ address, language, name }) =>
      html`<li><a href="${address}" hreflang="${language}" lang="${language}">${name}</a></li>
`,
  );
  return html`<nav aria-label="${said.otherLanguages}" class="languages">
<ul>
${links}</ul>
</nav>
`;
}

/** The other pages of the site, folded: on a telephone they would push the answer out of sight. */
function pagesMarkup({ address, pages }: SitePlace, { pageWords: said }: PageWords): Html {
  if (pages.length < 2) return html``;
  const entries = pages.map(
    (page) => html`<li>${pageLink(page, page.name === address)}</li>
`,
  );
  return html`<nav aria-label="${said.allPages}" class="pages">
<details>
<summary>${said.allPages}</summary>
<ul>
${entries}</ul>
</details>
</nav>
`;
}

/** A link to a page of the site, which says where it leads into another language. */
function pageLink({ name, title, language }: SiteEntry, here: boolean): Html {
  if (here) return html`<a href="${name}" aria-current="page">${title}</a>`;
  if (language === undefined) return html`<a href="${name}">${title}</a>`;
  return html`<a href="${name}" hreflang="${language}" lang="${language}">${title}</a>`;
}

/** Nothing may be loaded or run; the one stylesheet is allowed by its digest. */
const policy = `default-src 'none'; style-src ${policyDigest(pageStyle)}; base-uri 'none'; form-action 'none'`;

function contentsMarkup({ sections }: FilledNotebook, { pageWords: said }: PageWords): string {
  const headed = sections.filter(({ heading }) => heading !== null);
  if (headed.length < headingsWorthAList) return '';
  const entries = headed.map(
    ({ heading, id }) => html`<li><a href="#${id}">${heading!}</a></li>
`,
  );
  return html`<nav aria-labelledby="contents">
<h2 id="contents">${said.contents}</h2>
<ol>
${entries}</ol>
</nav>
`.markup;
}

function workingMarkup(working: readonly string[], { pageWords: said }: PageWords): Html {
  return html`<details class="working">
<summary>${said.working}</summary>
<pre><code>${working.join('\n\n')}</code></pre>
</details>
`;
}

/** A figure with its caption and its folded table, drawn under ids that begin with `id`. */
export function figureMarkup(
  figure: Figure,
  document: Document,
  id: string,
  { pageWords: said }: PageWords = englishFrame,
): string {
  return `<figure id="${id}">
<figcaption>${escapeHtml(figure.finding)}</figcaption>
${namedDrawing(figure, document, id)}
<details class="numbers">
<summary>${escapeHtml(said.numbers)}</summary>
${dataTable(figure.table).markup}</details>
</figure>
`;
}

/** The drawing, which brings its own role, name and description: a drawing without them is refused. */
function namedDrawing(figure: Figure, document: Document, id: string): string {
  const drawing = figure.draw(document, id).trim();
  if (!/^<svg\b[^>]*\srole="img"[^>]*>\s*<title\b/.test(drawing)) {
    throw new TypeError(
      `renderPage: the drawing of ${figure.name} must be an svg with role="img" and a title`,
    );
  }
  return drawing;
}

/** What a page must not hold. Escaped text cannot match: its angle brackets and quotes are gone. */
function refuseBlocked(markup: string): void {
  const found =
    /<(script|style|link|iframe|object|embed|img|image|base|form)\b|<[^>]*\s(on[a-z]+|style|src|srcset)="/i.exec(
      markup,
    );
  if (found !== null) {
    throw new Error(`renderPage: a page may hold no ${found[1] ?? found[2]}, got ${found[0].slice(-80)}`);
  }
}
