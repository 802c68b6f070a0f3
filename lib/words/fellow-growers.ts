/** The words of the page for fellow growers that depend on the season. */

import type { Settle } from '../analysis/settle.ts';
import type { Proportion } from '../proportions/interval.ts';
import { counted, counts, inTen, percent, rateWithRange, wholeNumber } from './numbers.ts';
import { pollenOf } from './storage.ts';

/** Caption of the table that shows what more flowers do to a range. */
export const RANGE_CAPTION = 'The same rate from few and from many flowers, and none of five';

/** Headings of the table that shows what more flowers do to a range. */
export const RANGE_COLUMNS = ['flowers that took', 'how often in the long run'] as const;

/**
 * A row for each of some proportions: "7 of 20", "about 4 in 10; could be 2 to 6 in 10".
 *
 * @example
 * rangeRows([{ fruits: 0, flowers: 5, estimate: 0, lower: 0, upper: 0.43 }])[0][1] // 'could still be as high as 4 in 10'
 */
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

/**
 * What "could be" means, on the flowers of this season.
 *
 * @example
 * couldBeSaid({ fruits: 0, flowers: 0, estimate: null, lower: null, upper: null }, 0.95) // 'Of 100 ranges made in this way, about 95 hold the true rate.'
 */
export function couldBeSaid(overall: Proportion, level: number): string {
  const { fruits, flowers } = overall;
  const promise = `Of 100 ranges made in this way, about ${percent(level).replace('%', '')} hold the true rate.`;
  if (flowers === 0) return promise;
  const shown = counts(fruits, flowers);
  const said = rateWithRange(overall).replace(shown, `${shown} ${flowers === 1 ? 'flower' : 'flowers'} took`);
  return `In this season ${said}. ${promise}`;
}

/**
 * How many flowers a fair test of stored pollen takes, by the season's own numbers.
 *
 * @example
 * const unused = { freshVersusStored: [], power: 0.8, trueDifference: 0.2 };
 * splitTestSaid(unused); // 'How many flowers it takes cannot be said yet: no stored pollen was used in this season.…'
 */
export function splitTestSaid({ freshVersusStored, power, trueDifference }: Settle): string {
  const found = `If the true difference is ${wholeNumber(10 * trueDifference)} in every 10 flowers, the test finds one with a chance of ${inTen(power)}.`;
  const [first] = freshVersusStored;
  if (first === undefined || first.needed === null)
    return 'How many flowers it takes cannot be said yet: no stored pollen was used in this season. A few pairs are a beginning; each season’s flowers add up.';
  const { pairs, flowersPerKind, needed, storage } = first;
  return (
    `By the numbers of this season, fresh against ${pollenOf(storage)} takes ${counted(pairs, 'pair')} with ` +
    `${counted(flowersPerKind, 'flower')} of each kind, ${counted(needed, 'flower')} in all. ${found} ` +
    'Fewer flowers are not lost: those of several seasons add up.'
  );
}
