/** Die Worte der Seite für andere Züchter, die von der Saison abhängen. */

import type { Settle } from '../../analysis/settle.ts';
import type { Proportion } from '../../proportions/interval.ts';
import { flowersIn, pairsIn } from './nouns.ts';
import { counts, inTen, percent, rateWithRange, wholeNumber } from './numbers.ts';
import { pollenOf } from './storage.ts';

export const RANGE_CAPTION = 'Dieselbe Rate aus wenigen und aus vielen Blüten, und keine von fünf';

export const RANGE_COLUMNS = ['Blüten mit Ansatz', 'wie oft auf lange Sicht'] as const;

export function rangeRows(proportions: readonly Proportion[]): readonly (readonly string[])[] {
  return proportions.map((proportion) => {
    const shown = counts(proportion.fruits, proportion.flowers);
    const said = rateWithRange(proportion)
      .replace(shown, '')
      .replace(/^[\s;(]+|\)$/g, '');
    return [shown, said];
  });
}

export function couldBeSaid(overall: Proportion, level: number): string {
  const { fruits, flowers } = overall;
  const promise = `Von 100 so gebildeten Spannen enthalten etwa ${percent(level).replace(/\s*%/, '')} die wahre Rate.`;
  if (flowers === 0) return promise;
  const shown = counts(fruits, flowers);
  const said = rateWithRange(overall).replace(
    shown,
    `${shown} ${flowers === 1 ? 'Blüte' : 'Blüten'} angesetzt`,
  );
  return `In dieser Saison haben ${said}. ${promise}`;
}

export function splitTestSaid({ freshVersusStored, power, trueDifference }: Settle): string {
  const found = `Ist der wahre Unterschied ${wholeNumber(10 * trueDifference)} von je 10 Blüten, so findet der Versuch einen mit einer Chance von ${inTen(power)}.`;
  const [first] = freshVersusStored;
  if (first === undefined || first.needed === null)
    return 'Wie viele Blüten es braucht, lässt sich noch nicht sagen: in dieser Saison wurde kein gelagerter Pollen verwendet. Einige Paare sind ein Anfang; die Blüten jeder Saison kommen hinzu.';
  const { pairs, flowersPerKind, needed, storage } = first;
  return (
    `Nach den Zahlen dieser Saison braucht frisch gegen ${pollenOf(storage, 'accusative')} ${pairsIn(pairs)} mit ` +
    `${flowersIn(flowersPerKind)} von jeder Art, zusammen ${flowersIn(needed)}. ${found} ` +
    'Weniger Blüten sind nicht verloren: die mehrerer Saisons zählen zusammen.'
  );
}
