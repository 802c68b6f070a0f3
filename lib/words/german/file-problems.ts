/** Was an einer ganzen Datei nicht stimmt, und was zu tun ist. */

import type { FileProblemCode } from '../../season/problems.ts';
import type { Problem } from '../../season/season.ts';
import type { ProblemSentence } from '../problem-sentence.ts';
import { cited, dateOrderName } from './problem-sentence.ts';

const column = ({ column: header }: Problem): string => `Die Spalte ${cited(header)}`;
const megabytes = (bytes: string | number | undefined): string => `${Math.ceil(Number(bytes) / 1e6)} MB`;
const mapOption = (header: string | number | null, name: string | number): string =>
  `--map "${header}=${name}"`;

const citedList = ({ cells, more }: Problem['details']): string => {
  const shown = String(cells).split('\n').map(cited).join(', ');
  return more ? `${shown} und ${more} weitere` : shown;
};

const OWN_FILES: Readonly<Record<string, string>> = {
  findings: 'eine Liste von Befunden (check oder clean)',
  columns: 'die Tabelle, die die Spalten erklärt (template)',
  description: 'die Beschreibung bereinigter Dateien (clean)',
  results: 'ein Ergebnis als JSON',
  key: 'der Schlüssel einer Kopie mit Codes: ihn für sich behalten',
};

const FORMATS: Readonly<Record<string, string>> = {
  pdf: 'ein PDF-Dokument',
  html: 'eine Webseite',
  json: 'JSON',
  rtf: 'ein Textdokument (RTF)',
  picture: 'ein Bild',
  document: 'ein Textdokument (.docx, .doc, .odt)',
  slides: 'eine Präsentation (.pptx, .ppt, .odp)',
  archive: 'ein gepackter Ordner (.zip)',
};

const SHEETS: Readonly<Record<string, string>> = {
  xls: 'eine ältere Arbeitsmappe (.xls)',
  xlsb: 'eine binäre Arbeitsmappe (.xlsb)',
  ods: 'eine OpenDocument-Tabelle (.ods)',
  numbers: 'eine Numbers-Tabelle (.numbers)',
};

const orderEvidence = ({ value, details: { order, row, rival, byYear } }: Problem): string =>
  [
    ...(rival ? [`${cited(value)} in Zeile ${row} nicht ${dateOrderName(rival)} sein kann`] : []),
    ...(byYear === 'yes'
      ? [`die ${order === 'ymd' ? 'erste' : 'letzte'} Zahl sich am wenigsten ändert, wie ein Jahr`]
      : []),
  ].join(' und ');

/** Die Art der Datei: als was sie angegeben wurde, und im Genitiv. */
const KINDS: Readonly<Record<string, readonly [nominative: string, genitive: string]>> = {
  crosses: ['Kreuzungsdatei', 'einer Kreuzungsdatei'],
  vials: ['Röhrchendatei', 'einer Röhrchendatei'],
  flowers: ['Blütendatei', 'einer Blütendatei'],
};
const kind = (code: string | number | undefined): string => KINDS[String(code)]?.[0] ?? 'Datei';

const NOTHING = 'Wenn das stimmt, ist nichts zu tun.';
const CSV_OR_XLSX = 'als .xlsx oder CSV (UTF-8)';

export const FILE_PROBLEMS: Readonly<Record<FileProblemCode, ProblemSentence>> = {
  'file-empty': () => [
    'Die Datei ist leer.',
    'Nachsehen, ob es die richtige Datei ist: in der ersten Zeile stehen die Spaltenköpfe, in jeder Zeile darunter eine Blüte, ein Röhrchen oder eine Pflanze.',
  ],
  'file-too-large': ({ details }) => [
    `Die Datei hat ${megabytes(details.bytes)}; lesbar sind Dateien bis ${megabytes(details.most)}.`,
    'Die Kreuzungen von weniger Saisons angeben, oder das Blatt ohne seine übrigen Spalten und die übrigen Blätter.',
  ],
  'file-repeated': ({ details }) => [
    `Die Datei enthält dasselbe wie ${details.earlier}; die ist schon gelesen.`,
    'Jede Datei einmal angeben.',
  ],
  'no-rows': () => [
    'Die Datei hat Spaltenköpfe, aber keine Zeile darunter.',
    'Für jede Blüte, jedes Röhrchen oder jede Pflanze eine Zeile schreiben.',
  ],
  'nothing-entered': () => [
    'Noch ist keine Blüte eingetragen: in jeder Zeile fehlen Bestäubungsdatum und Ergebnis.',
    'pollination_date eintragen, wenn der Pollen aufgetragen wird, und outcome, wenn es sich zeigt: fruit, dropped, none, unknown (Etikett verloren) oder pending (noch zu früh).',
  ],
  'not-text': () => [
    'Die Datei ist kein Text.',
    'Das Blatt als CSV (UTF-8) speichern und diese Datei angeben.',
  ],
  'spreadsheet-file': ({ details }) => [
    `Die Datei ist ${SHEETS[details.format] ?? 'die eines anderen Programms'} und hier nicht lesbar.`,
    `Im eigenen Programm öffnen, „Speichern unter“ oder „Exportieren“ ${CSV_OR_XLSX} wählen und diese Datei angeben.`,
  ],
  'other-format': ({ details }) => [
    `Die Datei ist ${FORMATS[details.format]} und keine Tabelle, wie auch immer sie heißt.`,
    `Die Liste selbst in ihrer Tabellenkalkulation öffnen, ${CSV_OR_XLSX} speichern und diese Datei angeben.`,
  ],
  'own-file': ({ details }) => [
    `Die Datei hat fruitodds geschrieben, und sie enthält keine Blüten; sie wird übergangen. Sie ist ${OWN_FILES[details.own]}.`,
    'Nichts zu tun.',
  ],
  'workbook-broken': () => [
    'Die Arbeitsmappe ist beschädigt: sie lässt sich nicht entpacken, oder ihre Teile sind nicht, was sie sein sollten.',
    `In ihrer Tabellenkalkulation öffnen und noch einmal speichern, ${CSV_OR_XLSX}.`,
  ],
  'workbook-locked': () => [
    'Die Arbeitsmappe ist mit einem Passwort gesperrt.',
    'In ihrer Tabellenkalkulation öffnen und ohne Passwort speichern, oder als CSV (UTF-8).',
  ],
  'workbook-too-large': ({ details }) => [
    `Die Arbeitsmappe ist zu groß: entpackt enthält sie mehr als ${megabytes(details.most)} oder ${Number(details.cells) / 1e6} Millionen Zellen.`,
    'Nur das Blatt mit den Blüten als CSV (UTF-8) speichern und diese Datei angeben.',
  ],
  'rows-hidden': ({ details }) => [
    details.rows === 1
      ? 'Eine Zeile des Blatts ist ausgeblendet oder herausgefiltert; sie wird gelesen wie die anderen.'
      : `${details.rows} Zeilen des Blatts sind ausgeblendet oder herausgefiltert; sie werden gelesen wie die anderen.`,
    'Löschen, was nicht gemeint ist.',
  ],
  'cells-merged': ({ value }) => [
    `Über mehrere Zeilen verbundene Zellen (${cited(value)}) gelten für jede dieser Zeilen.`,
    NOTHING,
  ],
  'sheet-read': ({ details }) => [
    `Das Blatt ${cited(details.sheet)} der Arbeitsmappe wird gelesen${details.others ? `; übergangen: ${cited(details.others)}` : ''}.`,
    details.others
      ? 'Wird eines davon gebraucht, unsere Spaltennamen als seine Spaltenköpfe schreiben.'
      : 'Es ist nichts zu tun.',
  ],
  'kind-unknown': ({ details }) => [
    `Die Spalten der Datei (${cited(details.headers)}) sind weder die von Kreuzungen noch von Röhrchen noch von erwarteten Blüten.`,
    'Prüfen, ob die erste Zeile die Spaltenköpfe enthält; eine Kreuzungsdatei hat cross_id, pollination_date, seed_parent, ' +
      'pollen_parent, storage und outcome. Für andere Köpfe: --map "EIGENER KOPF=Spalte".',
  ],
  'kind-differs': ({ details }) => [
    `Die Datei wurde als ${kind(details.said)} angegeben, aber ihre Spalten sind die ${KINDS[details.kind]?.[1]}.`,
    details.kind === 'crosses'
      ? `Ohne --${details.said} angeben, und dort die ${kind(details.said)} nennen.`
      : `Mit --${details.kind} angeben, oder ganz ohne Option: die Art einer Datei ergibt sich aus ihren Spalten.`,
  ],
  'column-missing': ({ details }) => [
    `Der Datei (${kind(details.kind)}) fehlt eine Spalte für ${details.column}; keine ihrer Zeilen ist verwendbar.`,
    `Eine Spalte ${details.column} ergänzen, oder sagen, welche der eigenen es ist: ${mapOption(details.suggestion || 'EIGENER KOPF', details.column)}.`,
  ],
  'column-unclear': ({ details }) => [
    details.same === 'yes'
      ? `Zwei Spalten heißen ${cited(details.first)}, und jede könnte ${details.column} sein.`
      : `Sowohl ${cited(details.first)} als auch ${cited(details.second)} könnte ${details.column} sein.`,
    details.same === 'yes'
      ? 'Die nicht gemeinte umbenennen.'
      : `Sagen, welche gemeint ist: ${mapOption(details.first, details.column)} oder ${mapOption(details.second, details.column)}.`,
  ],
  'column-unknown': (problem) => [
    `${column(problem)} wird nicht verwendet.`,
    problem.details.suggestion
      ? `Enthält sie ${problem.details.suggestion}, das so sagen: ${mapOption(problem.column, problem.details.suggestion)}.`
      : `Enthält sie etwas Nötiges, mit dem Namen einer unserer Spalten sagen, was: ${mapOption(problem.column, 'Spalte')}.`,
  ],
  'columns-unknown': ({ details }) => [
    `${details.more} weitere Spalten werden nicht verwendet.`,
    'Nachsehen, ob das richtige Trennzeichen und die richtige Datei genommen wurden.',
  ],
  'column-without-header': ({ details }) => [
    `Spalte ${details.position} hat Zellen, aber keinen Kopf, und wird nicht verwendet.`,
    'Einen Kopf darüber schreiben, oder sie leeren.',
  ],
  'column-guessed': (problem) => [
    `${column(problem)} wird als ${problem.details.column} gelesen.`,
    `Stimmt das nicht, die Spalte umbenennen, oder sagen, was sie ist: ${mapOption(problem.column, 'Spalte')}.`,
  ],
  'date-order-unclear': (problem) => {
    const { details, value } = problem;
    return [
      `${column(problem)} verrät nicht, welche Zahl der Tag ist: ${cited(value)} in Zeile ${details.row} ist ` +
        `${details.first}, gelesen als ${dateOrderName(details.firstOrder)}, aber ${details.second} als ${dateOrderName(details.secondOrder)}.`,
      `Sagen, was gilt: --date-order ${details.firstOrder} oder --date-order ${details.secondOrder}.`,
    ];
  },
  'date-order-mixed': (problem) => {
    const { details } = problem;
    return [
      `${column(problem)} mischt zwei Schreibweisen von Daten: ${cited(details.firstAgainst)} in Zeile ${details.firstRow} ` +
        `kann nicht ${dateOrderName(details.firstOrder)} sein, und ${cited(details.secondAgainst)} in Zeile ${details.secondRow} ` +
        `nicht ${dateOrderName(details.secondOrder)}.`,
      'Alle Daten als JJJJ-MM-TT schreiben. Oder mit --date-order sagen, welche Reihenfolge gilt: anders geschriebene Zeilen sind dann ausgelassen.',
    ];
  },
  'date-order-decided': (problem) => [
    `Daten in ${cited(problem.column)} werden als ${dateOrderName(problem.details.order)} gelesen, weil ${orderEvidence(problem)}.`,
    'Stimmt das nicht, --date-order angeben.',
  ],
  'date-order-from-neighbour': (problem) => [
    `Daten in ${cited(problem.column)} werden als ${dateOrderName(problem.details.order)} gelesen, wie die übrigen Daten der Datei.`,
    'Stimmt das nicht, --date-order angeben oder die Daten als JJJJ-MM-TT schreiben.',
  ],
  'date-serial-read': ({ column: header, details, value }) => [
    `${cited(header)} enthält die eigenen Tageszahlen einer Tabellenkalkulation: ${cited(value)} in Zeile ${details.row} wird als ${details.date} gelesen.`,
    details.system === 1900
      ? 'Sind alle vier Jahre zu früh, --date-system 1904 angeben; sonst ist nichts zu tun.'
      : 'Sind alle vier Jahre zu spät, --date-system 1900 angeben; sonst ist nichts zu tun.',
  ],
  'two-digit-years': (problem) => [
    `Jahre in ${cited(problem.column)} haben zwei Ziffern (${cited(problem.value)} in Zeile ${problem.details.row}): ` +
      '00 bis 69 gelten als 2000 bis 2069, 70 bis 99 als 1970 bis 1999.',
    'Jahre mit vier Ziffern schreiben.',
  ],
  'encoding-guessed': ({ details, value }) => [
    value === null
      ? `Die Datei sagt nicht, wie ihre Buchstaben kodiert sind; sie wird als ${details.encoding} gelesen.`
      : `Die Datei ist nicht UTF-8; sie wird als ${details.encoding} gelesen. Bitte nachsehen, ob das hier stimmt: ${citedList(details)}.`,
    'Sieht etwas davon falsch aus, das Blatt als CSV (UTF-8) oder .xlsx speichern.',
  ],
  'title-lines': ({ details, row }) => [
    `Die Spaltenköpfe stehen in Zeile ${row}; ${details.titles === 1 ? 'eine Zeile' : `${details.titles} Zeilen`} darüber ` +
      `${details.titles === 1 ? 'wird' : 'werden'} übergangen.`,
    'Steht dort nur ein Titel, ist nichts zu tun.',
  ],
  'lines-quoted': () => [
    'Jede Zeile der Datei steht als Ganzes in Anführungszeichen; gelesen wird, als wären diese nicht da.',
    NOTHING,
  ],
  'table-sideways': () => [
    'Die Spaltenköpfe der Datei stehen in ihrer ersten Spalte, nicht in einer Zeile.',
    'Die Tabelle in der Tabellenkalkulation drehen (kopieren, dann transponiert einfügen) und noch einmal speichern.',
  ],
  'parents-in-one': (problem) => [
    `${column(problem)} enthält beide Eltern in einer Zelle, wie in ${cited(problem.value)}.`,
    'In zwei Spalten teilen, seed_parent (die Mutter) und pollen_parent (der Vater).',
  ],
  'map-header-missing': ({ details, value }) => [
    `Keine Datei hat eine Spalte ${cited(value)}, die als ${details.column} gelesen werden sollte.`,
    'Prüfen, wie der Kopf in der Datei geschrieben ist.',
  ],
  'storage-word-missing': ({ value, details }) => [
    `Keine Datei hat eine Lagerung namens ${cited(value)}, die als ${details.method} gelesen werden sollte.`,
    'Prüfen, wie das Wort in den Dateien geschrieben ist.',
  ],
  'same-name-missing': ({ value }) => [
    `Keine Datei hat eine Pflanze namens ${cited(value)}, die mit einer anderen gleich sein sollte.`,
    'Prüfen, wie der Name in der Datei geschrieben ist, auch große Buchstaben und Leerzeichen.',
  ],
};
