/** What a site holds, as its pages list it. */

/** A page or a file to download; `bytes` is its size. */
export interface SiteEntry {
  /** Address beside the page that names it: `season-review.html`. */
  readonly name: string;
  readonly title: string;
  readonly description: string;
  readonly bytes: number;
}

/** Given to the start page, which is made last. */
export interface SiteContents {
  /** Pages in the order in which they are listed, the start page itself left out. */
  readonly pages: readonly SiteEntry[];
  readonly downloads: readonly SiteEntry[];
  /** Whether the season is the invented one of the demo. */
  readonly invented: boolean;
}
