/** The words of the page on which a season can be explored, in Spanish. */

import { choicesIn, type ExploredBy } from '../told/choices.ts';
import { counts, joined, limit, rate, wholeNumber } from './numbers.ts';
import { ageBandLabel, RATE_AXIS } from './rate-figures.ts';
import { storageLabel } from './storage.ts';

const NAMES: Readonly<Record<ExploredBy, string>> = {
  storage: 'Conservación',
  age: 'Edad del polen',
  season: 'Temporada',
  seedParent: 'Planta madre',
  pollenParent: 'Planta padre',
};

export const EXPLORE = {
  title: 'Explorar',
  description:
    'Elija conservación, edad, temporada y progenitores: los recuentos, los márgenes y los gráficos cambian con su elección.',
  needsScript:
    'Los gráficos y los recuentos de esta página siguen su elección con un guion propio (script), y aquí los guiones están desactivados. Las demás páginas no necesitan ninguno.',
  chooseHeading: 'Elija flores',
  choose:
    'Quite lo que no quiera ver. Un clic en una fila de un gráfico muestra solo esa fila; un segundo clic, todas.',
  dimension: (dimension: ExploredBy): string => NAMES[dimension],
  anyParent: 'todas las plantas',
  reset: 'Mostrar otra vez todas las flores',
  chartsHeading: 'Gráficos',
  charts: `En cada fila: ${RATE_AXIS}, un punto con su margen (95\u202F%), y cuántas cuajaron. Cada gráfico cuenta las flores que cumplen todo lo demás que ha elegido; las filas que quitó se ven pálidas.`,
  chartLabel: (dimension: ExploredBy): string => `Cuajado según: ${NAMES[dimension].toLowerCase()}`,
  tablesHeading: 'Las flores elegidas, en números',
  caution:
    'Son recuentos tal cual. El polen guardado va a menudo a parejas más difíciles, así que dos filas pueden diferir por otras razones que la que usted eligió: compare el polen fresco y el guardado en las mismas parejas.',
  storageCaption: 'Según la conservación del polen',
  storageColumns: ['polen', 'frutos', 'flores', 'frecuencia y margen'],
  pairCaption: 'Por parejas, primero las de más flores',
  pairColumns: ['pareja (madre × polen)', 'frutos', 'flores', 'frecuencia y margen'],
} as const;

export const { choiceLabel, rowCounts, rateCell, chosenSaid, choiceSaid, countCells } = choicesIn({
  names: NAMES,
  ageUnknown: 'edad desconocida',
  noFlowers: 'ninguna flor',
  noneFits: 'Ninguna flor cumple esta elección.',
  everyFlower: 'Todas las flores de resultado conocido.',
  none: 'nada',
  colon: ': ',
  asHighAs: (end) => `quizá hasta ${end}`,
  asLowAs: (end) => `quizá solo ${end}`,
  took: (fruits, flowers, range) =>
    `${fruits === 1 ? 'Cuajó' : 'Cuajaron'} ${counts(fruits, flowers)} ${flowers === 1 ? 'flor' : 'flores'} (${range}).`,
  ...{ storageLabel, ageBandLabel, joined, counts, wholeNumber, limit, rate },
});
