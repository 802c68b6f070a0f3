/** The words that cells of outcome, storage, control and yes-or-no may hold, and what growers write instead, in four languages. */

import { editDistance } from './edit-distance.ts';
import type { Control, Outcome } from './season.ts';
import { speltOut } from './umlauts.ts';

/** A word list: from each word as it is compared to the word it stands for. */
export type WordList<T> = ReadonlyMap<string, T>;

/** A word as it is compared: lower case, without accents, single spaces for underscores and dashes. */
export function foldWord(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ')
    .trim();
}

function wordList<T extends string | boolean>(
  entries: readonly (readonly [word: T, others: string])[],
): WordList<T> {
  const list = new Map<string, T>();
  for (const [word, others] of entries) {
    for (const other of [String(word), ...others.split(', ')])
      for (const spelling of [speltOut(other), other]) list.set(foldWord(spelling), word);
  }
  return list;
}

export const OUTCOMES: WordList<Outcome> = wordList<Outcome>([
  [
    'fruit',
    'fruits, yes, y, 1, true, ✓, ✔, set, fruit set, set fruit, took, taken, success, ' +
      'Frucht, Früchte, ja, angesetzt, Fruchtansatz, Ansatz, wahr, fruto, frutos, sí, cuajó, cuajado, cuajada, verdadero, ' +
      'oui, noué, nouée, nouaison, réussi, vrai',
  ],
  [
    'dropped',
    'drop, fell, fell off, dropped off, aborted, abort, fallen, abgefallen, abgeworfen, abgestoßen, abgestossen, ' +
      'caído, caída, cayó, abortado, abortada, abortó, tombé, tombée, avorté, avortée, chute',
  ],
  [
    'none',
    'failed, fail, failure, failed to set, nothing, no, n, 0, false, ✗, ✘, no fruit, no set, not set, ' +
      'nein, keine, keine Frucht, nichts, nicht angesetzt, kein Ansatz, fehlgeschlagen, falsch, ' +
      'ninguno, ninguna, nada, sin fruto, no cuajó, no cuajado, fallido, falso, ' +
      'non, aucun, aucune, rien, aucun fruit, pas de fruit, non noué, raté, échec, échoué, faux',
  ],
  [
    'unknown',
    '?, lost, tag lost, lost tag, not seen, unbekannt, verloren, Etikett verloren, nicht gesehen, ' +
      'desconocido, desconocida, perdido, perdida, etiqueta perdida, no visto, ' +
      'inconnu, inconnue, perdu, perdue, étiquette perdue, pas vu',
  ],
  [
    'pending',
    'waiting, too early, not yet, offen, noch offen, ausstehend, zu früh, noch nicht, ' +
      'pendiente, demasiado pronto, todavía no, en attente, trop tôt, pas encore',
  ],
]);

export const STORAGES: WordList<string> = wordList([
  [
    'fresh',
    'fresh pollen, frisch, frischer Pollen, fresco, fresca, polen fresco, frais, fraîche, pollen frais',
  ],
  [
    'room',
    'room temperature, Zimmertemperatur, Raumtemperatur, Zimmer, temperatura ambiente, temp. ambiente, temp ambiente, ambiente, température ambiante, ambiante',
  ],
  [
    'refrigerated',
    'fridge, refrigerator, refrigerate, in the fridge, in the refrigerator, in fridge, Kühlschrank, im Kühlschrank, gekühlt, ' +
      'nevera, en la nevera, frigorífico, en el frigorífico, heladera, refrigerador, refrigerado, refrigerada, ' +
      'frigo, au frigo, réfrigérateur, au réfrigérateur, réfrigéré, réfrigérée',
  ],
  [
    'frozen',
    'freezer, freeze, deep freeze, deep freezer, deep frozen, in the freezer, in freezer, ' +
      'TK, TK-Fach, Gefrierfach, Gefrierschrank, Gefriertruhe, im Gefrierfach, Tiefkühler, Tiefkühlfach, Tiefkühlschrank, Tiefkühltruhe, ' +
      'Tiefkühlung, tiefgekühlt, tiefgefroren, gefroren, eingefroren, congelador, en el congelador, ultracongelador, congelado, congelada, ' +
      'congélateur, au congélateur, congélo, au congélo, congelé, congelée, surgelé, surgelée',
  ],
]);

/** Methods of keeping pollen that are none of ours, as growers write them: kept as methods of their own, but told when misspelt. */
export const OWN_METHODS: WordList<string> = wordList(
  (
    'silica, silica gel, over silica gel, desiccator, desiccant, dry ice, liquid nitrogen, dried, ' +
    'Silikagel, Kieselgel, Exsikkator, Trockeneis, flüssiger Stickstoff, getrocknet, ' +
    'gel de sílice, desecador, hielo seco, nitrógeno líquido, secado, gel de silice, dessiccateur, azote liquide, séché'
  )
    .split(', ')
    .map((word) => [word, word] as const),
);

/** False: the row is a cross and no control, although its cell is not blank. */
export const CONTROLS: WordList<Control | false> = wordList<Control | false>([
  [
    'unpollinated',
    'not pollinated, no pollen, unbestäubt, nicht bestäubt, ohne Pollen, sin polinizar, no polinizada, sin polen, ' +
      'non pollinisé, non pollinisée, sans pollen',
  ],
  [
    'selfed',
    'self, selfing, self pollinated, own pollen, selbst, geselbstet, Selbstung, selbstbestäubt, eigener Pollen, ' +
      'autopolinizada, autofecundada, polen propio, autopollinisée, autofécondée, propre pollen',
  ],
  [false, 'no, 0, none, cross, nein, keine, Kreuzung, ninguno, cruce, cruza, non, aucun, croisement'],
]);

export const YES_NO: WordList<boolean> = wordList<boolean>([
  [true, 'yes, y, 1, x, ✓, ✔, ja, j, sí, s, oui, o, wahr, verdadero, vrai'],
  [false, 'no, n, 0, ✗, ✘, nein, non, falsch, falso, faux'],
]);

/** What stands for an empty cell where a date or a number is expected. */
const BLANKS: ReadonlySet<string> = new Set(['', '?', '-', '–', '—', 'na', 'n/a', 'nan', 'null']);

/** Whether a cell of a date or number says nothing. */
export function isBlank(text: string): boolean {
  return BLANKS.has(text.toLowerCase());
}

/** What a spreadsheet writes where a formula cannot be worked out. */
const ERRORS = /^#(?:REF!|N\/A|VALUE!|DIV\/0!|NAME\?|NULL!|NUM!|SPILL!|CALC!|GETTING_DATA)$/i;

/** Whether a cell holds a spreadsheet's own error. */
export function isErrorValue(text: string): boolean {
  return text.startsWith('#') && ERRORS.test(text);
}

/** A word longer than this holds more than a word, and is not compared. */
const LONGEST_WORD = 40;
/** In so long a word two slips still leave no doubt; in a shorter one only one. */
const TWO_SLIPS_FROM = 8;

/** The word of a list that another word (4 letters and up) may be a slip of, or null. */
export function likelySlip<T>(text: string, list: WordList<T>): T | null {
  const folded = foldWord(text);
  if (folded.length < 4 || folded.length > LONGEST_WORD || list.has(folded)) return null;
  let nearest: T | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const [word, meant] of list) {
    const allowed = Math.min(word.length, folded.length) >= TWO_SLIPS_FROM ? 2 : 1;
    if (word.length < 4 || Math.abs(word.length - folded.length) > allowed) continue;
    const slips = editDistance(folded, word);
    if (slips <= allowed && slips < least) [nearest, least] = [meant, slips];
  }
  return nearest;
}
