import type { Analysis } from '../analyse.ts';
import type { MixName } from '../decisions/mix.ts';
import type { FoundNotebooks } from '../notebook/compiled-notebooks.ts';
import type { SiteFile, SiteObstacle } from '../notebook/site.ts';
import type { SiteParts } from '../notebook/site-pages.ts';
import type { Season } from '../season/season.ts';
import type { SeasonText } from '../season/write-season.ts';
import type { Language } from '../words/language.ts';

/** A site ready to be written, and the pages that were left out since an optional package is not installed. */
export interface RenderedSite {
  readonly files: readonly SiteFile[];
  /** Pieces of their text that are the same in every site. */
  readonly constant: readonly string[];
  readonly leftOut: FoundNotebooks['leftOut'];
}

/** Everything the command asks of the world outside, so that tests can run it without one. */
export interface World {
  /** The bytes of a file. Throws where the system refuses. */
  readonly read: (path: string) => Uint8Array;
  /** The bytes of standard input. */
  readonly readInput: () => Uint8Array;
  /** The SHA-256 digest of some bytes, in hexadecimal. */
  readonly sha256: (bytes: Uint8Array) => string;
  /** Writes a whole file, so that at no moment half of it stands there. Throws where the system refuses. */
  readonly write: (path: string, text: string) => void;
  /** Throws where `write` would be refused, as far as that can be told without writing. */
  readonly refuseUnwritable: (path: string) => void;
  /** Writes files into a folder that is not there yet or is empty. Throws where it is not, or the system refuses. */
  readonly writeNewFolder: (folder: string, files: readonly SeasonText[]) => void;
  /** Whether two paths name the same file. */
  readonly same: (path: string, other: string) => boolean;
  /** Adds text to standard output. */
  readonly print: (text: string) => void;
  /** Adds text to standard error. */
  readonly warn: (text: string) => void;
  /** Tells a person who watches standard error that it takes a while; nothing where nobody does. */
  readonly note: (text: string) => void;
  /** The season review as one HTML file; it runs the compiled notebook, which lies beside the library. */
  readonly render: (season: Season, analysis: Analysis, language: Language) => Promise<string>;
  /** The crossing sheet of one mix of a season's plan as one HTML file. */
  readonly renderSheet: (
    season: Season,
    analysis: Analysis,
    mix: MixName,
    language: Language,
  ) => Promise<string>;
  /** All pages about a season; it runs the compiled notebooks. */
  readonly renderSite: (
    season: Season,
    analysis: Analysis,
    parts: Omit<SiteParts, 'notebooks'>,
    language: Language,
  ) => Promise<RenderedSite>;
  /** What stands in the way of a site in this folder; null where nothing does. */
  readonly siteObstacle: (folder: string) => SiteObstacle | null;
  /** Puts a site in a folder, in place of the one that stood there. Throws where the system refuses. */
  readonly writeSite: (folder: string, files: readonly SiteFile[]) => void;
  /** A secret for a new key: 64 hexadecimal digits that nobody can guess. */
  readonly secret: () => string;
  /** All text that the pages and results bring along themselves, in a language. */
  readonly ownText: (language: Language) => Promise<string>;
  /** Whether a path lies within a folder. */
  readonly within: (path: string, folder: string) => boolean;
}
