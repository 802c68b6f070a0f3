/** Das Verzeichnis dessen, was an einer ganzen Datei nicht stimmen kann. */

import type { FileProblemCode } from '../../season/problems.ts';
import type { EntryParts } from '../catalogue-entry.ts';

export const LEFT_OUT = 'Die Zeile wird ausgelassen.';
export const USED = 'Die Zeile wird verwendet.';
export const NO_ROW = 'Keine Zeile der Datei wird verwendet.';
export const ALL_USED = 'Alle Zeilen werden verwendet.';
export const IF_NEEDED =
  'Die Zeile wird ausgelassen, wo die Spalte nötig ist; sonst wird sie ohne die Zelle verwendet.';
export const WITHOUT_CELL = 'Die Zeile wird ohne diese Zelle verwendet.';
export const FINE = 'Nichts, wenn es stimmt.';

const ASKED = 'Keine Zeile der Datei wird verwendet, bis Sie antworten.';
const MAP = '--map "EIGENER KOPF=Spalte"';
const CSV = 'als .xlsx oder CSV (UTF-8)';

export const FILE_ENTRIES: Readonly<Record<FileProblemCode, EntryParts>> = {
  'file-empty': [
    'error',
    'In der Datei steht nichts.',
    NO_ROW,
    'Das Blatt noch einmal speichern.',
    'eine Datei aus leeren Zeilen',
  ],
  'file-too-large': [
    'error',
    'Die Datei hat mehr Bytes, als gelesen werden können.',
    NO_ROW,
    'Weniger Saisons auf einmal angeben, oder das Blatt ohne seine übrigen Spalten.',
    'eine Datei von mehreren hundert MB',
  ],
  'file-repeated': [
    'error',
    'Dieselbe Datei wurde zweimal angegeben.',
    'Die Zeilen der zweiten werden nicht verwendet; die der ersten schon.',
    'Jede Datei einmal angeben.',
    'crosses.csv und eine Kopie davon',
  ],
  'no-rows': [
    'error or warning',
    'Es gibt Spaltenköpfe, aber keine Zeile darunter.',
    'Es gibt keine zu verwenden.',
    'Für jede Blüte, jedes Röhrchen oder jede Pflanze eine Zeile schreiben.',
    'eine leere Vorlage',
  ],
  'nothing-entered': [
    'error',
    'Das Blatt ist noch auszufüllen: keine Zeile hat ein Bestäubungsdatum oder ein Ergebnis.',
    NO_ROW,
    'pollination_date und outcome ausfüllen.',
    'ein Kreuzungsblatt, wie es geschrieben wurde',
  ],
  'not-text': [
    'error',
    'Die Datei ist kein Text, also kein CSV.',
    NO_ROW,
    'Das Blatt als CSV (UTF-8) speichern und diese Datei angeben.',
    'eine Fotografie',
  ],
  'spreadsheet-file': [
    'error',
    'Die Datei gehört einem anderen Programm und ist hier nicht lesbar.',
    NO_ROW,
    `Dort öffnen und ${CSV} speichern.`,
    'season.xls',
  ],
  'other-format': [
    'error',
    'Die Datei ist ein PDF, eine Webseite, ein Bild oder dergleichen und keine Tabelle.',
    NO_ROW,
    `Die Liste selbst ${CSV} speichern und diese Datei angeben.`,
    'ein PDF, das crosses.csv genannt wurde',
  ],
  'own-file': [
    'notice',
    'Die Datei hat fruitodds geschrieben, und sie enthält keine Blüten: Befunde, erklärte Spalten, eine Beschreibung, ein Ergebnis, ein Schlüssel.',
    NO_ROW,
    'Nichts.',
    'problems.csv von fruitodds clean',
  ],
  'workbook-broken': [
    'error',
    'Die Arbeitsmappe ist beschädigt.',
    NO_ROW,
    `In ihrer Tabellenkalkulation öffnen und noch einmal speichern, ${CSV}.`,
    'eine halbe Datei',
  ],
  'workbook-locked': [
    'error',
    'Die Arbeitsmappe ist mit einem Passwort gesperrt.',
    NO_ROW,
    'Ohne Passwort speichern, oder als CSV (UTF-8).',
    'eine gesperrte season.xlsx',
  ],
  'workbook-too-large': [
    'error',
    'Die Arbeitsmappe ist entpackt zu groß.',
    NO_ROW,
    'Nur das Blatt mit den Blüten als CSV (UTF-8) speichern.',
    'eine Arbeitsmappe vieler Jahre',
  ],
  'rows-hidden': [
    'notice',
    'Zeilen eines Blatts sind ausgeblendet oder herausgefiltert.',
    'Sie werden verwendet wie die anderen.',
    'Löschen, was nicht gemeint ist.',
    'ein Filter auf eine Pflanze, der noch gesetzt ist',
  ],
  'cells-merged': [
    'notice',
    'Zellen eines Blatts sind über mehrere Zeilen verbunden.',
    'Alle Zeilen werden verwendet, jede mit der verbundenen Zelle.',
    FINE,
    'ein Datum, verbunden über die Blüten eines Morgens',
  ],
  'sheet-read': [
    'notice',
    'Ein Blatt einer Arbeitsmappe wird gelesen, die anderen werden übergangen.',
    ALL_USED,
    'Nichts, wenn es das richtige ist; sonst unsere Spaltennamen als seine Spaltenköpfe schreiben.',
    'Saison 2025 neben Notizen',
  ],
  'kind-unknown': [
    'error',
    'Die Spaltenköpfe sind weder die von Kreuzungen noch von Röhrchen noch von erwarteten Blüten.',
    NO_ROW,
    `Prüfen, ob die Spaltenköpfe in einer Zeile stehen; sagen, was eigene Köpfe bedeuten: ${MAP}.`,
    'Name, Preis',
  ],
  'kind-differs': [
    'error',
    'Die Datei wurde als eine andere Art angegeben, als ihre Spalten sagen.',
    NO_ROW,
    'Die Option weglassen: die Art einer Datei ergibt sich aus ihren Spalten.',
    '--vials crosses.csv',
  ],
  'column-missing': [
    'error',
    'Eine Spalte, die jede Zeile braucht, ist nicht da.',
    NO_ROW,
    `Ergänzen, oder sagen, welche der eigenen es ist: ${MAP}.`,
    'eine Kreuzungsdatei ohne outcome',
  ],
  'column-unclear': [
    'error',
    'Zwei Spalten könnten dieselbe der unseren sein.',
    ASKED,
    `Die nicht gemeinte umbenennen, oder sagen, welche es ist: ${MAP}.`,
    'Mutter und Weibchen in einer Datei',
  ],
  'column-unknown': [
    'notice',
    'Eine Spalte ist keine bekannte.',
    `${ALL_USED} Die Spalte wird nicht gelesen.`,
    `Nichts, wenn sie für Sie selbst ist; sonst sagen, was sie ist: ${MAP}.`,
    'Mond',
  ],
  'columns-unknown': [
    'notice',
    'Es gibt viele Spalten, die nicht bekannt sind.',
    `${ALL_USED} Die Spalten werden nicht gelesen.`,
    'Nachsehen, ob die richtige Datei und das richtige Trennzeichen genommen wurden.',
    'eine Datei mit 10 000 Spalten',
  ],
  'column-without-header': [
    'notice',
    'Eine Spalte hat Zellen, aber keinen Kopf.',
    `${ALL_USED} Die Spalte wird nicht gelesen.`,
    'Einen Kopf darüber schreiben, oder sie leeren.',
    'eine Notiz neben der Tabelle',
  ],
  'column-guessed': [
    'notice',
    'Ein eigener Spaltenkopf wird als eine unserer Spalten gelesen.',
    ALL_USED,
    `Nichts, wenn es stimmt; sonst umbenennen, oder sagen, was sie ist: ${MAP}.`,
    'Mutter gelesen als seed_parent',
  ],
  'date-order-unclear': [
    'error',
    'Die Daten einer Spalte lassen sich auf zwei Weisen lesen, und keines verrät, welche gilt.',
    ASKED,
    'Sagen, welche: --date-order dmy, mdy oder ymd.',
    '03/04/2025',
  ],
  'date-order-mixed': [
    'error',
    'Die Daten einer Spalte sind in zwei Reihenfolgen geschrieben.',
    ASKED,
    'Alle als JJJJ-MM-TT schreiben; oder --date-order angeben: Zeilen in der anderen Reihenfolge sind dann ausgelassen.',
    '25/04/2025 und 04/26/2025',
  ],
  'date-order-decided': [
    'notice',
    'Ein Datum einer Spalte, oder ihre Jahre, zeigen, in welcher Reihenfolge alle geschrieben sind.',
    ALL_USED,
    'Nichts, wenn es stimmt; sonst --date-order angeben.',
    '25/04/2025',
  ],
  'date-order-from-neighbour': [
    'notice',
    'Die Daten einer Spalte verraten ihre Reihenfolge nicht; die einer anderen Spalte schon.',
    ALL_USED,
    'Nichts, wenn es stimmt; sonst --date-order angeben.',
    '03/04/2025 neben 25/06/2025',
  ],
  'date-serial-read': [
    'notice',
    'Eine Spalte enthält die eigenen Tageszahlen einer Tabellenkalkulation.',
    ALL_USED,
    'Nichts, wenn die Tage stimmen; bei vier Jahren Abstand --date-system 1904 oder 1900 angeben.',
    '45809 gelesen als 2025-06-01',
  ],
  'two-digit-years': [
    'notice',
    'Jahre sind mit zwei Ziffern geschrieben: 00 bis 69 sind 2000 bis 2069, 70 bis 99 sind 1970 bis 1999.',
    ALL_USED,
    'Jahre mit vier Ziffern schreiben.',
    '03.04.25',
  ],
  'encoding-guessed': [
    'notice',
    'Die Datei ist nicht UTF-8, darum werden ihre besonderen Buchstaben erraten; die Namen mit solchen werden gezeigt.',
    ALL_USED,
    'Sehen Namen falsch aus, das Blatt als CSV (UTF-8) speichern.',
    'Zoë',
  ],
  'title-lines': [
    'notice',
    'Über den Spaltenköpfen stehen Zeilen.',
    `${ALL_USED} Die Zeilen darüber werden übergangen.`,
    'Nichts, wenn sie nur ein Titel sind.',
    'Meine Saison 2025',
  ],
  'lines-quoted': [
    'notice',
    'Jede Zeile steht als Ganzes in Anführungszeichen.',
    `${ALL_USED} Gelesen wird, als wären die Zeichen nicht da.`,
    FINE,
    '"T-001,2026-06-20,Lantern Creek"',
  ],
  'table-sideways': [
    'error',
    'Die Spaltenköpfe stehen in der ersten Spalte, und jede Blüte in einer eigenen Spalte.',
    NO_ROW,
    'Die Tabelle drehen: kopieren und transponiert einfügen.',
    'cross_id, T-001, T-002',
  ],
  'parents-in-one': [
    'error',
    'Eine Spalte enthält beide Eltern.',
    NO_ROW,
    'In zwei Spalten teilen, die Mutter und den Vater.',
    'Lantern Creek × Salt Moon',
  ],
  'map-header-missing': [
    'warning',
    'Keine Datei hat den Spaltenkopf, den --map nennt.',
    ALL_USED,
    'Prüfen, wie der Kopf in der Datei geschrieben ist.',
    '--map "Muter=seed_parent"',
  ],
  'storage-word-missing': [
    'warning',
    'Keine Datei hat das Wort für die Lagerung, das --storage nennt.',
    ALL_USED,
    'Prüfen, wie das Wort in den Dateien geschrieben ist.',
    '--storage "cool bx=refrigerated"',
  ],
  'same-name-missing': [
    'warning',
    'Keine Datei hat den Namen, den --same nennt.',
    ALL_USED,
    'Prüfen, wie der Name in der Datei geschrieben ist.',
    '--same "Salt Moon=salt mon"',
  ],
};
