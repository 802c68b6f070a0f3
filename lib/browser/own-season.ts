/** The flow of the page: files are chosen, read, confirmed, worked out, shown and saved. */

import { html } from '../notebook/html.ts';
import { OWN_SEASON } from '../words/own-season.ts';
import type { ChosenFile, FileLike } from './chosen-files.ts';
import { openFile, withFile } from './chosen-files.ts';
import { answersIn, settingsIn } from './form-values.ts';
import type { Cleaned, Reply } from './messages.ts';
import { type Places, placeParts, placesOf } from './places.ts';
import type { Reading } from './reading.ts';
import { settingsText } from './saved-settings.ts';
import type { Answers, Settings } from './settings.ts';
import { flowersFile, jobOf, NO_ANSWERS, NO_SETTINGS, settingsFaults } from './settings.ts';
import { showDone, showFiles, showFlowerFields, showIdle, showReading, showStage } from './showing.ts';
import type { Workbench } from './workbench.ts';

/** What the page asks of its browser. */
export interface Desk {
  readonly document: Document;
  readonly bench: Workbench;
  readonly pause: () => Promise<void>;
  /** Hands a file to the browser to save. */
  readonly save: (name: string, text: string, type: string) => void;
}

type Done = Extract<Reply, { readonly kind: 'done' }>;

/** What the page knows at a moment. */
interface Known {
  files: readonly ChosenFile[];
  answers: Answers;
  settings: Settings;
  reading: Reading | null;
  /** The finished report, and the settings it was made with. */
  report: {
    readonly text: string;
    readonly settings: string;
    readonly flowers: string | null;
    readonly cleaned: Cleaned;
  } | null;
  saved: boolean;
  /** Counts the tasks, so that what an earlier one still does is not shown. */
  task: number;
}

/** What the page's buttons and fields call. */
export interface OwnSeason {
  readonly addFiles: (files: readonly FileLike[]) => Promise<void>;
  readonly removeFile: (name: string) => void;
  readonly answer: () => void;
  readonly work: () => void;
  readonly cancel: () => void;
  readonly workAgain: () => void;
  readonly settingsChanged: () => void;
  readonly saveReport: () => void;
  readonly saveSettings: () => void;
  readonly saveFlowers: () => void;
  readonly saveCleaned: (kind: 'crosses' | 'vials') => void;
  /** Whether leaving would lose something: files were read and the report is not saved. */
  readonly unsaved: () => boolean;
}

const CSV = 'text/csv;charset=utf-8';

interface Flow {
  readonly desk: Desk;
  readonly places: Places;
  readonly known: Known;
}

function readable({ files }: Known): boolean {
  return files.some(({ bytes }) => bytes !== null);
}

/** Whatever was being worked out is stopped, and its results are not shown any more. */
function halt({ desk, known }: Flow): void {
  desk.bench.stop();
  known.task += 1;
}

/** A fault of the program, said where the page says everything. */
function tellFault({ places, known }: Flow, cause: string): void {
  showIdle(places, known.reading !== null && known.reading.refusal === null);
  places.say('own-status', OWN_SEASON.fault(cause));
}

/** Begins a task; what it says after another has begun is not listened to. */
function begin(flow: Flow, analyse: boolean, listen: (reply: Reply, current: () => boolean) => void): void {
  const { desk, known, places } = flow;
  halt(flow);
  const task = known.task;
  const current = () => known.task === task;
  try {
    desk.bench.run(jobOf(known.files, known.answers, known.settings, analyse), (reply) => {
      if (reply.kind === 'stage') showStage(places, reply.stage);
      else if (reply.kind === 'fault') tellFault(flow, reply.cause);
      else listen(reply, current);
    });
  } catch {
    halt(flow);
    showIdle(places, false);
    places.say('own-status', OWN_SEASON.noWorker);
  }
}

/** Reads the files that stand in the list, and shows what was read. */
function read(flow: Flow): void {
  const { known, places } = flow;
  halt(flow);
  known.reading = null;
  known.report = null;
  showFiles(places, known.files);
  if (!readable(known)) return;
  begin(flow, false, (reply) => {
    if (reply.kind !== 'read') return;
    known.reading = reply.reading;
    showReading(places, reply.reading, known.answers);
    showFlowerFields(places, reply.reading, known.settings);
    places.focus('own-read');
  });
}

async function addFiles(flow: Flow, files: readonly FileLike[]): Promise<void> {
  const { known, places, desk } = flow;
  const notes: string[] = [];
  for (const file of files) {
    const opened = await openFile(file);
    const added = withFile(known.files, opened);
    known.files = added.files;
    known.saved = false;
    if (added.note !== null) notes.push(added.note);
  }
  if (desk.bench.busy()) notes.push(OWN_SEASON.restarted);
  places.say('own-status', notes.join(' '));
  read(flow);
}

/** Shows the finished report, unless something else has begun in between. */
async function finish(flow: Flow, { report, answer, cleaned }: Done, current: () => boolean): Promise<void> {
  const { desk, known, places } = flow;
  const settings = settingsText(jobOf(known.files, known.answers, known.settings, true));
  known.report = { text: report.text, settings, flowers: flowersFile(known.settings), cleaned };
  known.saved = false;
  showDone(places, answer, {
    flowers: known.report.flowers !== null,
    vials: cleaned.vials !== null,
  });
  places.focus('own-answer-heading');
  await placeParts(places.at('own-report'), report.parts, desk.pause, current);
}

/** Shows the first sections as far as counting tells. */
async function showFirst(
  { desk, places }: Flow,
  parts: readonly string[],
  current: () => boolean,
): Promise<void> {
  places.show('own-counts', true);
  await placeParts(places.at('own-counts-said'), parts, desk.pause, current);
}

/** Works out what was confirmed: the counts first, then the whole report. */
function work(flow: Flow): void {
  const { known, places } = flow;
  places.say('own-status', '');
  places.show('own-answer', false);
  places.at('own-report').replaceChildren();
  begin(flow, true, (reply, current) => {
    if (reply.kind === 'first') void showFirst(flow, reply.parts, current);
    else if (reply.kind === 'done') void finish(flow, reply, current);
    else if (reply.kind === 'read') known.reading = reply.reading;
    else if (reply.kind === 'refused') {
      if (known.reading !== null) showReading(places, known.reading, known.answers);
      places.say('own-status', reply.message);
    }
  });
  places.focus('own-work-heading');
}

function workAgain(flow: Flow): void {
  const { known, places } = flow;
  const settings = settingsIn(places.at('own-settings'));
  const faults = settingsFaults(settings);
  places.fill('own-faults', html`${faults.map((fault) => html`<p class="error" role="alert">${fault}</p>`)}`);
  if (faults.length > 0) return;
  known.settings = settings;
  work(flow);
}

function saving(flow: Flow): Pick<OwnSeason, 'saveReport' | 'saveSettings' | 'saveFlowers' | 'saveCleaned'> {
  const { desk, known, places } = flow;
  const save = (name: string, text: string | null | undefined, type: string): void => {
    if (text === null || text === undefined) return;
    desk.save(name, text, type);
    places.say('own-status', OWN_SEASON.saved(name));
  };
  return {
    saveReport: () => {
      save(OWN_SEASON.reportName, known.report?.text, 'text/html;charset=utf-8');
      known.saved = true;
    },
    saveSettings: () => save(OWN_SEASON.settingsName, known.report?.settings, 'application/json'),
    saveCleaned: (kind) => {
      save(OWN_SEASON.cleanedName(kind), known.report?.cleaned[kind], CSV);
    },
    saveFlowers: () => save(OWN_SEASON.flowersName, known.report?.flowers, CSV),
  };
}

/**
 * The page's flow, ready to be called by its buttons.
 *
 * Nothing that the grower gave leaves it but by `desk.save`, and nothing is kept when the page goes.
 *
 * @param desk what the page may use of its browser
 */
export function ownSeason(desk: Desk): OwnSeason {
  const places = placesOf(desk.document);
  const known: Known = {
    ...{ files: [], answers: NO_ANSWERS, settings: NO_SETTINGS, reading: null, report: null },
    ...{ saved: false, task: 0 },
  };
  const flow: Flow = { desk, places, known };
  return {
    ...saving(flow),
    addFiles: (files) => addFiles(flow, files),
    removeFile: (name) => {
      known.files = known.files.filter((file) => file.name !== name);
      places.say('own-status', OWN_SEASON.removed(name));
      read(flow);
      if (known.files.length === 0) places.focus('own-choose');
    },
    answer: () => {
      known.answers = answersIn(places.at('own-questions'), known.answers);
      places.say('own-status', '');
      read(flow);
    },
    work: () => work(flow),
    cancel: () => {
      halt(flow);
      showIdle(places, known.reading !== null && known.reading.refusal === null);
      if (known.report !== null) places.show('own-answer', true);
      places.say('own-status', OWN_SEASON.cancelled);
      if (known.reading !== null) places.focus('own-read');
    },
    workAgain: () => workAgain(flow),
    settingsChanged: () => places.show('own-changed', known.report !== null),
    unsaved: () => known.files.length > 0 && !known.saved,
  };
}
