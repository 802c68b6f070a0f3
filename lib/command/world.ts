import type { Analysis } from '../analyse.ts';
import type { Season } from '../season/season.ts';

/** Everything the command asks of the world outside, so that tests can run it without one. */
export interface World {
  /** The bytes of a file. Throws where the system refuses. */
  readonly read: (path: string) => Uint8Array;
  /** The bytes of standard input. */
  readonly readInput: () => Uint8Array;
  /** Writes a whole file, so that at no moment half of it stands there. Throws where the system refuses. */
  readonly write: (path: string, text: string) => void;
  /** Whether two paths name the same file. */
  readonly same: (path: string, other: string) => boolean;
  /** Adds text to standard output. */
  readonly print: (text: string) => void;
  /** Adds text to standard error. */
  readonly warn: (text: string) => void;
  /** The season review as one HTML file; it runs the compiled notebook, which lies beside the library. */
  readonly render: (season: Season, analysis: Analysis) => Promise<string>;
}
