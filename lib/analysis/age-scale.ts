/** Age scales, and the median age that stands for a method. */

import { median } from 'simple-statistics';
import type { AgeScale } from './models.ts';
import type { AgedFlower } from './within-between.ts';

/**
 * The age of pollen on a scale: days as they are, or the logarithm of one day more. Fresh pollen has age 0 on both.
 *
 * @param ageDays days from collection to pollination, 0 or more
 * @example
 * onScale(Math.E - 1, 'log1p-days'); // 1
 */
export function onScale(ageDays: number, ageScale: AgeScale): number {
  return ageScale === 'days' ? ageDays : Math.log1p(ageDays);
}

/** Median age in days of a method's pollen among some flowers; null where there is none. */
export function medianAge(flowers: readonly AgedFlower[], storage: string): number | null {
  const ages = flowers.filter((flower) => flower.storage === storage).map(({ ageDays }) => ageDays);
  return ages.length === 0 ? null : median(ages);
}
