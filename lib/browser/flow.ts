/** What the parts of the page's flow share: what is known, and how a task begins and ends. */

import { OWN_SEASON } from '../words/own-season.ts';
import type { Stage } from '../words/told/stages.ts';
import type { ChosenFile } from './chosen-files.ts';
import type { Cleaned, Job, Reply } from './messages.ts';
import type { OwnPieces } from './own-pieces.ts';
import type { Places } from './places.ts';
import type { Reading } from './reading.ts';
import type { Answers, Settings } from './settings.ts';
import type { SharedCopy } from './shared-copy.ts';
import { showIdle, showStage } from './showing.ts';
import type { Workbench } from './workbench.ts';

/** What the page asks of its browser. */
export interface Desk {
  readonly document: Document;
  readonly bench: Workbench;
  readonly pause: () => Promise<void>;
  /** Hands a file to the browser to save. */
  readonly save: (name: string, text: string, type: string) => void;
  /** A secret that nobody can guess: 64 hexadecimal digits. */
  readonly secret: () => string;
  /** The Worker's program, and what in it is text of the page's own. */
  readonly ownPieces: OwnPieces;
}

/** What the page knows at a moment. */
export interface Known {
  files: readonly ChosenFile[];
  answers: Answers;
  settings: Settings;
  reading: Reading | null;
  /** The finished report, and the settings it was made with. */
  report: {
    readonly text: string;
    readonly parts: readonly string[];
    readonly settings: string;
    readonly flowers: string | null;
    readonly cleaned: Cleaned;
    readonly task: Omit<Job, 'number'>;
  } | null;
  /** The key of coded copies that was chosen among the files. */
  key: SharedCopy['key'] | null;
  copy: SharedCopy | null;
  saved: boolean;
  /** Counts the tasks, so that what an earlier one still does is not shown. */
  task: number;
}

export interface Flow {
  readonly desk: Desk;
  readonly places: Places;
  readonly known: Known;
}

/** Whatever was being worked out is stopped, and its results are not shown any more. */
export function halt({ desk, known }: Flow): void {
  desk.bench.stop();
  known.task += 1;
}

/** A fault of the program, said where the page says everything. */
function tellFault({ places, known }: Flow, cause: string): void {
  showIdle(places, known.reading !== null && known.reading.refusal === null);
  places.say('own-status', OWN_SEASON.fault(cause));
}

/** Begins a task; what it says after another has begun is not listened to. */
export function begin(
  flow: Flow,
  job: Omit<Job, 'number'>,
  listen: (reply: Reply, current: () => boolean) => void,
  begins: (stage: Stage) => void = (stage) => showStage(flow.places, stage),
): void {
  const { desk, known, places } = flow;
  halt(flow);
  const task = known.task;
  const current = () => known.task === task;
  try {
    desk.bench.run(job, (reply) => {
      if (reply.kind === 'stage') begins(reply.stage);
      else {
        if (reply.kind === 'fault') tellFault(flow, reply.cause);
        listen(reply, current);
      }
    });
  } catch {
    halt(flow);
    showIdle(places, false);
    places.say('own-status', OWN_SEASON.noWorker);
  }
}
