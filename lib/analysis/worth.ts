/** Key `worth`: the lowest fruit set that is worth a flower. */

import type { Flower } from './flowers.ts';
import { byCodePoint } from './flowers.ts';
import { averagedRateAgainst } from './fruit-rate.ts';
import type { Predictor } from './predictor.ts';
import type { WeightedParent } from './seed-parents.ts';
import { seedParentsFor } from './seed-parents.ts';
import { mean } from './summary.ts';

/** The threshold that verdicts use. */
export interface Worth {
  readonly value: number | null;
  readonly source: 'option' | 'half-of-fresh' | null;
  /** Posterior mean fruit set of fresh pollen, where the threshold is half of it. */
  readonly freshRate: number | null;
  readonly because?: string;
}

/**
 * The threshold: the grower's own, else half of the posterior mean fruit set of fresh pollen over the seed parents
 * in question and all pollen parents. Half of the raw fresh rate would be too high, for fresh pollen goes to easy
 * pairs. No published threshold says when to stop using a pollen lot: that is the grower's to set.
 */
export function worthOf(
  given: number | undefined,
  flowers: readonly Flower[],
  predict: Predictor | null,
  parents: readonly WeightedParent[],
  incompatible: (mother: string, father: string) => boolean,
): Worth {
  if (given !== undefined) return { value: given, source: 'option', freshRate: null };
  const nothing = { value: null, source: null, freshRate: null };
  if (!flowers.some(({ storage }) => storage === 'fresh')) return { ...nothing, because: 'no-fresh-flower' };
  if (predict === null) return { ...nothing, because: 'no-model' };
  const fathers = [...new Set(flowers.map(({ pollenParent }) => pollenParent))].sort(byCodePoint);
  const rates = fathers.flatMap((father) => {
    const over = seedParentsFor(father, parents, incompatible);
    return over.length > 0 ? [freshRate(predict, over, father)] : [];
  });
  if (rates.length === 0) return { ...nothing, because: 'no-seed-parent' };
  const rate = mean(rates);
  return { value: rate / 2, source: 'half-of-fresh', freshRate: rate };
}

function freshRate(predict: Predictor, over: readonly WeightedParent[], father: string): number {
  return over.reduce(
    (sum, { seedParent, weight }) =>
      sum + weight * meanRate(predict.against(seedParent, father), predict.occasion),
    0,
  );
}

function meanRate(against: Float64Array, spread: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < against.length; k += 1) sum += averagedRateAgainst(against[k]!, spread[k]!);
  return sum / against.length;
}
