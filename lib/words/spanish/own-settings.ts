/** The words of the page for one's own file about its settings and about a copy to share, in Spanish. */

import type { FailureCode, FailureDetails } from '../english-failures.ts';
import { type PageRefusals, pageRefusal } from '../told/page-fixes.ts';
import { cited } from '../told/places.ts';
import { failureWords } from './failures.ts';

export const OWN_SETTINGS = {
  more: 'Más ajustes',
  moreHint: 'La mayoría de las temporadas no necesita ninguno. Cuentan al calcular.',
  levelLabel: 'De 100 márgenes, ¿cuántos deben contener la verdad?',
  levelHint: 'En blanco: 95.',
  asOfLabel: 'Día hasta el que han pasado las cosas',
  asOfHint:
    'En blanco: el último día de sus archivos. Es propio de esta temporada, así que no se guarda con los ajustes.',
  ageLegend: 'Cómo cuenta la edad del polen',
  ageBoth: 'De ambas maneras, según lo que digan sus propias flores',
  ageDays: 'Todos los días por igual',
  ageLog: 'Los primeros días, más',
  dateLegend: 'Días que una hoja de cálculo escribió como números, como 45809',
  dateUnsaid: 'Contados como dice el archivo; si no, desde 1900',
  date1900: 'Contados desde 1900',
  date1904: 'Contados desde 1904, como en hojas antiguas hechas en un Mac',
  map: {
    legend: 'Una columna suya que no se entendió',
    first: 'Su columna',
    second: 'Qué contiene',
    flowers: null,
    add: 'Leerla así',
    said: (header: string, column: string): string => `${cited(header)} es ${column}`,
  },
  same: {
    legend: 'Dos nombres de una planta',
    first: 'Nombre que se conserva',
    second: 'Otro nombre',
    flowers: null,
    add: 'Añadir estos nombres',
    said: (first: string, second: string): string => `${second} es ${first}`,
  },
  must: {
    legend: 'Cruces que la próxima temporada debe probar',
    first: 'Planta madre',
    second: 'Planta padre',
    flowers: 'Mínimo de flores',
    add: 'Añadir este cruce',
    said: (names: string, flowers: number): string => `${names}: al menos ${flowers}`,
  },
  atMost: {
    legend: 'Máximo de flores para una planta padre',
    first: 'Planta padre',
    second: 'En qué planta madre',
    flowers: 'Máximo de flores',
    add: 'Añadir este límite',
    said: (names: string, flowers: number): string => `${names}: como máximo ${flowers}`,
  },
  wishHint: 'Vale para el plan, que necesita las flores que usted espera la próxima temporada.',
  anySeedParent: 'todas juntas',
  choosePlant: 'elija',
  takeOut: (what: string): string => `Quitar: ${what}`,
  incomplete: {
    map: 'Elija primero su columna y qué contiene.',
    same: 'Elija primero dos nombres distintos.',
    must: 'Elija la madre y el padre, y un número entero de flores, de 1 en adelante.',
    atMost: 'Elija la planta padre y un número entero de flores.',
  },
  alike: (kept: string, other: string): string => `¿Son ${cited(kept)} y ${cited(other)} la misma planta?`,
  alikeYes: (kept: string): string => `Sí: una planta, ${cited(kept)}`,
  alikeNo: 'No: dos plantas',
  wrongLevel: 'Cuántos márgenes contienen la verdad ha de ser un número mayor que 0 y menor que 100.',
  wrongAsOf: 'El día hasta el que han pasado las cosas ha de ser un día que exista, como AAAA-MM-DD.',
  fileRead: (name: string): string => `Se usan los ajustes de ${name}.`,
} as const;

export const OWN_SHARING = {
  summary: 'Hacer una copia para compartir',
  what: 'En una copia codificada las plantas, los viales, las etiquetas y los cultivadores figuran con códigos, todas las fechas se desplazan el mismo número de días y las notas no se incluyen. Las edades, las mañanas y los recuentos siguen siendo verdaderos.',
  legend: 'Qué se puede mostrar',
  codes: 'Todos los cruces, con códigos; otros pueden leerlos y analizarlos de nuevo',
  summaryOnly: 'Solo el resumen: nada sobre plantas, parejas y viales sueltos',
  keyLabel: 'El archivo de clave de una copia anterior, para que las mismas plantas conserven sus códigos',
  keyHint: 'Si se deja vacío, se hace una clave nueva.',
  button: 'Hacer la copia',
  making: 'La copia se calcula a partir de sus propios archivos; tarda más o menos lo que el informe.',
  stop: 'Dejar de hacerla',
  stopped: 'Parado. No se ha hecho ninguna copia.',
  ready:
    'Se han buscado en la copia sus nombres, fechas y notas: no hay ninguno. Guarde sus archivos, y la clave aparte de ellos.',
  save: (name: string): string => `Guardar ${name}`,
  saveKey: 'Guardar la clave, solo para usted',
  keyRead: (name: string): string =>
    `${name} es la clave de las copias codificadas: la próxima copia la usará.`,
} as const;

const SAVED_SETTINGS = 'Elija un archivo de ajustes que haya guardado esta página o la orden.';

const REFUSALS: PageRefusals<FailureCode, FailureDetails> = {
  failureWords,
  options: {
    '--must': `«${OWN_SETTINGS.must.legend}»`,
    '--at-most': `«${OWN_SETTINGS.atMost.legend}»`,
    '--worth': '«Cuántas deben cuajar»',
    '--level': '«Cuántos márgenes contienen la verdad»',
  },
  fixes: {
    'wish-without-flowers':
      'Diga qué dará cada planta en «Flores que espera la próxima temporada», o quite el deseo.',
    'wish-unclear': 'Dé a una de las plantas otro nombre en la hoja.',
    'plant-unknown': 'Quite el deseo, y elija la planta de la lista.',
    'option-value': 'Corríjalo en el archivo de ajustes, y elija ese archivo otra vez.',
    'settings-not-json': SAVED_SETTINGS,
    'settings-version': SAVED_SETTINGS,
    'key-not-ours': 'Elija la clave que se guardó con una copia anterior, o ninguna.',
    'dates-too-far': 'Corrija las fechas, o haga la copia con una clave nueva.',
  },
};

export function refusedOnPage(code: FailureCode, details: FailureDetails): string {
  return pageRefusal(code, details, REFUSALS);
}
