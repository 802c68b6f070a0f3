/** Was der Befehl neben seinen Ergebnissen sagt. */

import type { SeasonFile } from '../../season/season.ts';
import { fileSize } from './file-size.ts';
import { filesIn, rowsIn } from './nouns.ts';
import { counted, joined, wholeNumber } from './numbers.ts';

const LABELS: ReadonlyMap<string, string> = new Map([
  ['results.json', 'Alle Ergebnisse, für Programme (JSON)'],
  ['crosses.csv', 'Die Kreuzungen, wie sie verstanden wurden (CSV)'],
  ['vials.csv', 'Die Röhrchen, wie sie verstanden wurden (CSV)'],
  ['flowers.csv', 'Die erwarteten Blüten, wie sie verstanden wurden (CSV)'],
  ['datapackage.json', 'Was die Spalten dieser Dateien bedeuten (JSON)'],
  ['coded-crosses.csv', 'Die Kreuzungen unter Codes, zum erneuten Lesen (CSV)'],
  ['coded-vials.csv', 'Die Röhrchen unter Codes (CSV)'],
  ['coded-flowers.csv', 'Die erwarteten Blüten unter Codes (CSV)'],
]);

export const commandWords = {
  working: 'In Arbeit …',
  wrote: (file: string): string => `Geschrieben: ${file}.`,
  standardInput: 'Standardeingabe',
  wroteTo: (folder: string, names: readonly string[]): string =>
    `Nach ${folder} geschrieben: ${joined(names)}.`,
  wroteRows: (rows: number, folder: string, names: readonly string[]): string =>
    `${rowsIn(rows)} nach ${folder} geschrieben: ${joined(names)}.`,
  notWritten: (rows: number, columns: number): string => {
    const parts = [
      ...(rows > 0 ? [`${rowsIn(rows)} mit Fehlern`] : []),
      ...(columns > 0 ? [counted(columns, 'eigene Spalte', 'eigene Spalten')] : []),
    ];
    return parts.length === 0 ? '' : `Nicht darin: ${joined(parts)}; problems.csv nennt sie einzeln.`;
  },
  keyKept: (file: string): string =>
    `Die Namen stehen in ${file}: diese Datei nicht weitergeben. Für die nächste Kopie wieder verwenden, mit --key.`,
  savedSettings: (file: string): string =>
    `fruitodds: Einstellungen in ${file} gespeichert; nächstes Mal --settings ${file} angeben`,
  wroteSite: (files: number, bytes: number, folder: string): string =>
    `${filesIn(files)} (${fileSize(bytes)}) nach ${folder} geschrieben: dort index.html öffnen.`,
  pageLeftOut: (page: string, packageName: string): string =>
    `fruitodds: die Seite ${page} fehlt, weil das Paket ${packageName} nicht installiert ist.`,
  useOnPast: (useOn: string, last: string): string =>
    `fruitodds: --use-on ${useOn} liegt vor der letzten Bestäubung, ${last}: zu Röhrchen wird für einen vergangenen Tag geraten. ` +
    'Ein späteres --use-on angeben, oder es aus den Einstellungen nehmen.',
  problems: (errors: number, warnings: number): string => {
    const parts = [
      ...(errors > 0 ? [counted(errors, 'Fehler', 'Fehler')] : []),
      ...(warnings > 0 ? [counted(warnings, 'Warnung', 'Warnungen')] : []),
    ];
    return parts.length === 0
      ? ''
      : `fruitodds: ${joined(parts)} in den Dateien; fruitodds check nennt jeden Fund.`;
  },
  mendFirst: 'Beheben, was check genannt hat, und noch einmal aufrufen.',
  downloadLabel: (name: string): string => LABELS.get(name) ?? name,
  chartFileLabel: (chart: string): string => `Das Bild „${chart}“ für Programme (Vega-Lite)`,
};

const KINDS: Readonly<Record<string, string>> = {
  crosses: 'Kreuzungen',
  vials: 'Röhrchen',
  flowers: 'erwartete Blüten',
};

/** Welcher Art eine Datei ist. */
export function fileKind(kind: string): string {
  return KINDS[kind] ?? 'keine unserer Dateien';
}

export const checkWords = {
  rows: ({ kind, rows, used, leftOut }: Pick<SeasonFile, 'kind' | 'rows' | 'used' | 'leftOut'>): string =>
    `${fileKind(kind)}, ${rowsIn(rows)}, ${wholeNumber(used)} verwendet, ${wholeNumber(leftOut)} ausgelassen`,
  toMend: (fix: string): string => `Abhilfe: ${fix}`,
  nothing: 'Nichts zu beheben.',
  errors: 'Fehler: was sie nennen, ist ausgelassen',
  warnings: 'Warnungen: die Zeilen werden verwendet',
  noticed: 'Bemerkt: nichts zu beheben, wenn es stimmt',
  leftOut: 'Ausgelassen, nach Grund',
  leftOutFor: (rows: number, reason: string, listed: string): string =>
    `${rowsIn(rows)}: ${reason}${listed && ` (${listed.includes(',') ? 'Zeilen' : 'Zeile'} ${listed})`}`,
  leftOutRow: (row: number, reason: string): string => `Zeile ${row} ist ausgelassen: ${reason}`,
  mendOutcome: 'Nichts zu tun; sobald das Ergebnis bekannt ist, es eintragen.',
};
