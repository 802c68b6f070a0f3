/** The words of the page for fellow growers that depend on the season. */

import type { Settle } from '../../analysis/settle.ts';
import type { Proportion } from '../../proportions/interval.ts';
import { flowersIn, pairsIn } from './nouns.ts';
import { counts, inTen, percent, rateWithRange, wholeNumber } from './numbers.ts';
import { pollenOf } from './storage.ts';

export const RANGE_CAPTION = 'La misma frecuencia con pocas y con muchas flores, y ninguna de cinco';

export const RANGE_COLUMNS = ['flores que cuajaron', 'con qué frecuencia, a la larga'] as const;

export function rangeRows(proportions: readonly Proportion[]): readonly (readonly string[])[] {
  return proportions.map((proportion) => {
    const { fruits, flowers } = proportion;
    const shown = counts(fruits, flowers);
    const said = rateWithRange(proportion)
      .replace(shown, '')
      .replace(/^[\s;(]+|\)$/g, '');
    return [shown, said];
  });
}

export function couldBeSaid(overall: Proportion, level: number): string {
  const { fruits, flowers } = overall;
  const share = percent(level).replace(/\s%/, '');
  const promise = `De cada 100 márgenes calculados así, alrededor de ${share} contienen la frecuencia verdadera.`;
  if (flowers === 0) return promise;
  const shown = counts(fruits, flowers);
  const took = `${shown} ${flowers === 1 ? 'flor' : 'flores'}`;
  const said = rateWithRange(overall).replace(shown, took);
  return `En esta temporada ${fruits === 1 ? 'cuajó' : 'cuajaron'} ${said}. ${promise}`;
}

export function splitTestSaid({ freshVersusStored, power, trueDifference }: Settle): string {
  const found =
    `Si la diferencia verdadera es de ${wholeNumber(10 * trueDifference)} de cada 10 flores, la prueba la encuentra ` +
    `${inTen(power)} veces.`;
  const [first] = freshVersusStored;
  if (first === undefined || first.needed === null)
    return 'Todavía no se puede decir cuántas flores hacen falta: en esta temporada no se usó polen guardado. Unas pocas parejas son un comienzo; las flores de cada temporada se suman.';
  const { pairs, flowersPerKind, needed, storage } = first;
  return (
    `Con los números de esta temporada, comparar polen fresco con ${pollenOf(storage)} exige ${pairsIn(pairs)} con ` +
    `${flowersIn(flowersPerKind)} de cada tipo, ${flowersIn(needed)} en total. ${found} ` +
    'Menos flores no se pierden: las de varias temporadas se suman.'
  );
}
