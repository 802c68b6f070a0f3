/** The plan of a grower without a model: all pairs are alike, and all pollen of a method. */

import type { Flower } from '../../lib/analysis/flowers.ts';
import type { Predictor } from '../../lib/analysis/predictor.ts';
import { rawRate, smoothed, storedRates } from './rules.ts';

function logit(p: number): number {
  return Math.log(p / (1 - p));
}

/** A predictor that knows the raw rate of each method, and nothing of plants, pairs, vials and ages. */
export function alike(flowers: readonly Flower[]): Predictor {
  const one = (value: number) => Float64Array.of(value);
  const fresh = logit(smoothed(rawRate(flowers.filter(({ storage }) => storage === 'fresh'))));
  const { pooled } = storedRates(flowers);
  const stored = (method: string) => {
    const own = rawRate(flowers.filter(({ storage }) => storage === method));
    return logit(smoothed(own.flowers === 0 ? pooled : own));
  };
  return {
    size: 1,
    pair: () => one(fresh),
    against: () => one(Math.exp(-fresh)),
    storage: (storage) => one(stored(storage) - fresh),
    vial: () => one(0),
    occasion: one(1),
    occasionAndVial: one(1),
    morning: one(1),
    seasonSd: one(0),
  };
}
