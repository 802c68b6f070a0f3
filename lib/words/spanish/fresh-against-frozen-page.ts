/** What the page that holds fresh against stored pollen pair by pair says. */

import type { Estimate } from '../../proportions/interval.ts';
import { pairsIn } from './nouns.ts';
import { CANNOT_TELL, capitalised, counts, decimal, wholeNumber } from './numbers.ts';
import { pollenOf, storageLabel } from './storage.ts';

/** A count of flowers out of all of them. */
type Share = readonly [some: number, all: number];

const KINDS: Readonly<Record<'hard' | 'easy' | 'never', readonly [one: string, many: string]>> = {
  hard: ['difícil', 'difíciles'],
  easy: ['fácil', 'fáciles'],
  never: ['que nunca recibió polen fresco', 'que nunca recibieron polen fresco'],
};

export const freshAgainstFrozenPage = {
  work: (method: string, ofStored: Share, ofFresh: Share): string => {
    if (ofFresh[1] === 0)
      return 'Ninguna pareja recibió polen fresco, así que ninguna se puede llamar difícil ni fácil.';
    const start = 'En las parejas que recibieron polen fresco, estaban en parejas difíciles';
    const fresh = `${counts(...ofFresh)} flores con polen fresco`;
    if (ofStored[1] === 0) return `${start} ${fresh}; ninguna de ellas recibió también ${pollenOf(method)}.`;
    return `${start} ${counts(...ofStored)} flores con ${pollenOf(method)} y ${fresh}.`;
  },
  workCaption: 'Flores por tipo de pareja y de polen',
  workColumns: (method: string) => ['Parejas', 'Polen fresco', capitalised(pollenOf(method))],
  kindOfPair: (kind: 'hard' | 'easy' | 'never', pairs: number): string =>
    `${wholeNumber(pairs)} ${KINDS[kind][pairs === 1 ? 0 : 1]}`,
  same: (method: string, pairs: number, fresh: number, stored: number): string =>
    pairs === 0
      ? `Ninguna pareja tuvo polen fresco y ${pollenOf(method)}, así que no se puede comparar nada en igualdad de condiciones.`
      : `${wholeNumber(pairs)} ${pairs === 1 ? 'pareja tuvo' : 'parejas tuvieron'} ambos tipos: el polen fresco cuajó más a menudo en ${wholeNumber(fresh)}, el ` +
        `guardado en ${wholeNumber(stored)}, y en ${wholeNumber(pairs - fresh - stored)} los dos por igual.`,
  noPairToDraw: 'No hay ninguna pareja que dibujar.',
  drawing: 'Un círculo por pareja: frutos de cada 10 flores con polen fresco frente a polen guardado',
  /** The two lines of an axis' title. */
  freshAxis: ['polen fresco:', 'frutos de cada 10'],
  storedAxis: (method: string) => [`${pollenOf(method)}:`, 'frutos de cada 10'],
  label: (method: string): string =>
    `Polen fresco frente a ${pollenOf(method)} en las parejas que tuvieron ambos`,
  finding: (fresh: number, stored: number): string =>
    'Un círculo por pareja, mayor cuantas más flores. Por debajo de la línea discontinua cuajó más a menudo el polen fresco ' +
    `(${pairsIn(fresh)}); por encima, el guardado (${wholeNumber(stored)}).`,
  description:
    'Un círculo por cada pareja que tuvo ambos tipos de polen, y la línea en la que ambos cuajarían por igual.',
  sameCaption: 'Parejas que tuvieron ambos tipos de polen',
  sameColumns: (method: string) => ['Pareja (madre × polen)', 'Fresco', capitalised(storageLabel(method))],
  specification: 'El gráfico de las parejas que tuvieron ambos tipos de polen, para programas (Vega-Lite)',
  nothingStored: 'No se usó polen guardado, así que no hay nada que comparar.',
  lostDifference: (method: string, lowest: number | null, highest: number | null): string => {
    const inTen = (value: number | null) => (value === null ? 'desconocido' : decimal(10 * value, 1));
    return (
      `Contando todas las flores, la diferencia entre polen fresco y ${pollenOf(method)} sería de ${inTen(lowest)} a ` +
      `${inTen(highest)} frutos de cada 10 flores, oculten lo que oculten las etiquetas perdidas.`
    );
  },
  none: 'ninguna',
  seasonsCaption: 'Frutos de flores por temporada',
  fathersCaption: 'Frutos de flores por padre',
  byColumns: (by: 'season' | 'pollenParent', method: string) => [
    by === 'season' ? 'Temporada' : 'Padre (da el polen)',
    'Fresco',
    capitalised(storageLabel(method)),
  ],
  ratio: ({ estimate, lower, upper }: Estimate): string =>
    estimate === null
      ? CANNOT_TELL
      : `${decimal(estimate, 2)} (quizá de ${lower === null ? 'casi 0' : decimal(lower, 2)} a ${upper === null ? 'cualquier valor' : decimal(upper, 2)})`,
  oddsCaption: (method: string): string =>
    `Odds de dar fruto, fresco ÷ ${storageLabel(method)}, dentro de las parejas`,
  oddsColumns: ['Método', 'Razón de odds'],
  commonOdds: 'Razón de odds común',
  conditionalOdds: 'Razón de odds condicional',
  noOdds: 'No se usó polen guardado.',
};
