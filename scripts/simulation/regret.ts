/**
 * What a rule for stored pollen costs, in fruits a flower, against one who knows the truth.
 *
 * A vial can serve some flowers on the day of use and as many a year later. A flower that gets the vial's pollen is worth the
 * vial's true fruit set on that day; a flower that goes elsewhere is worth what the grower holds a flower to be worth. So to
 * use a vial on a day costs max(0, worth − rate) a flower, not to use it max(0, rate − worth).
 */

import type { VialVerdict } from '../../lib/decisions/vials.ts';

/** Flowers that a vial can serve on each of the two days. */
export const FLOWERS = 4;
/** Of these, those that a test on the day of use takes. */
export const TESTS = 2;

/** True fruit set of a vial on the two days. */
export interface TrueRates {
  readonly onDay: number;
  readonly yearLater: number;
}

/** On which days a vial is used. */
export interface Use {
  readonly onDay: boolean;
  readonly yearLater: boolean;
}

const USES: Readonly<Record<Exclude<VialVerdict, 'test-first'>, Use>> = {
  keep: { onDay: true, yearLater: true },
  'use-first': { onDay: true, yearLater: false },
  discard: { onDay: false, yearLater: false },
};

function cost(used: boolean, rate: number, worth: number): number {
  return used ? Math.max(0, worth - rate) : Math.max(0, rate - worth);
}

/** Regret of a use, a flower; and that of the day of use alone. */
export interface Regret {
  readonly both: number;
  readonly onDay: number;
}

/** Regret of using a vial on these days. */
export function regretOfUse(use: Use, rates: TrueRates, worth: number): Regret {
  const onDay = cost(use.onDay, rates.onDay, worth);
  return { onDay, both: (onDay + cost(use.yearLater, rates.yearLater, worth)) / 2 };
}

/** Probability of so many fruits of the test flowers. */
function chance(fruits: number, rate: number): number {
  const ways = fruits === 0 || fruits === TESTS ? 1 : TESTS;
  return ways * rate ** fruits * (1 - rate) ** (TESTS - fruits);
}

/**
 * Regret of a verdict. `test-first` puts the test flowers on the vial, good or bad, and does with the others what is then
 * thought of it; a vial that is still to be tested after them is not used.
 *
 * @param after the verdict after so many fruits of the test flowers
 */
export function regretOfVerdict(
  verdict: VialVerdict,
  after: (fruits: number) => VialVerdict,
  rates: TrueRates,
  worth: number,
): Regret {
  if (verdict !== 'test-first') return regretOfUse(USES[verdict], rates, worth);
  let [onDay, yearLater] = [(TESTS / FLOWERS) * cost(true, rates.onDay, worth), 0];
  for (let fruits = 0; fruits <= TESTS; fruits += 1) {
    const next = after(fruits);
    const use = next === 'test-first' ? USES.discard : USES[next];
    const likely = chance(fruits, rates.onDay);
    onDay += (1 - TESTS / FLOWERS) * likely * cost(use.onDay, rates.onDay, worth);
    yearLater += likely * cost(use.yearLater, rates.yearLater, worth);
  }
  return { onDay, both: (onDay + yearLater) / 2 };
}

/** Kullback–Leibler divergence of an estimated from a true probability (Kullback & Leibler 1951), in nats. */
export function divergence(truth: number, estimate: number): number {
  const part = (p: number, q: number) => (p === 0 ? 0 : p * Math.log(p / q));
  return part(truth, estimate) + part(1 - truth, 1 - estimate);
}
