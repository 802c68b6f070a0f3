/** What the page asks of its Worker, and what comes back: plain data that can be copied between the two. */

import type { AnalyseOptions } from '../analyse.ts';
import type { ReadOptions } from '../season/read-season.ts';
import type { SeasonSource } from '../season/sheet.ts';
import type { Stage } from '../words/own-season.ts';
import type { Reading } from './reading.ts';
import type { DrawnReport } from './report-text.ts';

/** How files are to be read: `ReadOptions` as plain data. */
export interface PlainReadOptions extends Omit<ReadOptions, 'map'> {
  /** From the grower's headers to our columns. */
  readonly map: readonly (readonly [header: string, column: string])[];
}

/** A task for the Worker: to read, and where `analyse` is given to work out what was read. */
export interface Job {
  readonly number: number;
  readonly sources: readonly SeasonSource[];
  readonly read: PlainReadOptions;
  readonly analyse: AnalyseOptions | null;
}

/** The season as it was understood, as files; null where it has no such rows. */
export interface Cleaned {
  readonly crosses: string | null;
  readonly vials: string | null;
}

/** What the Worker says of a task. */
export type Reply =
  | { readonly kind: 'stage'; readonly stage: Stage }
  | { readonly kind: 'read'; readonly reading: Reading }
  /** The first sections as far as counts fill them. */
  | { readonly kind: 'first'; readonly parts: readonly string[] }
  | {
      readonly kind: 'done';
      readonly report: DrawnReport;
      /** The report's first sentence. */
      readonly answer: string;
      readonly cleaned: Cleaned;
    }
  | { readonly kind: 'refused'; readonly message: string }
  | { readonly kind: 'fault'; readonly cause: string };

/** A reply with the number of its task, so that what comes late is known. */
export interface NumberedReply {
  readonly number: number;
  readonly reply: Reply;
}
