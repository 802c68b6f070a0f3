/** What the page for fellow growers says beside its prose. */
import type { Settle } from '../../analysis/settle.ts';
import type { Proportion } from '../../proportions/interval.ts';
import { chanceOf, counted, counts, rateWithRange, wholeNumber } from './numbers.ts';
import { pollenOf } from './storage.ts';

export const RANGE_CAPTION = 'Le même taux de peu et de beaucoup de fleurs, et aucune sur cinq';
export const RANGE_COLUMNS = ['fleurs qui ont noué', 'combien à la longue'] as const;

/** Counts, and the range that they leave. */
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

/** This season's rate with its range, and what the level promises. */
export function couldBeSaid(overall: Proportion, level: number): string {
  const { fruits, flowers } = overall;
  const promise = `Sur 100 fourchettes faites ainsi, environ ${wholeNumber(100 * level)} contiennent le vrai taux.`;
  if (flowers === 0) return promise;
  const shown = counts(fruits, flowers);
  const said = rateWithRange(overall).replace(
    shown,
    `${shown} ${flowers === 1 ? 'fleur a noué' : 'fleurs ont noué'}`,
  );
  return `Dans cette saison ${said}. ${promise}`;
}

/** How many flowers a split test takes. */
export function splitTestSaid({ freshVersusStored, power, trueDifference }: Settle): string {
  const found = `Si la vraie différence est de ${wholeNumber(10 * trueDifference)} pour 10 fleurs, l’essai en trouve une avec ${chanceOf(power)}.`;
  const [first] = freshVersusStored;
  if (first === undefined || first.needed === null)
    return 'On ne peut pas encore dire combien de fleurs il faut : aucun pollen stocké n’a été utilisé cette saison. Quelques couples sont un début ; les fleurs de chaque saison s’ajoutent.';
  const { pairs, flowersPerKind, needed, storage } = first;
  return (
    `D’après les nombres de cette saison, pollen frais contre ${pollenOf(storage)} demande ${counted(pairs, 'couple')} avec ` +
    `${counted(flowersPerKind, 'fleur')} de chaque sorte, ${counted(needed, 'fleur')} en tout. ${found} ` +
    'Moins de fleurs ne sont pas perdues : celles de plusieurs saisons s’ajoutent.'
  );
}
