/** What a site holds, as its pages list it. */

import type { Language } from '../words/language.ts';

/** A page or a file to download; `bytes` is its size. */
export interface SiteEntry {
  /** Address beside the page that names it: `season-review.html`. */
  readonly name: string;
  readonly title: string;
  readonly description: string;
  readonly bytes: number;
  /** The language of the page, where it is another than that of the page that names it. */
  readonly language?: Language;
}

/** Where a page stands in its site. */
export interface SitePlace {
  /** Its own address: `season-review.de.html`. */
  readonly address: string;
  /** The pages of its language, itself among them. */
  readonly pages: readonly SiteEntry[];
  /** The same page in other languages, each under the language's own name. */
  readonly twins: readonly { readonly address: string; readonly language: Language; readonly name: string }[];
}

/** Given to the start page, which is made last. */
export interface SiteContents {
  /** Pages in the order in which they are listed, the start page itself left out. */
  readonly pages: readonly SiteEntry[];
  readonly downloads: readonly SiteEntry[];
  /** Whether the season is the invented one of the demo. */
  readonly invented: boolean;
}
