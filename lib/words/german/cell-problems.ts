/** Was an einer Zelle oder der Form ihrer Zeile nicht stimmt. Vor jedem Satz steht die Zeile. */

import type { Problem } from '../../season/season.ts';
import type { CellCode } from '../english-cell-problems.ts';
import type { ProblemSentence } from '../problem-sentence.ts';
import { cited, dateOrderName } from './problem-sentence.ts';

const WORDS: Readonly<Record<string, string>> = {
  outcome: 'fruit, dropped, none, unknown oder pending schreiben',
  control: 'unpollinated oder selfed schreiben, oder bei einer Kreuzung leer lassen',
  bagged: 'yes oder no schreiben',
};

const UNITS: Readonly<Record<string, string>> = { fruit_weight_g: ' g', pollen_age_days: ' Tage' };

const POLLEN: ReadonlySet<string> = new Set(['pollen_parent', 'storage']);

const NAMES: Readonly<Record<string, string>> = {
  cross_id: 'das Etikett (cross_id)',
  pollination_date: 'das Bestäubungsdatum',
  seed_parent: 'die Mutterpflanze',
  pollen_parent: 'der Pollenspender',
  storage: 'die Lagerung',
  pollen_collected: 'das Sammeldatum des Pollens',
  pollen_age_days: 'das Pollenalter',
  vial: 'das Röhrchen',
  outcome: 'das Ergebnis',
  season: 'die Saison',
  grower: 'der Name des Züchters',
  wave: 'die Blütenwelle',
  checked_on: 'das Datum der Kontrolle',
  harvested_on: 'das Erntedatum',
  bagged: 'die Angabe zum Beutel',
  control: 'die Art der Kontrolle',
  fruit_weight_g: 'das Fruchtgewicht',
  identified_by: 'die Angabe, wer bestimmt hat,',
  note: 'die Bemerkung',
  collected: 'das Sammeldatum',
  doses_left: 'die Zahl übriger Dosen',
  doses_filled: 'die Zahl abgefüllter Dosen',
  thaws: 'die Zahl der Auftauungen',
  flowers: 'die Zahl der Blüten',
  seeds: 'die Zahl der Samen',
  sown: 'die Zahl gesäter Samen',
  germinated: 'die Zahl gekeimter Samen',
  opens_from: 'der erste Tag der Blüte',
  opens_to: 'der letzte Tag der Blüte',
};

export function named({ details, column }: Problem): string {
  const name = String(details.name ?? column ?? '');
  return NAMES[name] ?? (name === '' ? 'die Zelle' : `die Spalte ${name}`);
}

/** Die Zelle mit ihrem Inhalt. */
export const the = (problem: Problem): string => `${named(problem)} ${cited(problem.value)}`;
const unit = ({ details }: Problem): string => UNITS[String(details.name)] ?? '';
const times = (uses: string | number): string => (uses === 1 ? 'einmal' : `${uses}-mal`);
const sameOption = (kept: string | number, other: string | number): string => `--same "${kept}=${other}"`;
const isWeight = ({ details }: Problem): boolean => details.name === 'fruit_weight_g';

const ISO = 'Als JJJJ-MM-TT schreiben, zum Beispiel 2025-06-14.';
const NOTHING = 'Wenn das stimmt, ist nichts zu tun.';
const MEND = 'Berichtigen, oder leer lassen.';

export const CELL_PROBLEMS: Readonly<Record<CellCode, ProblemSentence>> = {
  'total-row': ({ value }) => [
    `die Zeile ist eine Summe (${cited(value)}), kein Eintrag.`,
    'Die Zeile löschen, oder Summen auf ein eigenes Blatt setzen; sonst fehlt nichts.',
  ],
  'row-short': ({ details }) => [
    `die Zeile endet vor der Spalte ${cited(details.meant)}; was an ihrem Ende fehlt, gilt als leer, auch in anderen Zeilen.`,
    'Es ist nichts zu tun, außer ein Trennzeichen fehlt mitten in der Zeile.',
  ],
  'row-nearly-blank': ({ value }) => [
    `die Zeile enthält ${cited(value)}, aber nichts von dem, was nötig ist.`,
    'Die Zeile ausfüllen, oder löschen.',
  ],
  'row-ragged': ({ details }) => [
    `die Zeile hat ${details.cells} ${details.cells === 1 ? 'Zelle' : 'Zellen'}, nach der Kopfzeile wären es ${details.expected}; was wohin gehört, ist unklar.`,
    'Nach einem fehlenden oder überzähligen Trennzeichen sehen; eine Zelle, die eines enthält, in Anführungszeichen setzen.',
  ],
  'header-repeated': () => ['die Zeile wiederholt die Kopfzeile.', 'Löschen.'],
  'quote-not-closed': () => [
    'ein Anführungszeichen wird geöffnet und nie geschlossen.',
    'Entfernen oder schließen; die Zeilen darunter werden gelesen, als hätte es keine Bedeutung.',
  ],
  'control-character': () => [
    'die Zeile enthält ein Zeichen, das in keinem Text steht.',
    'Die Zeile neu eintippen.',
  ],
  'cell-blank': (problem) => [
    `${named(problem)} fehlt: die Zelle ist leer.`,
    problem.details.name === 'outcome'
      ? 'fruit, dropped, none, unknown (Etikett verloren) oder pending (zu früh zu sagen) schreiben.'
      : problem.details.kind === 'crosses' && POLLEN.has(String(problem.details.name))
        ? 'Ausfüllen; bei einer Blüte ohne Pollen in die Spalte control unpollinated schreiben.'
        : 'Ausfüllen.',
  ],
  'cell-error': (problem) => [
    `${named(problem)}: die Zelle enthält den eigenen Fehler einer Tabellenkalkulation, ${cited(problem.value)}.`,
    'Die Formel in der Tabelle richten, oder den Wert eintippen.',
  ],
  'date-does-not-exist': (problem) => [
    `${the(problem)} gibt es nicht${problem.details.order ? `, gelesen als ${dateOrderName(problem.details.order)}` : ''}.`,
    ISO,
  ],
  'date-not-understood': (problem) => [`${the(problem)} ist kein Datum.`, ISO],
  'date-serial': (problem) => [
    `${the(problem)} sieht aus wie die eigene Tageszahl einer Tabellenkalkulation.`,
    'Die Spalte vor dem Speichern als CSV als Datum formatieren (JJJJ-MM-TT).',
  ],
  'date-partial': (problem) => [
    `${the(problem)} nennt keinen ganzen Tag.`,
    'Tag, Monat und Jahr schreiben: JJJJ-MM-TT, zum Beispiel 2025-06-14.',
  ],
  'date-implausible': (problem) => [`${the(problem)} liegt nicht in 1950 bis 2100.`, 'Das Jahr prüfen.'],
  'number-not-understood': (problem) => [
    `${the(problem)} ist keine ${isWeight(problem) ? '' : 'ganze '}Zahl.`,
    `Eine ${isWeight(problem) ? '' : 'ganze '}Zahl in Ziffern schreiben, ohne Wörter und ohne Zeichen zwischen Tausendern, oder leer lassen.`,
  ],
  'number-negative': (problem) => [`${the(problem)} liegt unter null.`, MEND],
  'number-absurd': (problem) => [
    `${the(problem)} ist mehr, als sein kann (höchstens ${problem.details.highest}${unit(problem)}).`,
    MEND,
  ],
  'number-converted': (problem) => [
    `${the(problem)} wird als ${problem.details.meant}${unit(problem)} gelesen, hier und überall, wo es steht.`,
    NOTHING,
  ],
  'number-is-date': (problem) => [
    `${the(problem)} ist ein Datum, wo eine Zahl erwartet wird; es wird nicht verwendet.`,
    'Enthält die ganze Spalte Daten, ihr einen anderen Kopf geben; sonst die Zahl schreiben, oder die Zelle leer lassen.',
  ],
  'word-not-understood': (problem) => [
    `${the(problem)} ist kein Wort, das hier bekannt ist${problem.details.suggestion ? `; ist ${problem.details.suggestion} gemeint?` : '.'}`,
    `Bitte ${WORDS[String(problem.details.name)] ?? 'eines der Wörter schreiben, die in der Spalte stehen dürfen'}.`,
  ],
  'word-guessed': (problem) => [
    `${the(problem)} wird als ${problem.details.meant} gelesen, hier und überall, wo es steht.`,
    NOTHING,
  ],
  'storage-own': (problem) => [
    `${the(problem)} bleibt eine eigene Art der Lagerung, hier und überall, wo es steht.`,
    `Wenn das stimmt, ist nichts zu tun; sonst fresh, room, refrigerated oder frozen schreiben oder sagen: --storage "${problem.value}=frozen".`,
  ],
  'storage-slip': (problem) => [
    `${the(problem)} bleibt eine eigene Art der Lagerung; ist ${problem.details.suggestion} gemeint?`,
    `Wenn ja, ${problem.details.suggestion} schreiben oder sagen: --storage "${problem.value}=${problem.details.suggestion}".`,
  ],
  'name-spellings': (problem) => {
    const { spelling, uses, usual, usualUses } = problem.details;
    const plant = String(problem.details.name).endsWith('parent');
    return [
      `${cited(spelling)} (${times(uses)}) und ${cited(usual)} (${times(usualUses)}) sehen nach ` +
        `${plant ? 'einer Pflanze' : 'einem Wort'} aus, bleiben aber getrennt.`,
      plant
        ? `Beide gleich schreiben, oder es so sagen: ${sameOption(usual, spelling)}.`
        : 'Beide gleich schreiben, wenn sie eines sind.',
    ];
  },
  'name-slip': ({ details: { name, spelling, uses, usual, usualUses } }) => [
    `${cited(spelling)} (${times(uses)}) könnte ein Tippfehler für ${cited(usual)} (${times(usualUses)}) sein; beide bleiben getrennt.`,
    String(name).endsWith('parent')
      ? `Ist es eine Pflanze, berichtigen oder es so sagen: ${sameOption(usual, spelling)}.`
      : 'Ist es dasselbe, berichtigen.',
  ],
  'name-garbled': (problem) => [
    `${the(problem)} enthält Buchstaben, die beim Speichern der Datei verloren gingen oder verstümmelt wurden.`,
    'Das ursprüngliche Blatt öffnen und als CSV (UTF-8) oder .xlsx speichern; oder den Namen überall neu eintippen.',
  ],
  'name-tidied': (problem) => [
    `${the(problem)} wird als ${cited(problem.details.meant)} gelesen, mit einfachen Leerzeichen und Buchstaben.`,
    NOTHING,
  ],
};
