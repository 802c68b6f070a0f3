/** What is wrong with one row, and what to do about it. The row is named before each sentence. */

import type { RowProblemCode } from '../../season/problems.ts';
import type { Problem } from '../../season/season.ts';
import type { CellCode } from '../english-cell-problems.ts';
import type { ProblemSentence } from '../problem-sentence.ts';
import { moreOfVial } from '../told/alike-problems.ts';
import { cited } from '../told/places.ts';
import { CELL_PROBLEMS, named, the } from './cell-problems.ts';
import { wholeNumber } from './numbers.ts';

const other = ({ details, file }: Problem): string =>
  `la fila ${details.otherRow}${details.otherFile === file ? '' : ` de ${details.otherFile}`}`;

const DELETE_ONE = 'Borre una de las dos filas.';
const ONE_DATE = 'Corrija una de las dos fechas.';
const ONE_NUMBER = 'Corrija uno de los dos números.';
const LATER = 'Corrija la fecha, o dé un --as-of posterior.';
const YEARS = 'Revise los años de ambas fechas.';

/** Faults of what a row says taken together, or with other rows. */
const SENSE_PROBLEMS: Readonly<Record<Exclude<RowProblemCode, CellCode>, ProblemSentence>> = {
  'tag-repeated': (problem) => [
    `la etiqueta ${cited(problem.value)} ya está en ${other(problem)}, con el mismo contenido.`,
    DELETE_ONE,
  ],
  'tag-conflict': (problem) => [
    `la etiqueta ${cited(problem.value)} está también en ${other(problem)}, con otro contenido; no se usa ninguna de las dos filas.`,
    'Corrija la etiqueta de una de ellas, o borre la fila equivocada.',
  ],
  'vial-repeated': (problem) => [
    `el vial ${cited(problem.value)} ya está en ${other(problem)}, con el mismo contenido.`,
    DELETE_ONE,
  ],
  'vial-conflict': (problem) => [
    `el vial ${cited(problem.value)} está también en ${other(problem)}, con otro contenido; no se usa ninguna de las dos filas.`,
    'Dé a uno de ellos un nombre propio, o borre la fila equivocada.',
  ],
  'flowers-repeated': (problem) => [
    `la planta ${cited(problem.value)} ya está en la fila ${problem.details.firstRow}, para los mismos días; cuentan ambas.`,
    'Borre una de las dos filas si se refieren a las mismas flores.',
  ],
  'future-date': (problem) => [
    `${the(problem)} es posterior al ${problem.details.asOf}, el día hasta el que se lee.`,
    LATER,
  ],
  'outcome-after-as-of': (problem) => [
    `el resultado se vio el ${problem.value}, después del ${problem.details.asOf}, así que cuenta como pendiente (pending).`,
    LATER,
  ],
  'collected-after-pollination': ({ details }) => [
    `el polen se recogió el ${details.collected}, después de usarlo el ${details.pollinationDate}; esa fecha no se da por buena.`,
    ONE_DATE,
  ],
  'fresh-collected-earlier': ({ details }) => [
    `el polen consta como fresco, pero tenía ${details.days} ${details.days === 1 ? 'día' : 'días'}; su edad cuenta como 0.`,
    'Corrija la fecha, o indique cómo se guardó el polen.',
  ],
  'age-missing': ({ details }) => [
    details.vial === ''
      ? 'el polen estaba guardado, pero nada dice su edad; la fila cuenta en las frecuencias simples, no donde importa la edad.'
      : `la edad del polen depende del vial ${cited(details.vial)}, cuya fecha no se conoce; la fila cuenta en las frecuencias simples, no donde importa la edad.`,
    details.vial === ''
      ? 'Complete pollen_collected, pollen_age_days o vial.'
      : 'Añada --vials y el nombre de su archivo de viales, o complete pollen_collected.',
  ],
  'age-disagrees': ({ details, column }) => [
    `según ${cited(column)} el polen tenía ${details.otherDays} días; según ${details.usedColumn}, ${details.days} días; se usan ${details.days}.`,
    'Corrija el dato equivocado.',
  ],
  'age-over-ten-years': ({ details }) => [
    `el polen tenía ${details.days} días, más de diez años.`,
    'Revise el año en que se recogió.',
  ],
  'vial-unknown': ({ value }) => [
    `el vial ${cited(value)} no está en el archivo de viales.`,
    'Añádalo allí, o corrija su nombre aquí.',
  ],
  'vial-before-collected': (problem) => [
    `el vial ${cited(problem.value)} se usó el ${problem.details.pollinationDate}, antes de que se recogiera su polen el ${problem.details.collected}${alsoOfVial(problem)}.`,
    `Corrija el vial o una de las fechas; ${REFILLED}`,
  ],
  'vial-beyond-doses': ({ details }) => [
    `el vial ${cited(details.vial)} se llenó con ${details.doses} dosis, pero lo nombran ${details.uses} flores, las últimas de aquí en adelante.`,
    'Corrija el vial de algunas flores, o doses_filled en el archivo de viales.',
  ],
  'vial-father-differs': (problem) => [
    `el padre es ${cited(problem.details.cross)}, pero el vial ${cited(problem.details.vial)} contiene polen de ${cited(problem.details.register)}; se da por buena la fila${alsoOfVial(problem)}.`,
    `Corrija el dato equivocado; ${REFILLED}`,
  ],
  'vial-storage-differs': (problem) => [
    `el almacenamiento es ${cited(problem.details.cross)}, pero el del vial ${cited(problem.details.vial)} es ${cited(problem.details.register)}; se da por buena la fila${alsoOfVial(problem)}.`,
    `Corrija el dato equivocado; ${REFILLED}`,
  ],
  'year-stands-alone': (problem) => [
    `${the(problem)} está a más de cinco años de todas las demás fechas; la más cercana es ${problem.details.nearest}.`,
    'Corrija el año, si es un descuido.',
  ],
  'own-pollen': ({ value }) => [
    `${cited(value)} se polinizó con su propio polen; la fila cuenta como un cruce.`,
    'Escriba selfed en la columna control si era un control.',
  ],
  'selfed-with-other-pollen': ({ details, value }) => [
    `el control consta como autopolinizado (selfed), pero sobre ${cited(details.seedParent)} se puso polen de ${cited(value)}.`,
    'Deje control en blanco si era un cruce; si no, corrija el padre.',
  ],
  'unpollinated-with-pollen': (problem) => [
    `la flor es un control sin polinizar, pero tiene ${named(problem)} ${cited(problem.value)}; ese dato no se da por bueno.`,
    'Deje control en blanco si era un cruce; si no, vacíe la celda.',
  ],
  'checked-before-pollination': (problem) => [
    `${the(problem)} es anterior a la polinización, el ${problem.details.pollinationDate}; no se da por buena.`,
    ONE_DATE,
  ],
  'checked-too-early': ({ details }) => [
    `se anotó un fruto ${details.days} ${details.days === 1 ? 'día' : 'días'} después de la polinización, el ${details.pollinationDate}, antes de que se distinga de una flor marchita.`,
    'Revise las fechas, o escriba pending.',
  ],
  'checked-too-late': (problem) => [
    `${the(problem)} es ${problem.details.days} días posterior a la polinización, el ${problem.details.pollinationDate}; no se da por buena.`,
    YEARS,
  ],
  'harvested-too-late': (problem) => [
    `${the(problem)} es ${problem.details.days} días posterior a la polinización, el ${problem.details.pollinationDate}; no se da por buena.`,
    YEARS,
  ],
  'harvested-before-pollination': (problem) => [
    `${the(problem)} es anterior a la polinización, el ${problem.details.pollinationDate}; no se da por buena.`,
    ONE_DATE,
  ],
  'harvested-without-fruit': ({ details, value }) => [
    `se anotó una cosecha el ${value}, pero el resultado es ${details.outcome}; se da por bueno el resultado.`,
    'Escriba fruit como resultado, o vacíe la fecha de cosecha.',
  ],
  'seeds-without-fruit': ({ details, value }) => [
    `se anotaron ${value} semillas, pero el resultado es ${details.outcome}; se da por bueno el resultado.`,
    'Escriba fruit como resultado, o vacíe el número de semillas.',
  ],
  'more-sown-than-seeds': ({ details, value }) => [
    `se sembraron ${value} semillas de un fruto que tenía ${details.seeds}; el número de sembradas no se da por bueno.`,
    ONE_NUMBER,
  ],
  'more-germinated-than-sown': ({ details, value }) => [
    `germinaron ${value} semillas de ${details.sown} sembradas; el número de germinadas no se da por bueno.`,
    ONE_NUMBER,
  ],
  'opens-backwards': ({ details }) => [
    `la floración terminaría el ${details.to}, antes de empezar el ${details.from}; no se da por buena ninguna de las dos fechas.`,
    ONE_DATE,
  ],
};

/** Otras flores del mismo vial. */
const alsoOfVial = ({ details }: Problem): string => {
  const also = moreOfVial(details);
  if (also === null) return '';
  return `; lo mismo en ${also.more === 1 ? '1 flor más' : `${wholeNumber(also.more)} flores más`} de este vial (${also.more === 1 ? 'fila' : 'filas'} ${also.rows})`;
};

const REFILLED = 'un vial que se volvió a llenar necesita un nombre propio para cada llenado.';

/** Sentence and fix of each code that concerns one row. */
export const ROW_PROBLEMS: Readonly<Record<RowProblemCode, ProblemSentence>> = {
  ...CELL_PROBLEMS,
  ...SENSE_PROBLEMS,
};
