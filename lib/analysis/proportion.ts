import { type Proportion, unknown } from '../proportions/interval.ts';
import { wilson } from '../proportions/one-sample.ts';

/**
 * Proportion: fruits of flowers with Wilson's score interval, or no rate where there is no flower.
 *
 * @param fruits whole number from 0 to `flowers`
 * @param flowers whole number of at least 0
 * @param level confidence level, a proportion in (0, 1)
 * @returns the counts with `{ estimate, lower, upper }`, all null because `no-flowers` where `flowers` is 0
 * @throws RangeError from `wilson` where the counts break its rules
 * @example
 * proportion(7, 20, 0.95).estimate; // 0.35
 */
export function proportion(fruits: number, flowers: number, level: number): Proportion {
  if (flowers === 0) return { fruits, flowers, ...unknown('no-flowers') };
  return { fruits, flowers, ...wilson(fruits, flowers, { level }) };
}

/** The proportion of flowers that set fruit, counted over a list of them. */
export function proportionOf(flowers: readonly { readonly fruit: 0 | 1 }[], level: number): Proportion {
  const fruits = flowers.reduce((sum, { fruit }) => sum + fruit, 0);
  return proportion(fruits, flowers.length, level);
}
