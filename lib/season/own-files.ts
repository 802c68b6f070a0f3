/** Files that this program wrote and that hold no flowers, told by how they begin: whoever gives a whole folder gives them too. */

/** What such a file is. */
export type OwnFile = 'findings' | 'columns' | 'description' | 'results' | 'key';

/** Columns of a list of findings, as `check --csv` and `clean` write it. */
export const FINDINGS_COLUMNS = [
  ...['file', 'severity', 'row', 'column', 'header', 'record', 'value', 'code', 'message', 'fix', 'line'],
] as const;

/** Columns of the table that explains the columns, as `template` writes it in each language. */
export const EXPLAINED_COLUMNS = {
  en: ['file', 'header', 'column', 'needed', 'what it holds', 'how to write it', 'example'],
  de: ['Datei', 'Spaltenkopf', 'Spalte', 'nötig', 'was sie enthält', 'wie sie geschrieben wird', 'Beispiel'],
  es: ['archivo', 'encabezado', 'columna', 'necesaria', 'qué contiene', 'cómo se escribe', 'ejemplo'],
  fr: ['fichier', 'en-tête', 'colonne', 'nécessaire', 'ce qu’elle contient', 'comment l’écrire', 'exemple'],
} as const;

/** The key of a coded copy begins with these words. */
export const KEY_WORDS = 'fruitodds coded copy: keep this file to yourself';

/** The name that the description of cleaned files gives to them. */
export const DESCRIPTION_NAME = 'pollination-season';

const TABLES: readonly (readonly [OwnFile, readonly string[]])[] = [
  ['findings', FINDINGS_COLUMNS],
  ...Object.values(EXPLAINED_COLUMNS).map((columns) => ['columns', columns] as const),
];

const DOCUMENTS: readonly (readonly [OwnFile, RegExp])[] = [
  [
    'description',
    new RegExp(`^\\{\\s*"profile":\\s*"tabular-data-package",\\s*"name":\\s*"${DESCRIPTION_NAME}"`),
  ],
  ['key', new RegExp(`^\\{\\s*"key":\\s*"${KEY_WORDS}"`)],
  ['results', /^\{\s*"provenance":\s*\{\s*"version":/],
  ['results', /^\{\s*"files":\s*\[\s*\{\s*"file":\s*"[^\n]*",\s*"kind":/],
];

const LOOKED_AT = 2000;

/** Which file of ours a text is; null where it is none, or one that holds flowers. */
export function ownFile(text: string): OwnFile | null {
  const start = text.slice(0, LOOKED_AT).trimStart();
  const found = DOCUMENTS.find(([, begins]) => begins.test(start));
  if (found !== undefined) return found[0];
  const [first = ''] = start.split(/\r\n|\n|\r/, 1);
  // A spreadsheet may have saved it again, with its own separator.
  const cells = first.split(/[,;\t]/).map((cell) => cell.trim().replace(/^"(.*)"$/, '$1'));
  const table = TABLES.find(
    ([, columns]) => columns.length === cells.length && columns.every((column, at) => column === cells[at]),
  );
  return table?.[0] ?? null;
}
