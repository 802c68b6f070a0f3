/** Draws become an estimate: posterior mean and equal-tailed range. */

import { quantileOfSorted } from '../numerics/quantile.ts';
import type { Interval } from '../proportions/interval.ts';

/** Posterior mean with the equal-tailed range of a level. */
export function summarise(draws: Float64Array, level: number): Interval {
  const sorted = draws.slice().sort();
  const tail = (1 - level) / 2;
  return {
    estimate: mean(draws),
    lower: quantileOfSorted(sorted, tail),
    upper: quantileOfSorted(sorted, 1 - tail),
  };
}

export function mean(values: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < values.length; i += 1) sum += values[i]!;
  return sum / values.length;
}
