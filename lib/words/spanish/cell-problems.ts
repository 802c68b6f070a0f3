/** What is wrong with one cell or the shape of its row, and what to do about it. The row is named before each sentence. */

import type { Problem } from '../../season/season.ts';
import type { CellCode } from '../english-cell-problems.ts';
import type { ProblemSentence } from '../problem-sentence.ts';
import { cited } from '../told/places.ts';
import { dateOrderName, sameOption } from './problem-sentence.ts';

const WORDS: Readonly<Record<string, string>> = {
  outcome: 'fruit, dropped, none, unknown o pending',
  control: 'unpollinated o selfed, o deje la celda en blanco si es un cruce',
  bagged: 'yes o no',
};

/** What the numbers of a column count, where that is not plain from its name. */
const UNITS: Readonly<Record<string, string>> = { fruit_weight_g: ' g', pollen_age_days: ' días' };

/** Our name of a column as a grower would say it, with its article. */
const NAMES: Readonly<Record<string, string>> = {
  cross_id: 'la etiqueta (cross_id)',
  pollination_date: 'la fecha de polinización',
  seed_parent: 'la planta madre',
  pollen_parent: 'el padre',
  storage: 'el almacenamiento',
  vial: 'el vial',
  outcome: 'el resultado',
  season: 'la temporada',
  grower: 'el cultivador',
  wave: 'la oleada',
  bagged: 'la bolsa (bagged)',
  control: 'el control',
  note: 'la nota',
  identified_by: 'la persona que identificó (identified_by)',
  pollen_collected: 'la fecha de recogida del polen',
  pollen_age_days: 'la edad del polen',
  checked_on: 'la fecha de revisión',
  harvested_on: 'la fecha de cosecha',
  fruit_weight_g: 'el peso del fruto',
  collected: 'la fecha de recogida',
  doses_left: 'el número de dosis restantes',
  doses_filled: 'el número de dosis llenadas',
  thaws: 'el número de descongelaciones',
  flowers: 'el número de flores',
  seeds: 'el número de semillas',
  sown: 'el número de semillas sembradas',
  germinated: 'el número de semillas germinadas',
  opens_from: 'el primer día de floración',
  opens_to: 'el último día de floración',
};

const POLLEN: ReadonlySet<string> = new Set(['pollen_parent', 'storage']);

/** What a problem's column is called in a sentence, with its article. */
export function named({ details, column }: Problem): string {
  const name = String(details.name ?? column ?? 'celda');
  return NAMES[name] ?? `la celda ${name.replaceAll('_', ' ')}`;
}

/** The cell of a problem with what stands in it: el número de semillas "muchas". */
export const the = (problem: Problem): string => `${named(problem)} ${cited(problem.value)}`;
const unit = ({ details }: Problem): string => UNITS[String(details.name)] ?? '';
const times = (uses: string | number): string => (uses === 1 ? 'una vez' : `${uses} veces`);
const number = ({ details }: Problem): string =>
  details.name === 'fruit_weight_g' ? 'un número' : 'un número entero';
const ISO = 'Escríbala como AAAA-MM-DD, por ejemplo 2025-06-14.';
const RIGHT = 'Si es correcto, no hay que hacer nada.';
const BLANK = 'Corríjalo o deje la celda en blanco.';

export const CELL_PROBLEMS: Readonly<Record<CellCode, ProblemSentence>> = {
  'total-row': ({ value }) => [
    `la fila es un total (${cited(value)}), no un registro.`,
    'Borre la fila, o lleve los totales en una hoja aparte; no falta nada más.',
  ],
  'row-nearly-blank': ({ value }) => [
    `la fila contiene ${cited(value)}, pero nada de lo que hace falta.`,
    'Complete la fila o bórrela.',
  ],
  'row-ragged': ({ details }) => [
    `la fila tiene ${details.cells} ${details.cells === 1 ? 'celda' : 'celdas'} donde los encabezados piden ${details.expected}, así que no está claro cuál va en cada sitio.`,
    'Busque un separador que falte o que sobre; ponga entre comillas la celda que contenga uno.',
  ],
  'row-short': ({ details }) => [
    `la fila termina antes de la columna ${cited(details.meant)}; lo que falta al final cuenta como en blanco, también en otras filas.`,
    'No hay que hacer nada, salvo que falte un separador dentro de la fila.',
  ],
  'header-repeated': () => ['la fila repite los encabezados.', 'Bórrela.'],
  'quote-not-closed': () => [
    'unas comillas se abren y no se cierran.',
    'Quítelas o ciérrelas; las filas siguientes se leen como si no tuvieran significado.',
  ],
  'control-character': () => [
    'la fila contiene un carácter que no tiene ningún texto.',
    'Vuelva a escribir la fila.',
  ],
  'cell-blank': (problem) => [
    `${named(problem)} está en blanco.`,
    problem.details.name === 'outcome'
      ? 'Escriba fruit, dropped, none, unknown (etiqueta perdida) o pending (aún es pronto).'
      : problem.details.kind === 'crosses' && POLLEN.has(String(problem.details.name))
        ? 'Complete la celda; si la flor no recibió polen, escriba unpollinated en la columna control.'
        : 'Complete la celda.',
  ],
  'cell-error': (problem) => [
    `${named(problem)} contiene un error propio de la hoja de cálculo, ${cited(problem.value)}.`,
    'Corrija la fórmula en la hoja de cálculo, o escriba el valor.',
  ],
  'date-does-not-exist': (problem) => [
    `${the(problem)} no existe${problem.details.order ? ` leyéndola como ${dateOrderName(problem.details.order)}` : ''}.`,
    ISO,
  ],
  'date-not-understood': (problem) => [`${the(problem)} no es una fecha.`, ISO],
  'date-serial': (problem) => [
    `${the(problem)} parece el número de día propio de una hoja de cálculo.`,
    'Dé a la columna formato de fecha (AAAA-MM-DD) antes de guardar como CSV.',
  ],
  'date-partial': (problem) => [
    `${the(problem)} no indica un día completo.`,
    'Escriba el día, el mes y el año: AAAA-MM-DD, por ejemplo 2025-06-14.',
  ],
  'date-implausible': (problem) => [`${the(problem)} no está entre 1950 y 2100.`, 'Revise el año.'],
  'number-not-understood': (problem) => [
    `${the(problem)} no es ${number(problem)}.`,
    `Escriba ${number(problem)} en cifras, sin palabras ni signos entre los millares, o deje la celda en blanco.`,
  ],
  'number-negative': (problem) => [`${the(problem)} está por debajo de cero.`, BLANK],
  'number-absurd': (problem) => [
    `${the(problem)} es más de lo que puede ser (como mucho ${problem.details.highest}${unit(problem)}).`,
    BLANK,
  ],
  'number-converted': (problem) => [
    `${the(problem)} se lee como ${problem.details.meant}${unit(problem)}, aquí y dondequiera que esté.`,
    RIGHT,
  ],
  'number-is-date': (problem) => [
    `${the(problem)} es una fecha donde se espera un número; no se usa.`,
    'Si toda la columna contiene fechas, póngale otro encabezado; si no, escriba el número o deje la celda en blanco.',
  ],
  'word-not-understood': (problem) => [
    `${the(problem)} no es una palabra que se conozca aquí${problem.details.suggestion ? `; ¿se quería decir ${problem.details.suggestion}?` : '.'}`,
    `Escriba ${WORDS[String(problem.details.name)] ?? 'una de las palabras que admite la columna'}.`,
  ],
  'word-guessed': (problem) => [
    `${the(problem)} se lee como ${problem.details.meant}, aquí y dondequiera que esté.`,
    RIGHT,
  ],
  'storage-own': (problem) => [
    `${the(problem)} se conserva como un método propio, aquí y dondequiera que esté.`,
    `Si es correcto, no hay que hacer nada; si no, escriba fresh, room, refrigerated o frozen, o dígalo: --storage "${problem.value}=frozen".`,
  ],
  'storage-slip': (problem) => [
    `${the(problem)} se conserva como un método propio; ¿se quería decir ${problem.details.suggestion}?`,
    `Si es así, escriba ${problem.details.suggestion}, o dígalo: --storage "${problem.value}=${problem.details.suggestion}".`,
  ],
  'name-spellings': (problem) => {
    const { spelling, uses, usual, usualUses } = problem.details;
    const plant = String(problem.details.name).endsWith('parent');
    return [
      `${cited(spelling)} (${times(uses)}) y ${cited(usual)} (${times(usualUses)}) parecen ` +
        `${plant ? 'la misma planta' : 'la misma palabra'}, pero se mantienen separados.`,
      plant
        ? `Escriba ambos igual, o indíquelo: ${sameOption(usual, spelling)}.`
        : 'Escriba ambos igual si son lo mismo.',
    ];
  },
  'name-slip': ({ details: { name, spelling, uses, usual, usualUses } }) => [
    `${cited(spelling)} (${times(uses)}) puede ser un descuido por ${cited(usual)} (${times(usualUses)}); ambos se mantienen separados.`,
    String(name).endsWith('parent')
      ? `Si son la misma planta, corríjalo o indíquelo: ${sameOption(usual, spelling)}.`
      : 'Si son lo mismo, corríjalo.',
  ],
  'name-garbled': (problem) => [
    `${the(problem)} contiene letras que se perdieron o se estropearon al guardar el archivo.`,
    'Abra la hoja original y guárdela como CSV (UTF-8) o .xlsx; o vuelva a escribir el nombre en todas partes.',
  ],
  'name-tidied': (problem) => [
    `${the(problem)} se lee como ${cited(problem.details.meant)}, con espacios y letras sencillos.`,
    RIGHT,
  ],
};
