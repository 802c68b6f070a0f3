/** The page's buttons, fields and window, tied to its flow. The only file of the page that knows the browser's window. */

import type { CodedLevel } from '../season/coded-copy.ts';
import { OWN_SEASON } from '../words/own-season.ts';
import type { ListName } from '../words/own-settings.ts';
import { FILE_NAMES } from '../words/told/file-names.ts';
import type { FileLike } from './chosen-files.ts';
import { type OwnSeason, ownSeason } from './own-season.ts';
import { type Places, placesOf } from './places.ts';
import type { ProgramScript } from './starter.ts';
import { type WorkerLike, workbench } from './workbench.ts';

/**
 * Until after the next picture of the page, so that what was put in is laid out before more of it comes. A page that is
 * not seen has no pictures.
 */
const pause = (): Promise<void> =>
  new Promise((resolve) => {
    if (document.hidden) setTimeout(resolve);
    else requestAnimationFrame(() => void setTimeout(resolve));
  });

function save(name: string, text: string, type: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type }));
  link.download = name;
  link.click();
  // The browser has taken the text by then; the address would keep it in memory.
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

function tieButtons(own: OwnSeason, { at }: Places): void {
  const press = (id: string, act: () => void) => at(id).addEventListener('click', act);
  press('own-work', own.work);
  press('own-cancel', own.cancel);
  press('own-read-again', own.readAgain);
  press('own-save-report', own.saveReport);
  press('own-save-settings', own.saveSettings);
  press('own-save-flowers', own.saveFlowers);
  press('own-save-crosses', () => own.saveCleaned('crosses'));
  press('own-save-vials', () => own.saveCleaned('vials'));
  at('own-chosen').addEventListener('click', ({ target }) => {
    const name = target instanceof HTMLElement ? target.dataset.remove : undefined;
    if (name !== undefined) own.removeFile(name);
  });
  const submit = (id: string, act: () => void) =>
    at(id).addEventListener('submit', (event) => {
      event.preventDefault();
      act();
    });
  submit('own-questions', own.answer);
  submit('own-settings', own.work);
  at('own-settings').addEventListener('input', own.settingsChanged);
}

function tieLists(own: OwnSeason, { at }: Places): void {
  at('own-lists').addEventListener('click', ({ target }) => {
    const { add, drop, at: place } = target instanceof HTMLElement ? target.dataset : {};
    if (add !== undefined) own.addListed(add as ListName);
    if (drop !== undefined) own.dropListed(drop as ListName, Number(place));
  });
}

function tieSharing(own: OwnSeason, { at }: Places): void {
  const form = at<HTMLFormElement>('own-share-form');
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    const level = new FormData(form).get('own-share-level') as CodedLevel;
    void own.makeCopy(level, at<HTMLInputElement>('own-key').files?.[0] ?? null);
  });
  at('own-share-stop').addEventListener('click', own.stopCopy);
  at('own-shared').addEventListener('click', ({ target }) => {
    const place = target instanceof HTMLElement ? target.dataset.save : undefined;
    if (place !== undefined) own.saveCopy(place === 'key' ? null : Number(place));
  });
}

function secret(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(32));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** Files and text come by the field, by dropping, or by pasting. */
function tieFiles(own: OwnSeason, { at, say }: Places): void {
  const add = (files: Iterable<FileLike> | null | undefined) => {
    const list = [...(files ?? [])];
    if (list.length > 0) void own.addFiles(list);
  };
  const input = at<HTMLInputElement>('own-files');
  const take = () => {
    add(input.files);
    // So that the same file, mended, can be chosen again.
    input.value = '';
  };
  input.addEventListener('change', take);
  const root = document.documentElement;
  document.addEventListener('dragover', (event) => {
    event.preventDefault();
    root.classList.add('dropping');
  });
  document.addEventListener('dragleave', () => root.classList.remove('dropping'));
  document.addEventListener('drop', (event) => {
    event.preventDefault();
    root.classList.remove('dropping');
    add(event.dataTransfer?.files);
  });
  document.addEventListener('paste', (event) => add(event.clipboardData?.files));
  at('own-paste').addEventListener('click', () => {
    const { value } = at<HTMLTextAreaElement>('own-pasted');
    if (value.trim() === '') say('own-status', OWN_SEASON.nothingPasted);
    else add([new File([value], FILE_NAMES.pasted)]);
  });
  take();
}

/**
 * Starts the page.
 *
 * @param script its own element, with the Worker's program and what in it is text
 */
export function startPage({ worker: ownPieces = { program: '', kept: '' } }: ProgramScript): void {
  const places = placesOf(document);
  const address = URL.createObjectURL(new Blob([ownPieces.program], { type: 'text/javascript' }));
  const bench = workbench(() => new Worker(address) as unknown as WorkerLike);
  const own = ownSeason({ document, bench, pause, save, secret, ownPieces });
  bench.warm();
  tieButtons(own, places);
  tieLists(own, places);
  tieSharing(own, places);
  tieFiles(own, places);
  addEventListener('beforeunload', (event) => {
    if (own.unsaved()) event.preventDefault();
  });
}
