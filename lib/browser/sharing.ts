/** The part of the flow that makes a copy to share: under codes, searched for what is the grower's own. */

import { html } from '../notebook/html.ts';
import type { CodedLevel } from '../season/coded-copy.ts';
import { OWN_SHARING as words } from '../words/own-settings.ts';
import type { FileLike } from './chosen-files.ts';
import { begin, type Flow, halt } from './flow.ts';
import type { Sharing } from './messages.ts';
import type { SharedCopy } from './shared-copy.ts';

/** What the page's buttons for a copy call. */
export interface CopySharing {
  readonly makeCopy: (level: CodedLevel, key: FileLike | null) => Promise<void>;
  readonly stopCopy: () => void;
  /** Saves a file of the copy by its place, the key where it is null. */
  readonly saveCopy: (at: number | null) => void;
}

function idle({ places, known }: Flow, said: string): void {
  known.copy = null;
  places.fill('own-shared', '');
  places.show('own-share-stop', false);
  places.say('own-share-status', said);
}

function showCopy(flow: Flow, copy: SharedCopy): void {
  idle(flow, words.ready);
  flow.known.copy = copy;
  const buttons = copy.files.map(
    ({ name }, at) => html`<button type="button" data-save="${at}">${words.save(name)}</button>
`,
  );
  flow.places.fill(
    'own-shared',
    html`<p>${buttons}<button type="button" data-save="key">${words.saveKey}</button></p>`,
  );
}

/** The key's file as text; null where none was chosen. A file that cannot be read is no key. */
async function keyText(key: FileLike | null): Promise<Sharing['key']> {
  if (key === null) return null;
  try {
    return { name: key.name, text: new TextDecoder().decode(await key.arrayBuffer()) };
  } catch {
    return { name: key.name, text: '' };
  }
}

async function makeCopy(flow: Flow, level: CodedLevel, file: FileLike | null): Promise<void> {
  const { desk, known, places } = flow;
  if (known.report === null) return;
  const key = (await keyText(file)) ?? known.key ?? known.copy?.key ?? null;
  const share = { level, key, secret: desk.secret(), ownPieces: desk.ownPieces };
  idle(flow, words.making);
  places.show('own-share-stop', true);
  const job = { ...known.report.task, share };
  begin(
    flow,
    job,
    (reply) => {
      if (reply.kind === 'shared') showCopy(flow, reply);
      else if (reply.kind === 'refused') idle(flow, reply.message);
      else if (reply.kind === 'fault') idle(flow, '');
    },
    () => {},
  );
}

/** Takes away a copy of files or settings that are no longer those of the page. */
export function forgetCopy(flow: Flow): void {
  idle(flow, '');
}

/** The flow of a copy. */
export function copySharing(flow: Flow): CopySharing {
  const { desk, known } = flow;
  return {
    makeCopy: (level, key) => makeCopy(flow, level, key),
    stopCopy: () => {
      halt(flow);
      idle(flow, words.stopped);
      flow.places.focus('own-share-status');
    },
    saveCopy: (at) => {
      const file = at === null ? known.copy?.key : known.copy?.files[at];
      if (file === undefined) return;
      const [, kind] = /\.(\w+)$/.exec(file.name) ?? [];
      const type = kind === 'html' ? 'text/html' : kind === 'csv' ? 'text/csv' : 'application/json';
      desk.save(file.name, file.text, `${type};charset=utf-8`);
    },
  };
}
