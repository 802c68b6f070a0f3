/** What the page asks of its Worker, and what comes back: plain data that can be copied between the two. */

import type { AnalyseOptions } from '../analyse.ts';
import type { Wishes } from '../command/wishes.ts';
import type { CodedLevel } from '../season/coded-copy.ts';
import type { ReadOptions } from '../season/read-season.ts';
import type { SeasonSource } from '../season/sheet.ts';
import type { SeasonText } from '../season/write-season.ts';
import type { Stage } from '../words/told/stages.ts';
import type { OwnPieces } from './own-pieces.ts';
import type { Reading } from './reading.ts';
import type { DrawnReport } from './report-text.ts';

/** How files are to be read: `ReadOptions` as plain data. */
export interface PlainReadOptions extends Omit<ReadOptions, 'map' | 'storage'> {
  /** From the grower's headers to our columns. */
  readonly map: readonly (readonly [header: string, column: string])[];
  /** From the grower's words of storage to methods; none where left out. */
  readonly storage?: readonly (readonly [word: string, method: string])[];
}

/** How a coded copy is to be made. */
export interface Sharing {
  readonly level: CodedLevel;
  /** The file of the key of earlier copies; null where a new key is to be made. */
  readonly key: SeasonText | null;
  /** For a new key: 64 hexadecimal digits that nobody can guess. */
  readonly secret: string;
  /** What the page brings along itself: a name that is such a word is no proof of a leak. */
  readonly ownPieces: OwnPieces;
}

/** A task for the Worker: to read, and where `analyse` is given to work out what was read. */
export interface Job {
  readonly number: number;
  readonly sources: readonly SeasonSource[];
  readonly read: PlainReadOptions;
  readonly analyse: AnalyseOptions | null;
  /** What the plan must hold, by the names of plants as they stand in the files. */
  readonly wishes: Pick<Wishes, 'must' | 'atMost'>;
  /** Null where the grower's own report is to be made. */
  readonly share: Sharing | null;
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
  /** A coded copy that holds nothing of the grower's own, and the key that stays with the grower. */
  | { readonly kind: 'shared'; readonly files: readonly SeasonText[]; readonly key: SeasonText }
  | { readonly kind: 'refused'; readonly message: string }
  | { readonly kind: 'fault'; readonly cause: string };

/** A reply with the number of its task, so that what comes late is known. */
export interface NumberedReply {
  readonly number: number;
  readonly reply: Reply;
}
