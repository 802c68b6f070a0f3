/** What the page asks of its Worker, and what comes back: plain data that can be copied between the two. */

import type { AnalyseOptions, Analysis } from '../analyse.ts';
import type { DateOrder, Endpoint, Season } from '../season/season.ts';
import type { SeasonSource } from '../season/sheet.ts';
import type { Stage } from '../words/own-season.ts';
import type { FirstCounts } from './first-counts.ts';
import type { Reading } from './reading.ts';

/** How files are to be read: `ReadOptions` as plain data. */
export interface PlainReadOptions {
  readonly endpoint: Endpoint;
  readonly dateOrder?: DateOrder;
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
  | { readonly kind: 'counts'; readonly counts: FirstCounts }
  | { readonly kind: 'done'; readonly season: Season; readonly analysis: Analysis; readonly cleaned: Cleaned }
  | { readonly kind: 'refused'; readonly message: string }
  | { readonly kind: 'fault'; readonly cause: string };

/** A reply with the number of its task, so that what comes late is known. */
export interface NumberedReply {
  readonly number: number;
  readonly reply: Reply;
}
