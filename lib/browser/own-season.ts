/** The flow of the page: files are chosen, read, confirmed, worked out, shown and saved. */

import { html } from '../notebook/html.ts';
import { OWN_SEASON } from '../words/own-season.ts';
import { type ListName, OWN_SETTINGS } from '../words/own-settings.ts';
import type { FileLike } from './chosen-files.ts';
import { openFile, withFile } from './chosen-files.ts';
import { begin, type Desk, type Flow, halt, type Known } from './flow.ts';
import { alikeIn, answersIn, chosenIn, settingsIn } from './form-values.ts';
import type { Reply } from './messages.ts';
import { placeParts, placesOf } from './places.ts';
import { savedSettings } from './saved-settings.ts';
import { type Saving, saving } from './saving.ts';
import { alikeKey, flowersFile, NO_ANSWERS, NO_SETTINGS, settingsFaults } from './settings.ts';
import { isSettingsFile, useSettingsFile } from './settings-file.ts';
import { type CopySharing, copySharing, forgetCopy } from './sharing.ts';
import { fillReading, showDone, showFiles, showIdle, showLists, showReading } from './showing.ts';
import { withListed, withoutListed } from './shown-settings.ts';
import { taskOf } from './task.ts';

type Done = Extract<Reply, { readonly kind: 'done' }>;

/** What the page's buttons and fields call. */
export interface OwnSeason extends CopySharing, Saving {
  readonly addFiles: (files: readonly FileLike[]) => Promise<void>;
  readonly removeFile: (name: string) => void;
  readonly answer: () => void;
  readonly work: () => void;
  readonly cancel: () => void;
  /** Reads the files whose reading was stopped. */
  readonly readAgain: () => void;
  readonly settingsChanged: () => void;
  readonly addListed: (list: ListName) => void;
  readonly dropListed: (list: ListName, at: number) => void;
  /** Whether leaving would lose something: files were read and the report is not saved. */
  readonly unsaved: () => boolean;
}

function readable({ files }: Known): boolean {
  return files.some(({ bytes }) => bytes !== null);
}

/** Flowers that were typed in give way to a file of them, and that is said. */
function givesWay({ known, places }: Flow): boolean {
  const files = known.reading?.files.filter(({ kind }) => kind === 'flowers') ?? [];
  if (known.settings.expected.size === 0 || files.length < 2) return false;
  known.settings = { ...known.settings, expected: new Map() };
  places.fill('own-flowers', '');
  places.say('own-status', OWN_SEASON.typedGaveWay);
  return true;
}

/** Reads the files that stand in the list, and shows what was read. */
function read(flow: Flow): void {
  const { known, places, desk } = flow;
  halt(flow);
  const settings = settingsIn(places.at('own-settings'), known.settings);
  if (settingsFaults(settings).length === 0) known.settings = settings;
  known.reading = null;
  known.report = null;
  forgetCopy(flow);
  showFiles(places, known.files);
  if (!readable(known)) return;
  begin(flow, taskOf(known.files, known.answers, known.settings, false), (reply, current) => {
    if (reply.kind !== 'read') return;
    known.reading = reply.reading;
    if (givesWay(flow)) {
      read(flow);
      return;
    }
    void fillReading(places, reply.reading, known, desk.pause, current);
    showReading(places, reply.reading);
    places.focus('own-read');
  });
}

async function addFiles(flow: Flow, files: readonly FileLike[]): Promise<void> {
  const { known, places, desk } = flow;
  const notes: string[] = [];
  let reread = false;
  for (const file of files) {
    const opened = await openFile(file);
    if (isSettingsFile(opened)) {
      const used = useSettingsFile(flow, opened);
      notes.push(used.note);
      reread ||= used.reread;
      continue;
    }
    const added = withFile(known.files, opened);
    known.files = added.files;
    known.saved = false;
    reread = true;
    if (added.note !== null) notes.push(added.note);
  }
  if (reread && desk.bench.busy()) notes.push(OWN_SEASON.restarted);
  places.say('own-status', notes.join(' '));
  if (reread) read(flow);
}

/** Shows the finished report, unless something else has begun in between. */
async function finish(flow: Flow, { report, answer, cleaned }: Done, current: () => boolean): Promise<void> {
  const { desk, known, places } = flow;
  const task = taskOf(known.files, known.answers, known.settings, true);
  const flowers = flowersFile(known.settings);
  known.report = { ...report, settings: savedSettings(known), flowers, cleaned, task };
  known.saved = false;
  showDone(places, answer, { flowers: flowers !== null, vials: cleaned.vials !== null });
  places.focus('own-answer-heading');
  await placeParts(places.at('own-report'), report.parts, desk.pause, current);
}

/** Shows the report of before again, where there is one; the settings are no longer its own. */
function showKept({ desk, known, places }: Flow): void {
  if (known.report === null) return;
  const { task } = known;
  places.show('own-answer', true);
  places.show('own-changed', true);
  void placeParts(places.at('own-report'), known.report.parts, desk.pause, () => known.task === task);
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
  const { known, places, desk } = flow;
  const settings = settingsIn(places.at('own-settings'), known.settings);
  const faults = settingsFaults(settings);
  places.fill('own-faults', html`${faults.map((fault) => html`<p class="error" role="alert">${fault}</p>`)}`);
  if (faults.length > 0) {
    places.at<HTMLDetailsElement>('own-change').open = true;
    return;
  }
  known.settings = settings;
  places.say('own-status', '');
  places.show('own-answer', false);
  places.at('own-report').replaceChildren();
  forgetCopy(flow);
  begin(flow, taskOf(known.files, known.answers, settings, true), (reply, current) => {
    if (reply.kind === 'first') void showFirst(flow, reply.parts, current);
    else if (reply.kind === 'done') void finish(flow, reply, current);
    else if (reply.kind === 'read') {
      known.reading = reply.reading;
      void fillReading(places, reply.reading, known, desk.pause, current);
    } else if (reply.kind === 'refused') {
      if (known.reading !== null) showReading(places, known.reading);
      showIdle(places, known.reading?.refusal === null);
      places.say('own-status', reply.message);
      showKept(flow);
    } else if (reply.kind === 'fault') showKept(flow);
  });
  places.focus('own-work-heading');
}

/** Takes the answers of the questions, and reads again with them. */
function answer(flow: Flow): void {
  const { known, places } = flow;
  const form = places.at('own-questions');
  const alike = alikeIn(form);
  const same = alike.filter(({ one }) => one).map(({ kept, other }) => [kept, other]);
  const apart = alike.filter(({ one }) => !one).map(({ kept, other }) => alikeKey(kept, other));
  const answers = answersIn(form, known.answers);
  known.answers = { ...answers, apart: new Set([...answers.apart, ...apart]) };
  const settings = settingsIn(places.at('own-settings'), known.settings);
  known.settings = { ...settings, same: [...settings.same, ...same] };
  places.say('own-status', '');
  read(flow);
}

function cancel(flow: Flow): void {
  const { known, places } = flow;
  halt(flow);
  showIdle(places, known.reading !== null && known.reading.refusal === null);
  showKept(flow);
  const { cancelled, cancelledBefore, cancelledReading } = OWN_SEASON;
  const afterReading = known.report === null ? cancelled : cancelledBefore;
  places.say('own-status', known.reading === null ? cancelledReading : afterReading);
  places.show('own-unread', known.reading === null);
  places.focus(known.reading === null ? 'own-read-again' : 'own-read');
}

function lists(flow: Flow): Pick<OwnSeason, 'addListed' | 'dropListed' | 'settingsChanged'> {
  const { known, places } = flow;
  const settingsChanged = () => places.show('own-changed', known.report !== null);
  const shown = (list: ListName) => {
    places.fill('own-faults', '');
    if (known.reading !== null) showLists(places, known.reading, known);
    settingsChanged();
    places.focus(`own-${list}-first`);
  };
  return {
    settingsChanged,
    addListed: (list) => {
      const longer = withListed(known.settings, list, chosenIn(places.at('own-settings'), list));
      if (longer === null) {
        const fault = OWN_SETTINGS.incomplete[list];
        places.fill('own-faults', html`<p class="error" role="alert">${fault}</p>`);
        return;
      }
      known.settings = longer;
      shown(list);
    },
    dropListed: (list, at) => {
      known.settings = withoutListed(known.settings, list, at);
      shown(list);
    },
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
    ...{ key: null, copy: null, saved: false, task: 0 },
  };
  const flow: Flow = { desk, places, known };
  return {
    ...saving(flow),
    ...copySharing(flow),
    ...lists(flow),
    addFiles: (files) => addFiles(flow, files),
    removeFile: (name) => {
      known.files = known.files.filter((file) => file.name !== name);
      places.say('own-status', OWN_SEASON.removed(name));
      read(flow);
      if (known.files.length === 0) places.focus('own-choose');
    },
    answer: () => answer(flow),
    work: () => work(flow),
    cancel: () => cancel(flow),
    readAgain: () => {
      places.say('own-status', '');
      read(flow);
    },
    unsaved: () => known.files.length > 0 && !known.saved,
  };
}
