/** Was die Seite für die eigene Datei sagt: was sie fragt, was sie tut, was schiefging. */

import type { FileKind, Problem } from '../../season/season.ts';
import { dateAnswers, type PageFixes, pageFix } from '../told/page-fixes.ts';
import { STAGES, type Stage } from '../told/stages.ts';
import { rowsIn } from './nouns.ts';
import { capitalised, counted, wholeNumber } from './numbers.ts';
import { cited, dateOrderName } from './problem-sentence.ts';

const DOES: Readonly<Record<Stage, string>> = {
  reading: 'die Dateien werden gelesen',
  counting: 'Blüten und Früchte werden gezählt',
  model: 'das Modell von Alter, Pflanzen und Paaren wird angepasst',
  vials: 'die Röhrchen werden beurteilt',
  'like-for-like': 'Gleiches wird mit Gleichem verglichen',
  rest: 'was es klären würde, wird ausgerechnet',
  drawing: 'die Bilder werden gezeichnet',
};

export function stageSaid(stage: Stage): string {
  return `Schritt ${STAGES.indexOf(stage) + 1} von ${STAGES.length}: ${DOES[stage]}.`;
}

const KINDS: Readonly<Record<FileKind, string>> = {
  crosses: 'Kreuzungen: eine Zeile je Blüte',
  vials: 'Röhrchen: eine Zeile je Röhrchen mit Pollen',
  flowers: 'Blüten, die nächste Saison zu erwarten sind',
  unknown: 'keine der drei Arten von Dateien',
};

export function kindSaid(kind: FileKind): string {
  return KINDS[kind];
}

export function fileSaid(file: {
  readonly kind: FileKind;
  readonly rows: number;
  readonly used: number;
  readonly leftOut: number;
}): string {
  const { kind, rows, used, leftOut } = file;
  return `${capitalised(kindSaid(kind))}. ${rowsIn(rows)}, ${wholeNumber(used)} verwendet, ${wholeNumber(leftOut)} ausgelassen.`;
}

const EXPORT_SPREADSHEET =
  'Im eigenen Tabellenprogramm öffnen, „Speichern unter“ oder „Herunterladen“ wählen, CSV (UTF-8) nehmen, und diese Datei hier wählen.';
const ANSWER_BELOW = 'Die Frage unten beantworten.';
const LATER_DAY = 'Das Datum berichtigen, oder unter „Weitere Einstellungen“ einen späteren Tag angeben.';
const WRITE_PLAINLY = 'Stimmt das nicht, die Daten als JJJJ-MM-TT schreiben.';

const FIXES: PageFixes = {
  byCode: {
    'spreadsheet-file': EXPORT_SPREADSHEET,
    'not-text': `Die Tabelle selbst wählen. ${EXPORT_SPREADSHEET}`,
    'kind-unknown':
      'Unten sagen, was die Datei ist, oder prüfen, ob ihre erste Zeile die Spaltenköpfe enthält.',
    'column-missing': 'Unten sagen, welche der eigenen Spalten es ist, oder die Spalte ergänzen.',
    'column-unknown': 'Enthält sie etwas Nötiges, unter „Weitere Einstellungen“ sagen, was.',
    'column-guessed': 'Stimmt das nicht, die Spalte in der Tabelle umbenennen.',
    'vial-unknown': 'Auch die Datei der Röhrchen wählen, oder pollen_collected ausfüllen.',
    'future-date': LATER_DAY,
    'outcome-after-as-of': LATER_DAY,
    'name-slip': 'Unten sagen, ob es eine Pflanze ist, oder es in der Tabelle berichtigen.',
    'date-serial-read':
      'Liegen alle um vier Jahre daneben, unter „Weitere Einstellungen“ sagen, von welchem Jahr an gezählt ist; sonst ist nichts zu tun.',
    'date-order-unclear': ANSWER_BELOW,
    'date-order-mixed':
      'Alle Daten als JJJJ-MM-TT schreiben, oder die Frage unten beantworten: anders geschriebene Zeilen bleiben dann weg.',
    'date-order-decided': WRITE_PLAINLY,
    'date-order-from-neighbour': WRITE_PLAINLY,
  },
  rename: 'Die nicht gemeinte umbenennen, und die Datei noch einmal wählen.',
  answer: ANSWER_BELOW,
  mend: 'In der Tabelle beheben, und die Datei noch einmal wählen.',
};

export function fixOnPage(problem: Problem, fix: string): string {
  return pageFix(problem, fix, FIXES);
}

export const REFUSAL_FIXES: Readonly<Record<string, string>> = {
  'question-open': ANSWER_BELOW,
  'no-usable-row': 'In der Tabelle beheben, speichern, und die Datei noch einmal wählen.',
  'no-crosses':
    'Auch die Datei mit einer Zeile je bestäubter Blüte wählen. Eine Datei wird an ihren Spalten erkannt.',
  'no-usable-outcome':
    'In die Spalte outcome fruit, dropped oder none schreiben, sobald die Blüten angesehen sind.',
};

export function dateOrderQuestion(problem: Problem): {
  readonly question: string;
  readonly answers: readonly (readonly [order: string, label: string])[];
} {
  return {
    question: `Wie sind die Daten in ${cited(problem.column)} geschrieben? Eines davon ist ${cited(problem.value)}.`,
    answers: dateAnswers(problem, dateOrderName),
  };
}

export function groupsLeft(groups: number): string {
  return `${counted(groups, 'weitere Art', 'weitere Arten')} von Problemen ${groups === 1 ? 'ist' : 'sind'} nicht aufgezählt.`;
}

export const OWN_SEASON = {
  title: 'Die eigene Saison',
  description: 'Die Liste der Kreuzungen wählen; diese Seite zählt, vergleicht und schreibt den Bericht.',
  needsScript:
    'Diese Seite rechnet den Bericht mit einem eigenen Skript aus, und Skripte sind hier ausgeschaltet. Der Befehl fruitodds tut dasselbe ohne Browser.',
  noWorker:
    'Dieser Browser lässt eine Seite nicht im Hintergrund rechnen, also ist hier nichts auszurechnen. Ein neuerer Browser kann es, oder der Befehl fruitodds.',
  chooseHeading: 'Dateien wählen',
  choose:
    'Eine Zeile für jede bestäubte Blüte, gespeichert als CSV oder als Arbeitsmappe (.xlsx). Eine Liste der Röhrchen mit Pollen und eine der nächste Saison erwarteten Blüten können dazukommen. Jede Datei wird an ihren Spalten erkannt.',
  filesLabel: (bytes: number): string =>
    `Dateien zum Lesen (CSV oder .xlsx, jede bis ${wholeNumber(bytes / 1e6)} MB; auch gespeicherte Einstellungen)`,
  drop: 'Oder irgendwo auf diese Seite ziehen.',
  pasteSummary: 'Stattdessen Zeilen einfügen',
  pasteLabel: 'Zeilen aus der Tabelle, mit der Zeile der Spaltenköpfe',
  pasteButton: 'Eingefügte Zeilen lesen',
  nothingPasted:
    'Noch wurde nichts eingefügt: die Zeilen mit ihren Spaltenköpfen kopieren und in das Feld setzen.',
  remove: (name: string): string => `${name} herausnehmen`,
  sameFile: (name: string): string =>
    `${name} war schon gewählt und ist dieselbe Datei: sie wird einmal gelesen.`,
  replaced: (name: string): string =>
    `${name} steht jetzt an Stelle der vorher gewählten Datei dieses Namens. Um beide zu lesen, einer einen anderen Namen geben.`,
  typedGaveWay: 'Statt der eingetippten Blüten gilt jetzt Ihre Datei.',
  removed: (name: string): string => `${name} wurde herausgenommen.`,
  unreadable: (name: string): string =>
    `${name} ist nicht lesbar: der Browser sagt, die Datei sei gesperrt, verschoben oder nicht zum Lesen freigegeben. In anderen Programmen schließen oder eine Kopie speichern, und noch einmal wählen.`,
  restarted: 'Die Dateien haben sich geändert, während mit ihnen gerechnet wurde; darum beginnt es von vorn.',
  readHeading: 'Was gelesen wurde',
  readSummary: 'Dateien, Spalten und Probleme',
  readRight: 'Stimmt das? Dann ausrechnen lassen.',
  workButton: 'Ausrechnen',
  nothingToMend: 'Nichts zu beheben.',
  columnsSummary: 'Wie die Spalten verstanden wurden',
  columnsCaption: 'Ihre Spalten',
  columnsHeads: ['Ihr Spaltenkopf', 'gelesen als'] as const,
  notUsed: 'nicht verwendet',
  answerButton: 'Mit diesen Antworten noch einmal lesen',
  kindQuestion: (name: string): string => `Was ist ${name}?`,
  columnQuestion: (column: string, name: string): string => `Welche Spalte von ${name} ist ${column}?`,
  noColumn: 'keine davon',
  sameNames: (names: string): string =>
    `Mehrere Züchter haben Pflanzen gleichen Namens (${names}). Sind es dieselben Pflanzen?`,
  sameNo: 'Nein: jede Pflanze jedes Züchters ist eine eigene',
  sameYes: 'Ja: dieselbe Pflanze, wer sie auch zieht',
  workHeading: 'In Arbeit',
  progressLabel: 'Wie weit es ist',
  cancelButton: 'Anhalten',
  cancelled: 'Angehalten. Ihre Dateien sind weiter gelesen; sonst wurde nichts behalten.',
  cancelledBefore: 'Angehalten. Ihre Dateien sind weiter gelesen, und der Bericht von vorher bleibt.',
  cancelledReading: 'Angehalten. Ihre Dateien stehen oben; gelesen wurden sie nicht.',
  readAgainButton: 'Doch lesen',
  countsHeading: 'Erste Antwort, aus den Anzahlen allein',
  countsMore:
    'Das sind die ersten drei Teile Ihres Berichts, so weit Zählen reicht. Der Vergleich von Gleichem mit Gleichem, Alter, Paare und Röhrchen dauern länger: der ganze Bericht tritt dann an ihre Stelle.',
  answerHeading: 'Ihre Saison',
  done: 'Fertig. Ihr Bericht steht unten.',
  settingsSummary: 'Einstellungen: worauf die Antwort beruht',
  worthLabel: 'Wie viele von 100 Blüten müssen ansetzen, damit es sich lohnt?',
  worthHint: 'Leer gelassen: halb so viele wie mit frischem Pollen.',
  useOnLabel: 'Tag, an dem der gelagerte Pollen verwendet werden soll',
  useOnHint: 'Leer gelassen: ein Jahr nach der letzten Bestäubung.',
  endpointLegend: 'Was zählt als Frucht?',
  endpointInitial: 'Eine Frucht, die beim Nachsehen angesetzt hatte',
  endpointFinal: 'Eine Frucht, die geerntet wurde',
  flowersLegend: 'Erwartete Blüten nächste Saison, Pflanze für Pflanze',
  flowersHint: 'Leer gelassen: im Verhältnis der bisherigen Blüten.',
  flowersFromFile: 'Die Blüten der nächsten Saison stehen in Ihrer Datei.',
  againButton: 'Mit diesen Einstellungen ausrechnen',
  wrongWorth: 'Wie viele ansetzen müssen, ist eine Zahl über 0 und unter 100.',
  wrongUseOn: 'Der Tag der Verwendung muss ein Tag sein, den es gibt, als JJJJ-MM-TT.',
  wrongFlowers: (plant: string): string =>
    `Wie viele Blüten zu erwarten sind, ist eine ganze Zahl ab 0. Nicht so bei: ${plant}.`,
  changed: 'Einstellungen oder Dateien wurden geändert, seit dieser Bericht entstand.',
  saveHeading: 'Speichern',
  saveReport: 'Bericht speichern',
  saveSettings: 'Einstellungen speichern',
  saveFlowers: 'Blüten als Datei speichern',
  saveCrosses: 'Bereinigte Kreuzungen speichern',
  saveVials: 'Bereinigte Röhrchen speichern',
  saved: (name: string): string => `${name} wurde Ihrem Browser zum Speichern übergeben.`,
  fault: (cause: string): string =>
    `In fruitodds selbst ging etwas schief: ${cause}. Das ist ein Fehler des Programms, nicht Ihrer Dateien.`,
  promiseHeading: 'Wohin Ihre Datei geht',
  promise: [
    'Ihre Datei wird in diesem Browser gelesen und ausgewertet. Das Programm der Seite sendet nichts und öffnet keine andere Seite, und eine Regel in der Seite lässt den Browser die üblichen Wege verweigern, etwas zu laden oder zu senden. Sie behält nichts: nach dem Neuladen, oder wenn Sie die Seite verlassen, wählen Sie die Dateien neu.',
    'Diese Regel bindet diese Seite und sonst nichts, und sie schließt nicht jeden Weg: Ein verändertes Programm könnte noch eine andere Adresse öffnen. Sie kann weder die Erweiterungen Ihres Browsers binden noch seine Hersteller noch andere Programme auf diesem Computer, und sie gilt nicht in einer Kopie, die jemand verändert hat: nehmen Sie die Seite von dort, wo Sie vertrauen. Was Sie speichern, liegt da, wo Ihr Browser es ablegt.',
  ],
} as const;
