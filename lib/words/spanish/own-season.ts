/** The words of the page on which growers try a file of their own, in Spanish. */

import type { FileKind, Problem } from '../../season/season.ts';
import { dateAnswers, type PageFixes, pageFix } from '../told/page-fixes.ts';
import { cited } from '../told/places.ts';
import { STAGES, type Stage } from '../told/stages.ts';
import { rowsIn } from './nouns.ts';
import { capitalised, counted, wholeNumber } from './numbers.ts';
import { dateOrderName } from './problem-sentence.ts';

const DOES: Readonly<Record<Stage, string>> = {
  reading: 'se leen los archivos',
  counting: 'se cuentan flores y frutos',
  model: 'se ajusta el modelo de edades, plantas y parejas',
  vials: 'se juzgan los viales',
  'like-for-like': 'se compara en igualdad de condiciones',
  rest: 'se calcula qué lo aclararía',
  drawing: 'se dibujan los gráficos',
};

export function stageSaid(stage: Stage): string {
  return `Paso ${STAGES.indexOf(stage) + 1} de ${STAGES.length}: ${DOES[stage]}.`;
}

const KINDS: Readonly<Record<FileKind, string>> = {
  crosses: 'cruces: una fila por flor',
  vials: 'viales: una fila por vial de polen',
  flowers: 'flores previstas para la próxima temporada',
  unknown: 'ninguna de las tres clases de archivo',
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
  const uses = `${wholeNumber(used)} ${used === 1 ? 'usada' : 'usadas'}`;
  return `${capitalised(kindSaid(kind))}. ${rowsIn(rows)}, ${uses}, ${wholeNumber(leftOut)} fuera.`;
}

const EXPORT_SPREADSHEET =
  'Ábralo en su hoja de cálculo, elija «Guardar como» o «Descargar», tome CSV (UTF-8) y elija aquí ese archivo.';
const ANSWER_BELOW = 'Responda a la pregunta de abajo.';
const LATER_DAY = 'Corrija la fecha, o dé un día posterior en «Más ajustes».';
const WRITE_PLAINLY = 'Si no es así, escriba las fechas como AAAA-MM-DD.';

const FIXES: PageFixes = {
  byCode: {
    'spreadsheet-file': EXPORT_SPREADSHEET,
    'not-text': `Elija la hoja misma. ${EXPORT_SPREADSHEET}`,
    'kind-unknown': 'Diga abajo qué es el archivo, o compruebe que su primera fila contiene los encabezados.',
    'column-missing': 'Diga abajo cuál de sus columnas es, o añada la columna a la hoja.',
    'column-unknown': 'Si contiene algo que haga falta, diga qué es en «Más ajustes».',
    'column-guessed': 'Si no es así, cambie el nombre de la columna en la hoja.',
    'vial-unknown': 'Elija también su archivo de viales, o complete pollen_collected.',
    'future-date': LATER_DAY,
    'outcome-after-as-of': LATER_DAY,
    'name-slip': 'Diga abajo si son una sola planta, o corríjalo en la hoja.',
    'date-serial-read':
      'Si todas se desvían cuatro años, diga en «Más ajustes» desde qué año se cuentan; si no, no hay que hacer nada.',
    'date-order-unclear': ANSWER_BELOW,
    'date-order-mixed':
      'Escriba todas las fechas como AAAA-MM-DD, o responda a la pregunta de abajo: las filas escritas de otro modo quedan entonces fuera.',
    'date-order-decided': WRITE_PLAINLY,
    'date-order-from-neighbour': WRITE_PLAINLY,
  },
  rename: 'Cambie el nombre de la que no es, y elija el archivo otra vez.',
  answer: ANSWER_BELOW,
  mend: 'Corríjalo en la hoja, y elija el archivo otra vez.',
};

export function fixOnPage(problem: Problem, fix: string): string {
  return pageFix(problem, fix, FIXES);
}

export const REFUSAL_FIXES: Readonly<Record<string, string>> = {
  'question-open': ANSWER_BELOW,
  'no-usable-row': 'Corríjalo en la hoja, guárdela, y elija el archivo otra vez.',
  'no-crosses':
    'Elija también el archivo con una fila por flor polinizada. Un archivo se reconoce por sus columnas.',
  'no-usable-outcome':
    'Complete la columna outcome con fruit, dropped o none en cuanto se hayan mirado las flores.',
};

export function dateOrderQuestion(problem: Problem): {
  readonly question: string;
  readonly answers: readonly (readonly [order: string, label: string])[];
} {
  return {
    question: `¿Cómo están escritas las fechas de ${cited(problem.column)}? Una de ellas es ${cited(problem.value)}.`,
    answers: dateAnswers(problem, dateOrderName),
  };
}

export function groupsLeft(groups: number): string {
  return `No se ${groups === 1 ? 'enumera' : 'enumeran'} ${counted(groups, 'clase más', 'clases más')} de problemas.`;
}

export const OWN_SEASON = {
  title: 'Su propia temporada',
  description: 'Elija la lista de sus cruces: esta página cuenta, compara y escribe su informe.',
  needsScript:
    'Esta página calcula su informe con un guion propio (script), y aquí los guiones están desactivados. La orden fruitodds hace lo mismo sin navegador.',
  noWorker:
    'Este navegador no deja que una página trabaje en segundo plano, así que aquí no se puede calcular nada. Puede hacerlo un navegador más nuevo, o la orden fruitodds.',
  chooseHeading: 'Elija sus archivos',
  choose:
    'Una fila por cada flor polinizada, guardada como CSV o como libro de cálculo (.xlsx). Puede añadir una lista de sus viales de polen y otra de las flores que espera la próxima temporada. Cada archivo se reconoce por sus columnas.',
  filesLabel: (bytes: number): string =>
    `Archivos que leer (CSV o .xlsx, hasta ${wholeNumber(bytes / 1e6)} MB cada uno; también ajustes guardados)`,
  drop: 'O suéltelos en cualquier parte de esta página.',
  pasteSummary: 'Pegar filas en su lugar',
  pasteLabel: 'Filas copiadas de la hoja, con la fila de encabezados',
  pasteButton: 'Leer las filas pegadas',
  nothingPasted: 'Todavía no se ha pegado nada: copie las filas con sus encabezados y póngalas en el campo.',
  remove: (name: string): string => `Quitar ${name}`,
  sameFile: (name: string): string => `${name} ya se había elegido y es igual: se lee una sola vez.`,
  replaced: (name: string): string =>
    `${name} ocupa el lugar del archivo de ese nombre elegido antes. Para leer los dos, dé otro nombre a uno.`,
  typedGaveWay: 'Las flores escritas a mano han cedido el paso a su archivo de flores.',
  removed: (name: string): string => `Se ha quitado ${name}.`,
  unreadable: (name: string): string =>
    `${name} no se puede leer: el navegador dice que está bloqueado, que se movió o que no tiene permiso. Ciérrelo en otros programas, o guarde una copia, y elíjalo otra vez.`,
  restarted: 'Los archivos cambiaron mientras se trabajaba con ellos, así que el trabajo empieza de nuevo.',
  readHeading: 'Lo que se ha leído',
  readSummary: 'Archivos, columnas y problemas',
  readRight: '¿Está bien? Entonces, que se calcule.',
  workButton: 'Calcular',
  nothingToMend: 'Nada que corregir.',
  columnsSummary: 'Cómo se entendieron las columnas',
  columnsCaption: 'Sus columnas',
  columnsHeads: ['su encabezado', 'leído como'] as const,
  notUsed: 'no se usa',
  answerButton: 'Leer otra vez con estas respuestas',
  kindQuestion: (name: string): string => `¿Qué es ${name}?`,
  columnQuestion: (column: string, name: string): string => `¿Qué columna de ${name} es ${column}?`,
  noColumn: 'ninguna de ellas',
  sameNames: (names: string): string =>
    `Varios cultivadores usan los mismos nombres de planta (${names}). ¿Son las mismas plantas?`,
  sameNo: 'No: la planta de cada cultivador es otra planta',
  sameYes: 'Sí: es la misma planta, la cultive quien la cultive',
  workHeading: 'Calculando',
  progressLabel: 'Cuánto se ha avanzado',
  cancelButton: 'Parar',
  cancelled: 'Parado. Sus archivos siguen leídos; no se ha guardado nada más.',
  cancelledBefore: 'Parado. Sus archivos siguen leídos, y se conserva el informe de antes.',
  cancelledReading: 'Parado. Sus archivos están en la lista de arriba; no se han leído.',
  readAgainButton: 'Leerlos de todos modos',
  countsHeading: 'Primera respuesta, solo con los recuentos',
  countsMore:
    'Son las tres primeras partes de su informe, hasta donde llegan los recuentos. La comparación en igualdad de condiciones, las edades, las parejas y los viales tardan más: el informe entero ocupará su lugar.',
  answerHeading: 'Su temporada',
  done: 'Listo. Su informe está abajo.',
  settingsSummary: 'Ajustes: en qué se apoya la respuesta',
  worthLabel: 'De 100 flores, ¿cuántas deben cuajar para que valga la pena?',
  worthHint: 'En blanco: la mitad de lo que da el polen fresco.',
  useOnLabel: 'Día en que se va a usar el polen guardado',
  useOnHint: 'En blanco: un año después de la última polinización.',
  endpointLegend: '¿Qué cuenta como fruto?',
  endpointInitial: 'El fruto que había cuajado al mirar la flor',
  endpointFinal: 'El fruto que se cosechó',
  flowersLegend: 'Flores que espera la próxima temporada, planta por planta',
  flowersHint: 'En blanco: en proporción a las flores hasta ahora.',
  flowersFromFile: 'Las flores de la próxima temporada se toman de su archivo.',
  againButton: 'Calcular con estos ajustes',
  wrongWorth: 'Cuántas deben cuajar ha de ser un número mayor que 0 y menor que 100.',
  wrongUseOn: 'El día de uso ha de ser un día que exista, como AAAA-MM-DD.',
  wrongFlowers: (plant: string): string =>
    `Las flores de ${plant} han de ser un número entero, de 0 en adelante.`,
  changed: 'Los ajustes o los archivos han cambiado desde que se hizo este informe.',
  saveHeading: 'Guardarlo',
  saveReport: 'Guardar el informe',
  saveSettings: 'Guardar los ajustes',
  saveFlowers: 'Guardar las flores en un archivo',
  saveCrosses: 'Guardar los cruces, en limpio',
  saveVials: 'Guardar los viales, en limpio',
  saved: (name: string): string => `Se ha entregado ${name} a su navegador para que lo guarde.`,
  fault: (cause: string): string =>
    `Algo ha fallado dentro de fruitodds: ${cause}. Es un fallo del programa, no de sus archivos.`,
  promiseHeading: 'Adónde va su archivo',
  promise: [
    'Su archivo se lee y se calcula en este navegador. El programa de la página no envía nada ni abre ninguna otra página, y una regla en ella hace que el navegador rechace las vías habituales de cargar o enviar algo. La página no conserva nada: tras recargarla, o al salir de ella, tendrá que elegir sus archivos de nuevo.',
    'Esa regla obliga a esta página y a nada más, y no cierra todas las vías: un programa cambiado aún podría abrir otra dirección. No puede obligar a las extensiones de su navegador, ni a quienes lo hacen, ni a otros programas de este ordenador, y no vale en una copia que alguien haya cambiado: tome la página de una fuente de confianza. Lo que guarde queda donde su navegador lo ponga.',
  ],
} as const;
