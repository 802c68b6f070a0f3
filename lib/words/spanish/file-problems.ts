/** What is wrong with a whole file, and what to do about it. */

import type { FileProblemCode } from '../../season/problems.ts';
import type { Problem } from '../../season/season.ts';
import type { ProblemSentence } from '../problem-sentence.ts';
import { cited } from '../told/places.ts';
import { ANY_COLUMN, dateOrderName, MAP_YOURS, mapOption } from './problem-sentence.ts';

const column = ({ column: header }: Problem): string => `La columna ${cited(header)}`;

/** "21 MB", rounded up so that what is too large never looks as if it fitted. */
const megabytes = (bytes: string | number | undefined): string => `${Math.ceil(Number(bytes) / 1e6)} MB`;

/** "Zoë", "Königin" y 12 más */
const citedList = ({ cells, more }: Problem['details']): string => {
  const shown = String(cells).split('\n').map(cited).join(', ');
  return more ? `${shown} y ${more} más` : shown;
};

/** Archivos propios que no contienen flores. */
const OWN_FILES: Readonly<Record<string, string>> = {
  findings: 'una lista de hallazgos (check o clean)',
  columns: 'la tabla que explica las columnas (template)',
  description: 'la descripción de archivos limpios (clean)',
  results: 'un resultado en JSON',
  key: 'la clave de una copia codificada: guárdela para usted',
};

/** What a file is that is no table. */
const FORMATS: Readonly<Record<string, string>> = {
  pdf: 'un documento PDF',
  html: 'una página web',
  json: 'JSON',
  rtf: 'un documento de texto (RTF)',
  picture: 'una imagen',
  document: 'un documento (.docx, .doc, .odt)',
  slides: 'una presentación (.pptx, .ppt, .odp)',
  archive: 'una carpeta comprimida (.zip)',
};

const SHEETS: Readonly<Record<string, string>> = {
  xls: 'un libro antiguo (.xls)',
  xlsb: 'un libro binario (.xlsb)',
  ods: 'una hoja OpenDocument (.ods)',
  numbers: 'una hoja de Numbers (.numbers)',
};

/** Why the dates of a column have an order: what one of them cannot be, and which number is the year. */
const orderEvidence = ({ value, details: { order, row, rival, byYear } }: Problem): string =>
  [
    ...(rival ? [`${cited(value)}, en la fila ${row}, no puede ser ${dateOrderName(rival)}`] : []),
    ...(byYear === 'yes'
      ? [`el ${order === 'ymd' ? 'primer' : 'último'} número es el que menos cambia, como hace un año`]
      : []),
  ].join(' y ');

const KINDS: Readonly<Record<string, string>> = {
  crosses: 'archivo de cruces',
  vials: 'archivo de viales',
  flowers: 'archivo de flores',
};

const RIGHT = 'Si es correcto, no hay que hacer nada.';
const AS_CSV = 'guárdelo como .xlsx o CSV (UTF-8) y dé ese archivo';

/** Files that cannot be read, or hold nothing. */
const UNREADABLE = {
  'file-empty': () => [
    'El archivo está vacío.',
    'Mire si es el archivo correcto: los encabezados van en la primera fila, y debajo una flor, un vial o una planta por fila.',
  ],
  'file-too-large': ({ details }) => [
    `El archivo tiene ${megabytes(details.bytes)}; se pueden leer archivos de hasta ${megabytes(details.most)}.`,
    'Dé los cruces de menos temporadas, o la hoja sin sus otras columnas ni las demás hojas.',
  ],
  'file-repeated': ({ details }) => [
    `El archivo contiene lo mismo que ${details.earlier}, que ya se ha leído.`,
    'Dé cada archivo una sola vez.',
  ],
  'no-rows': () => [
    'El archivo tiene encabezados, pero ninguna fila debajo.',
    'Escriba una fila por cada flor, vial o planta.',
  ],
  'nothing-entered': () => [
    'Todavía no se ha anotado ninguna flor: en todas las filas faltan el día de polinización y el resultado.',
    'Rellene pollination_date cuando se ponga el polen, y outcome cuando se vea: fruit, dropped, none, unknown (etiqueta perdida) o pending (demasiado pronto para decirlo).',
  ],
  'not-text': () => ['El archivo no es un texto.', 'Guarde la hoja como CSV (UTF-8) y dé ese archivo.'],
  'spreadsheet-file': ({ details }) => [
    `El archivo es ${SHEETS[details.format] ?? 'de otro programa'} y aquí no se puede leer.`,
    `Ábralo en su propio programa, elija «Guardar como» o «Exportar», ${AS_CSV}.`,
  ],
  'other-format': ({ details }) => [
    `El archivo es ${FORMATS[details.format]}, no una tabla, se llame como se llame.`,
    `Abra la lista misma en su hoja de cálculo, ${AS_CSV}.`,
  ],
  'own-file': ({ details }) => [
    `El archivo lo escribió fruitodds y no contiene flores; se pasa por alto. Es ${OWN_FILES[details.own]}.`,
    'No hay nada que hacer.',
  ],
  'workbook-broken': () => [
    'El libro de hojas de cálculo está dañado: no se puede desempaquetar, o sus partes no son lo que deberían.',
    'Ábralo en su hoja de cálculo y vuelva a guardarlo, como .xlsx o CSV (UTF-8).',
  ],
  'workbook-locked': () => [
    'El libro de hojas de cálculo está protegido con una contraseña.',
    'Ábralo en su hoja de cálculo y guárdelo sin contraseña, o como CSV (UTF-8).',
  ],
  'workbook-too-large': ({ details }) => [
    `El libro de hojas de cálculo es demasiado grande: desempaquetado contiene más de ${megabytes(details.most)} o de ${Number(details.cells) / 1e6} millones de celdas.`,
    'Guarde solo la hoja de las flores como CSV (UTF-8) y dé ese archivo.',
  ],
} satisfies Partial<Readonly<Record<FileProblemCode, ProblemSentence>>>;

/** Sheets of a workbook, kinds of files and columns. */
const COLUMNS = {
  'lines-quoted': () => [
    'Cada línea del archivo va entera entre comillas; las líneas se leen como si estas no estuvieran.',
    RIGHT,
  ],
  'table-sideways': () => [
    'Los encabezados del archivo están en su primera columna, no en una fila.',
    'Gire la tabla en la hoja de cálculo (cópiela y péguela transpuesta) y vuelva a guardarla.',
  ],
  'parents-in-one': (problem) => [
    `${column(problem)} contiene a los dos padres en una celda, como en ${cited(problem.value)}.`,
    'Divídala en dos columnas, seed_parent (la madre) y pollen_parent (el padre).',
  ],
  'rows-hidden': ({ details }) => [
    details.rows === 1
      ? 'Una fila de la hoja está oculta o filtrada, y se lee como las demás.'
      : `${details.rows} filas de la hoja están ocultas o filtradas, y se leen como las demás.`,
    'Borre las que no valgan.',
  ],
  'cells-merged': ({ value }) => [
    `Las celdas combinadas en varias filas (${cited(value)}) cuentan para cada una de esas filas.`,
    RIGHT,
  ],
  'sheet-read': ({ details }) => [
    `Se lee la hoja ${cited(details.sheet)} del libro${details.others ? `; se pasan por alto: ${cited(details.others)}` : ''}.`,
    details.others
      ? 'Si hace falta alguna de ellas, ponga como encabezados nuestros nombres de las columnas.'
      : 'No hay que hacer nada.',
  ],
  'kind-unknown': ({ details }) => [
    `Las columnas del archivo (${cited(details.headers)}) no son de cruces, ni de viales, ni de flores previstas.`,
    'Compruebe que la primera fila contiene los encabezados; un archivo de cruces tiene cross_id, pollination_date, seed_parent, ' +
      `pollen_parent, storage y outcome. Para otros encabezados use ${MAP_YOURS}.`,
  ],
  'kind-differs': ({ details }) => [
    `El archivo se dio como ${KINDS[details.said]}, pero sus columnas son las de un ${KINDS[details.kind]}.`,
    details.kind === 'crosses'
      ? `Nómbrelo sin --${details.said}, y dé ahí el ${KINDS[details.said]}.`
      : `Délo con --${details.kind}, o sin ninguna opción: el tipo de un archivo se reconoce por sus columnas.`,
  ],
  'column-missing': ({ details }) => [
    `El ${KINDS[details.kind] ?? 'archivo'} no tiene columna para ${details.column}, así que no se puede usar ninguna de sus filas.`,
    `Añada una columna ${details.column}, o diga cuál de las suyas es: ${mapOption(details.suggestion || 'SU ENCABEZADO', details.column)}.`,
  ],
  'column-unclear': ({ details }) => [
    details.same === 'yes'
      ? `Dos columnas se llaman ${cited(details.first)}, y cualquiera podría ser ${details.column}.`
      : `Tanto ${cited(details.first)} como ${cited(details.second)} podrían ser ${details.column}.`,
    details.same === 'yes'
      ? 'Cambie el nombre de la que no es.'
      : `Diga cuál es: ${mapOption(details.first, details.column)} o ${mapOption(details.second, details.column)}.`,
  ],
  'column-unknown': (problem) => [
    `${column(problem)} no se usa.`,
    problem.details.suggestion
      ? `Si contiene ${problem.details.suggestion}, indíquelo: ${mapOption(problem.column, problem.details.suggestion)}.`
      : `Si contiene algo que hace falta, diga qué, con el nombre de una de nuestras columnas: ${mapOption(problem.column, ANY_COLUMN)}.`,
  ],
  'columns-unknown': ({ details }) => [
    `No se usan otras ${details.more} columnas.`,
    'Mire si se tomaron el separador y el archivo correctos.',
  ],
  'column-without-header': ({ details }) => [
    `La columna ${details.position} tiene celdas pero no encabezado, y no se usa.`,
    'Escriba un encabezado encima, o vacíela.',
  ],
  'column-guessed': (problem) => [
    `${column(problem)} se lee como ${problem.details.column}.`,
    `Si no es así, cambie el nombre de la columna o diga qué es: ${mapOption(problem.column, ANY_COLUMN)}.`,
  ],
} satisfies Partial<Readonly<Record<FileProblemCode, ProblemSentence>>>;

/** How dates, letters and titles were read. */
const READING = {
  'date-order-unclear': (problem) => {
    const { details, value } = problem;
    return [
      `${column(problem)} no deja ver qué número es el día: ${cited(value)}, en la fila ${details.row}, es ` +
        `${details.first} leído como ${dateOrderName(details.firstOrder)}, pero ${details.second} como ${dateOrderName(details.secondOrder)}.`,
      `Diga cuál es: --date-order ${details.firstOrder} o --date-order ${details.secondOrder}.`,
    ];
  },
  'date-order-mixed': (problem) => {
    const { details } = problem;
    return [
      `${column(problem)} mezcla dos maneras de escribir las fechas: ${cited(details.firstAgainst)}, en la fila ${details.firstRow}, ` +
        `no puede ser ${dateOrderName(details.firstOrder)}, y ${cited(details.secondAgainst)}, en la fila ${details.secondRow}, ` +
        `no puede ser ${dateOrderName(details.secondOrder)}.`,
      'Escriba todas las fechas como AAAA-MM-DD. O diga qué orden vale, con --date-order: las filas escritas de otro modo quedan entonces fuera.',
    ];
  },
  'date-order-decided': (problem) => [
    `Las fechas de ${cited(problem.column)} se leen como ${dateOrderName(problem.details.order)}, porque ${orderEvidence(problem)}.`,
    'Si no es así, dé --date-order.',
  ],
  'date-order-from-neighbour': (problem) => [
    `Las fechas de ${cited(problem.column)} se leen como ${dateOrderName(problem.details.order)}, igual que las otras fechas del archivo.`,
    'Si no es así, dé --date-order o escriba las fechas como AAAA-MM-DD.',
  ],
  'date-serial-read': ({ column: header, details, value }) => [
    `${cited(header)} contiene números de día propios de una hoja de cálculo: ${cited(value)}, en la fila ${details.row}, se lee como ${details.date}.`,
    details.system === 1900
      ? 'Si todas salen cuatro años antes de la cuenta, dé --date-system 1904; si no, no hay que hacer nada.'
      : 'Si todas salen cuatro años después de la cuenta, dé --date-system 1900; si no, no hay que hacer nada.',
  ],
  'two-digit-years': (problem) => [
    `Los años de ${cited(problem.column)} tienen dos cifras (${cited(problem.value)} en la fila ${problem.details.row}): ` +
      'de 00 a 69 se leen como 2000 a 2069; de 70 a 99, como 1970 a 1999.',
    'Escriba los años con cuatro cifras.',
  ],
  'encoding-guessed': ({ details, value }) => [
    value === null
      ? `El archivo no dice cómo están codificadas sus letras; se lee como ${details.encoding}.`
      : `El archivo no es UTF-8; se lee como ${details.encoding}. Mire si esto está bien: ${citedList(details)}.`,
    'Si algo se ve mal, guarde la hoja como CSV (UTF-8) o .xlsx.',
  ],
  'title-lines': ({ details, row }) => [
    `Los encabezados están en la fila ${row}; ${details.titles === 1 ? 'se pasa por alto una fila' : `se pasan por alto ${details.titles} filas`} por encima.`,
    'Si solo hay un título, no hay que hacer nada.',
  ],
  'map-header-missing': ({ details, value }) => [
    `Ningún archivo tiene una columna ${cited(value)}, que debía leerse como ${details.column}.`,
    'Revise cómo está escrito el encabezado en el archivo.',
  ],
  'storage-word-missing': ({ value, details }) => [
    `Ningún archivo tiene un almacenamiento llamado ${cited(value)}, que debía leerse como ${details.method}.`,
    'Revise cómo está escrita la palabra en los archivos.',
  ],
  'same-name-missing': ({ value }) => [
    `Ningún archivo tiene una planta llamada ${cited(value)}, que según se dijo es la misma que otra.`,
    'Revise cómo está escrito el nombre en el archivo, también las mayúsculas y los espacios.',
  ],
} satisfies Partial<Readonly<Record<FileProblemCode, ProblemSentence>>>;

/** Sentence and fix of each code that concerns a whole file. */
export const FILE_PROBLEMS: Readonly<Record<FileProblemCode, ProblemSentence>> = {
  ...UNREADABLE,
  ...COLUMNS,
  ...READING,
};
