/** What growers go by without a model: raw rates, and three rules of thumb for stored pollen. */

import type { Flower } from '../../lib/analysis/flowers.ts';
import { daysBetween } from '../../lib/season/dates.ts';
import type { Vial } from '../../lib/season/season.ts';
import type { Use } from './regret.ts';

/** The rules of thumb, in the order of the table. */
export const RULES = ['discard after one year', 'keep all', 'the father’s own stored rate'] as const;

export interface RawRate {
  readonly fruits: number;
  readonly flowers: number;
}

/** Raw rates of stored pollen. */
export interface StoredRates {
  readonly pooled: RawRate;
  /** Of a pollen parent; that of all where it has none of its own. */
  readonly father: (pollenParent: string) => RawRate;
}

/** Fruits of some flowers. */
export function rawRate(flowers: readonly Flower[]): RawRate {
  return { fruits: flowers.reduce((sum, { fruit }) => sum + fruit, 0), flowers: flowers.length };
}

export function storedRates(flowers: readonly Flower[]): StoredRates {
  const stored = flowers.filter(({ storage }) => storage !== 'fresh');
  const pooled = rawRate(stored);
  return {
    pooled,
    father: (pollenParent) => {
      const own = rawRate(stored.filter((flower) => flower.pollenParent === pollenParent));
      return own.flowers === 0 ? pooled : own;
    },
  };
}

/** A rate that is never 0 nor 1, so that no divergence from it is infinite: half a fruit and half a failure are added. */
export function smoothed({ fruits, flowers }: RawRate): number {
  return (fruits + 0.5) / (flowers + 1);
}

/**
 * What each rule does with a vial on the day of use and a year later. A grower who discards after one year does so when the
 * season is put away, a year before each day of use.
 */
export function rulesOfThumb(
  vial: Vial,
  { father }: StoredRates,
  { putAway, useOn, worth }: { readonly putAway: string; readonly useOn: string; readonly worth: number },
): readonly Use[] {
  const atMostAYear = (on: string) => daysBetween(vial.collected, on) <= 365;
  const { fruits, flowers } = father(vial.pollenParent);
  const good = flowers === 0 || fruits / flowers >= worth;
  return [
    { onDay: atMostAYear(putAway), yearLater: atMostAYear(useOn) },
    { onDay: true, yearLater: true },
    { onDay: good, yearLater: good },
  ];
}
