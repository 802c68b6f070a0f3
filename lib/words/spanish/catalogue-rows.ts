/** The catalogue of what can be wrong with one row: its cells, and what they say taken together. */

import type { RowProblemCode } from '../../season/problems.ts';
import type { EntryParts } from '../catalogue-entry.ts';
import { CELL_ENTRIES } from './catalogue-cells.ts';
import { LEFT_OUT, USED, WITHOUT_CELL } from './catalogue-entry.ts';

const ONE_OF_TWO = 'Corrija uno de los dos datos.';
const NEITHER = 'No se usa ninguna de las dos filas, porque nada dice cuál es la buena.';
const FIRST = 'Se usa la primera fila; esta queda fuera.';
const DELETE_ONE = 'Borre una de las dos filas.';
const PASTED = 'una fila pegada dos veces';
const YEARS = 'Revise los años de ambas fechas.';
const OUTCOME_BELIEVED = `${USED} Se da por bueno el resultado.`;

export const ROW_ENTRIES: Readonly<Record<RowProblemCode, EntryParts>> = {
  ...CELL_ENTRIES,
  'tag-repeated': [
    'error',
    'La misma etiqueta está dos veces, con el mismo contenido.',
    FIRST,
    DELETE_ONE,
    PASTED,
  ],
  'tag-conflict': [
    'error',
    'La misma etiqueta está dos veces, con distinto contenido.',
    NEITHER,
    'Corrija la etiqueta de una, o borre la fila equivocada.',
    'T-12 con fruit y T-12 con none',
  ],
  'vial-repeated': [
    'error',
    'El mismo vial está dos veces, con el mismo contenido.',
    FIRST,
    DELETE_ONE,
    PASTED,
  ],
  'vial-conflict': [
    'error',
    'El mismo vial está dos veces, con distinto contenido.',
    NEITHER,
    'Dé a uno de ellos un nombre propio, o borre la fila equivocada.',
    'F-01 de dos plantas',
  ],
  'flowers-repeated': [
    'warning',
    'Se espera que la misma planta florezca dos veces en los mismos días.',
    'Se usan ambas filas.',
    'Borre una si se refieren a las mismas flores.',
    PASTED,
  ],
  'future-date': [
    'error or warning',
    'Una fecha es posterior al día hasta el que se lee (--as-of).',
    'Una polinización, o una recogida en el archivo de viales, deja fuera su fila; una cosecha no se da por buena.',
    'Corrija la fecha, o dé un --as-of posterior.',
    '2052-06-20',
  ],
  'outcome-after-as-of': [
    'warning',
    'El resultado se vio después del día hasta el que se lee (--as-of).',
    'La fila cuenta como pendiente.',
    'Corrija la fecha, o dé un --as-of posterior.',
    'revisada el 2026-08-01, leída hasta el 2026-07-01',
  ],
  'collected-after-pollination': [
    'warning',
    'El polen se recogió después de usarlo.',
    `${USED} Su fecha de recogida no se da por buena.`,
    ONE_OF_TWO,
    'recogido el 2025-06-20, usado el 2025-06-01',
  ],
  'fresh-collected-earlier': [
    'warning',
    'El polen consta como fresco, pero se recogió días antes.',
    `${USED} El polen fresco tiene edad 0.`,
    'Corrija la fecha, o indique cómo se guardó el polen.',
    'fresco, recogido diez días antes',
  ],
  'age-missing': [
    'warning',
    'El polen guardado no tiene fecha, ni edad, ni un vial cuya fecha se conozca.',
    'La fila cuenta en las frecuencias simples, no donde importa la edad.',
    'Complete pollen_collected, pollen_age_days o vial; dé también el archivo de viales.',
    'frozen, y nada más',
  ],
  'age-disagrees': [
    'warning',
    'Dos fuentes dan al polen edades distintas.',
    `${USED} La fecha de recogida va antes que los días indicados, y estos antes que el vial.`,
    ONE_OF_TWO,
    'recogido 31 días antes, pollen_age_days 12',
  ],
  'age-over-ten-years': [
    'warning',
    'El polen tenía más de diez años.',
    USED,
    'Revise el año en que se recogió.',
    'recogido el 2005-03-01, usado el 2025-06-01',
  ],
  'vial-unknown': [
    'warning',
    'El vial no está en el archivo de viales.',
    USED,
    'Añádalo allí, o corrija su nombre aquí.',
    'F-99',
  ],
  'vial-before-collected': [
    'warning',
    'El vial se usó antes de que se recogiera su polen.',
    `${USED} La edad según el vial no se da por buena.`,
    'Corrija el vial o una de las fechas.',
    'usado en junio, recogido en julio',
  ],
  'vial-beyond-doses': [
    'warning',
    'Nombran el vial más flores que aquellas para las que se llenó.',
    USED,
    'Corrija el vial de algunas flores, o doses_filled en el archivo de viales.',
    '7 flores de un vial de 5 dosis',
  ],
  'vial-father-differs': [
    'warning',
    'El vial contiene polen de otra planta que la que dice la fila.',
    `${USED} Se da por buena la fila.`,
    ONE_OF_TWO,
    'Salt Moon, de un vial de Owl Hour',
  ],
  'vial-storage-differs': [
    'warning',
    'El vial se guarda de otro modo que el que dice la fila.',
    `${USED} Se da por buena la fila.`,
    ONE_OF_TWO,
    'refrigerado, de un vial congelado',
  ],
  'year-stands-alone': [
    'warning',
    'Una fecha de polinización, de recogida o de floración está a más de cinco años de todas las demás.',
    `${USED} Una polinización demasiado tardía desplaza además el día para el que se aconseja sobre los viales.`,
    'Corrija el año, si es un descuido.',
    '2052-06-20 entre flores de 2025',
  ],
  'own-pollen': [
    'warning',
    'Una planta se polinizó con su propio polen y la fila no está marcada como control.',
    'La fila cuenta como un cruce.',
    'Escriba selfed en la columna control si lo era.',
    'Owl Hour × Owl Hour',
  ],
  'selfed-with-other-pollen': [
    'error',
    'El control consta como autopolinizado (selfed), pero tiene polen de otra planta.',
    LEFT_OUT,
    'Deje control en blanco si era un cruce; si no, corrija el padre.',
    'selfed, Owl Hour × Salt Moon',
  ],
  'unpollinated-with-pollen': [
    'warning',
    'Un control sin polinizar tiene padre, almacenamiento, edad o vial.',
    `${USED} Lo que dice del polen no se da por bueno.`,
    'Deje control en blanco si era un cruce; si no, vacíe la celda.',
    'unpollinated, frozen',
  ],
  'checked-before-pollination': [
    'warning',
    'La flor se miró antes de polinizarla.',
    WITHOUT_CELL,
    ONE_OF_TWO,
    'revisada el 2025-05-16, polinizada el 2025-06-01',
  ],
  'checked-too-early': [
    'warning',
    'Se anotó un fruto antes de que se distinga de una flor marchita.',
    USED,
    'Revise las fechas, o escriba pending.',
    'un fruto a los dos días',
  ],
  'checked-too-late': [
    'warning',
    'La flor se miró más de un año después de polinizarla.',
    WITHOUT_CELL,
    YEARS,
    'revisada el 2052-06-15, polinizada el 2025-06-01',
  ],
  'harvested-too-late': [
    'warning',
    'El fruto se cosechó más de dos años después de polinizar su flor.',
    WITHOUT_CELL,
    YEARS,
    'cosechado el 2052-08-16, polinizada el 2025-06-01',
  ],
  'harvested-before-pollination': [
    'warning',
    'El fruto se cosechó antes de polinizar su flor.',
    WITHOUT_CELL,
    ONE_OF_TWO,
    'cosechado el 2025-05-16, polinizada el 2025-06-01',
  ],
  'harvested-without-fruit': [
    'warning',
    'Se anotó la cosecha de una flor que no dio fruto.',
    OUTCOME_BELIEVED,
    'Escriba fruit como resultado, o vacíe la fecha de cosecha.',
    'none, cosechado el 2025-08-16',
  ],
  'seeds-without-fruit': [
    'warning',
    'Se anotaron semillas de una flor que no dio fruto.',
    OUTCOME_BELIEVED,
    'Escriba fruit como resultado, o vacíe el número de semillas.',
    'none, 40 semillas',
  ],
  'more-sown-than-seeds': [
    'warning',
    'Se sembraron más semillas que las que tenía el fruto.',
    WITHOUT_CELL,
    ONE_OF_TWO,
    '300 sembradas de 212',
  ],
  'more-germinated-than-sown': [
    'warning',
    'Germinaron más semillas que las que se sembraron.',
    WITHOUT_CELL,
    ONE_OF_TWO,
    '30 germinadas de 20',
  ],
  'opens-backwards': [
    'warning',
    'La floración terminaría antes de empezar.',
    `${USED} No se da por buena ninguna de las dos fechas.`,
    ONE_OF_TWO,
    'de 2026-06-01 a 2026-05-01',
  ],
};
