/** The words that cells of outcome, storage, control and yes-or-no may hold, and what growers write instead, in four languages. */

import type { Control, Outcome } from './season.ts';

/** A word list: from each word as it is compared to the word it stands for. */
export type WordList<T> = ReadonlyMap<string, T>;

/** A word as it is compared: lower case, single spaces for underscores and dashes. */
export function foldWord(text: string): string {
  return text
    .normalize('NFC')
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ')
    .trim();
}

function wordList<T extends string | boolean>(
  entries: readonly (readonly [word: T, others: string])[],
): WordList<T> {
  const list = new Map<string, T>();
  for (const [word, others] of entries) {
    for (const other of [String(word), ...others.split(', ')]) list.set(foldWord(other), word);
  }
  return list;
}

export const OUTCOMES: WordList<Outcome> = wordList<Outcome>([
  ['fruit', 'fruits, yes, y, 1, true, set, fruit set, took, taken, success, Frucht, ja, fruto, sí, si, oui'],
  ['dropped', 'drop, fell, fell off, fallen, abgefallen, caído, tombé'],
  [
    'none',
    'failed, fail, failure, no, n, 0, false, no fruit, no set, not set, nein, keine, ninguno, non, aucun',
  ],
  [
    'unknown',
    '?, lost, tag lost, lost tag, not seen, unbekannt, verloren, desconocido, perdido, inconnu, perdu',
  ],
  ['pending', 'waiting, too early, not yet, offen, pendiente, en attente'],
]);

export const STORAGES: WordList<string> = wordList([
  ['fresh', 'fresh pollen, frisch, fresco, frais'],
  ['room', 'room temperature, Zimmertemperatur, Raumtemperatur, temperatura ambiente, température ambiante'],
  [
    'refrigerated',
    'fridge, refrigerator, refrigerate, Kühlschrank, gekühlt, nevera, refrigerado, frigo, réfrigérateur, réfrigéré',
  ],
  [
    'frozen',
    'freezer, freeze, deep freezer, deep frozen, Gefrierschrank, gefroren, congelador, congelado, congélateur, congelé',
  ],
]);

/** False: the row is a cross and no control, although its cell is not blank. */
export const CONTROLS: WordList<Control | false> = wordList<Control | false>([
  ['unpollinated', 'not pollinated, no pollen'],
  ['selfed', 'self, selfing, self pollinated, own pollen'],
  [false, 'no, 0, none, cross'],
]);

export const YES_NO: WordList<boolean> = wordList<boolean>([
  [true, 'yes, y, 1, x, ja, sí, si, oui'],
  [false, 'no, n, 0, nein, non'],
]);

/** What stands for an empty cell where a date or a number is expected. */
const BLANKS: ReadonlySet<string> = new Set(['', '?', '-', '–', '—', 'na', 'n/a', 'nan', 'null']);

/** Whether a cell of a date or number says nothing. */
export function isBlank(text: string): boolean {
  return BLANKS.has(text.toLowerCase());
}

/** Whether two words differ by one slip: a letter too many, too few, wrong, or two neighbours exchanged. */
function isOneSlip(a: string, b: string): boolean {
  if (Math.abs(a.length - b.length) > 1 || a === b) return false;
  let start = 0;
  while (start < a.length && a[start] === b[start]) start++;
  let [endA, endB] = [a.length, b.length];
  while (endA > start && endB > start && a[endA - 1] === b[endB - 1]) {
    endA--;
    endB--;
  }
  if (Math.max(endA, endB) - start <= 1) return true;
  return endA - start === 2 && endB - start === 2 && a[start] === b[start + 1] && a[start + 1] === b[start];
}

/** The word of a list that a longer word (5 letters and up) may be a slip of, or null. */
export function likelySlip<T>(text: string, list: WordList<T>): T | null {
  const folded = foldWord(text);
  if (folded.length < 4) return null;
  for (const [word, meant] of list) if (word.length > 3 && isOneSlip(folded, word)) return meant;
  return null;
}
