/** Was die Seite für die eigene Datei zu ihren Einstellungen sagt, und zu einer Kopie zum Weitergeben. */

import type { FailureCode, FailureDetails } from '../english-failures.ts';
import { type PageRefusals, pageRefusal } from '../told/page-fixes.ts';
import { failureWords } from './failures.ts';
import { flowersIn } from './nouns.ts';
import { cited } from './problem-sentence.ts';

export const OWN_SETTINGS = {
  more: 'Weitere Einstellungen',
  moreHint: 'Die meisten Saisons brauchen keine davon. Sie gelten beim Ausrechnen.',
  levelLabel: 'Wie viele von 100 Spannen sollen die Wahrheit enthalten?',
  levelHint: 'Leer gelassen: 95.',
  asOfLabel: 'Tag, bis zu dem alles geschehen ist',
  asOfHint:
    'Leer gelassen: der letzte Tag in Ihren Dateien. Er gehört zu dieser Saison, darum wird er nicht mit den Einstellungen gespeichert.',
  ageLegend: 'Wie das Alter des Pollens zählt',
  ageBoth: 'Auf beide Arten, gewichtet nach Ihren eigenen Blüten',
  ageDays: 'Jeder Tag gleich viel',
  ageLog: 'Die ersten Tage am meisten',
  dateLegend: 'Tage, die ein Tabellenprogramm als Zahl geschrieben hat, etwa 45809',
  dateUnsaid: 'Gezählt, wie die Datei es sagt, sonst ab 1900',
  date1900: 'Gezählt ab 1900',
  date1904: 'Gezählt ab 1904, wie in älteren Tabellen von einem Mac',
  map: {
    legend: 'Eine eigene Spalte, die nicht verstanden wurde',
    first: 'Eigene Spalte',
    second: 'Was sie enthält',
    flowers: null,
    add: 'So lesen',
    said: (header: string, column: string): string => `${cited(header)} ist ${column}`,
  },
  same: {
    legend: 'Zwei Namen einer Pflanze',
    first: 'Name, der bleibt',
    second: 'Anderer Name',
    flowers: null,
    add: 'Diese Namen aufnehmen',
    said: (first: string, second: string): string => `${second} ist ${first}`,
  },
  must: {
    legend: 'Kreuzungen, die nächste Saison zu versuchen sind',
    first: 'Mutterpflanze',
    second: 'Pollenspender',
    flowers: 'Mindestens so viele Blüten',
    add: 'Diese Kreuzung aufnehmen',
    said: (names: string, flowers: number): string => `${names}: mindestens ${flowersIn(flowers)}`,
  },
  atMost: {
    legend: 'Höchstzahl der Blüten für einen Pollenspender',
    first: 'Pollenspender',
    second: 'Auf welcher Mutterpflanze',
    flowers: 'Höchstens so viele Blüten',
    add: 'Diese Grenze aufnehmen',
    said: (names: string, flowers: number): string => `${names}: höchstens ${flowersIn(flowers)}`,
  },
  wishHint: 'Das gilt für den Plan; er braucht die Blüten, die nächste Saison zu erwarten sind.',
  anySeedParent: 'allen zusammen',
  choosePlant: 'wählen',
  takeOut: (what: string): string => `Herausnehmen: ${what}`,
  incomplete: {
    map: 'Erst die eigene Spalte wählen, und was sie enthält.',
    same: 'Erst zwei verschiedene Namen wählen.',
    must: 'Beide Eltern wählen, und eine ganze Zahl von Blüten ab 1.',
    atMost: 'Den Pollenspender wählen, und eine ganze Zahl von Blüten.',
  },
  alike: (kept: string, other: string): string => `Sind ${cited(kept)} und ${cited(other)} dieselbe Pflanze?`,
  alikeYes: (kept: string): string => `Ja: eine Pflanze, ${cited(kept)}`,
  alikeNo: 'Nein: zwei Pflanzen',
  wrongLevel: 'Wie viele Spannen die Wahrheit enthalten, ist eine Zahl über 0 und unter 100.',
  wrongAsOf: 'Der Tag, bis zu dem alles geschehen ist, muss ein Tag sein, den es gibt, als JJJJ-MM-TT.',
  fileRead: (name: string): string => `Es gelten die Einstellungen aus ${name}.`,
} as const;

export const OWN_SHARING = {
  summary: 'Eine Kopie zum Weitergeben machen',
  what: 'In einer verschlüsselten Kopie stehen Pflanzen, Röhrchen, Etiketten und Züchter unter Codes, jedes Datum ist um dieselbe Zahl von Tagen verschoben, und Notizen fehlen. Alter, Morgen und Anzahlen bleiben wahr.',
  legend: 'Was gezeigt werden darf',
  codes: 'Jede Kreuzung, unter Codes; andere können sie neu lesen und auswerten',
  summaryOnly: 'Nur die Zusammenfassung: nichts über einzelne Pflanzen, Paare und Röhrchen',
  keyLabel: 'Die Schlüsseldatei einer früheren Kopie, damit dieselben Pflanzen ihre Codes behalten',
  keyHint: 'Leer gelassen: es entsteht ein neuer Schlüssel.',
  button: 'Kopie machen',
  making: 'Die Kopie wird aus ihren eigenen Dateien ausgerechnet; das dauert etwa so lange wie der Bericht.',
  stop: 'Anhalten',
  stopped: 'Angehalten. Es entstand keine Kopie.',
  ready:
    'In der Kopie wurde nach Ihren Namen, Daten und Notizen gesucht: nichts davon steht darin. Speichern Sie ihre Dateien, und den Schlüssel getrennt davon.',
  save: (name: string): string => `${name} speichern`,
  saveKey: 'Den Schlüssel speichern, nur für Sie selbst',
  keyRead: (name: string): string =>
    `${name} ist der Schlüssel verschlüsselter Kopien: die nächste Kopie verwendet ihn.`,
} as const;

const SAVED_SETTINGS =
  'Eine Datei mit Einstellungen wählen, die diese Seite oder der Befehl gespeichert hat.';

const REFUSALS: PageRefusals<FailureCode, FailureDetails> = {
  failureWords,
  options: {
    '--must': `„${OWN_SETTINGS.must.legend}“`,
    '--at-most': `„${OWN_SETTINGS.atMost.legend}“`,
    '--worth': '„Wie viele ansetzen müssen“',
    '--level': '„Wie viele Spannen die Wahrheit enthalten“',
  },
  fixes: {
    'wish-without-flowers':
      'Unter „Erwartete Blüten nächste Saison“ sagen, was jede Pflanze bieten wird, oder den Wunsch herausnehmen.',
    'wish-unclear': 'Einer der Pflanzen in der Tabelle einen anderen Namen geben.',
    'plant-unknown': 'Den Wunsch herausnehmen, und die Pflanze aus der Liste wählen.',
    'option-value': 'In der Datei der Einstellungen berichtigen, und diese Datei noch einmal wählen.',
    'settings-not-json': SAVED_SETTINGS,
    'settings-version': SAVED_SETTINGS,
    'key-not-ours': 'Den Schlüssel wählen, der mit einer früheren Kopie gespeichert wurde, oder keinen.',
    'dates-too-far': 'Die Daten berichtigen, oder die Kopie mit einem neuen Schlüssel machen.',
  },
};

export function refusedOnPage(code: FailureCode, details: FailureDetails): string {
  return pageRefusal(code, details, REFUSALS);
}
