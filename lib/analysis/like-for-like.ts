/** Fresh minus stored, like for like: what storing the pollen costs when the pair stays the same. */

import type { Estimate } from '../proportions/interval.ts';
import { unknown } from '../proportions/interval.ts';
import { medianAge } from './age-scale.ts';
import type { Flower } from './flowers.ts';
import { fruitModel } from './fruit-model.ts';
import { averagedRate, occasionSd, pairPredictor, sdOf, spreadOf, storagePredictor } from './fruit-rate.ts';
import type { AgeScale } from './models.ts';
import { NEUTRAL_PRIORS } from './priors.ts';
import { summarise } from './summary.ts';
import { agedFlowers } from './within-between.ts';

export interface LikeForLikeOptions {
  readonly ageScale: AgeScale;
  readonly level: number;
}

/** Fewer pairs than this, with both kinds of pollen and both outcomes, cannot tell pollen from pair. */
export const FEWEST_PAIRS = 3;
const DRAWS = 1000;
const SEED = 20260102;
/** Fewer independent draws than this are not shown. */
const FEWEST_EFFECTIVE = 100;

/**
 * The like-for-like difference of a method: the mean over all its and all fresh crosses of fruit set with fresh
 * pollen minus fruit set with this method's pollen at its median age, every cross keeping its pair.
 *
 * A within–between model over those crosses only (`within-between.ts`) with vial, morning and season effects; the
 * priors do not lean to a loss.
 *
 * @param flowers all used flowers of the season
 * @param informativePairs pairs with both kinds of pollen and both outcomes
 * @returns a proportion difference from −1 to 1, or null below three informative pairs
 */
export function likeForLike(
  flowers: readonly Flower[],
  storage: string,
  informativePairs: number,
  { ageScale, level }: LikeForLikeOptions,
): Estimate {
  if (informativePairs < FEWEST_PAIRS) return unknown('too-few-pairs-with-both');
  const rows = agedFlowers(flowers).filter(
    (flower) => flower.storage === 'fresh' || flower.storage === storage,
  );
  const age = medianAge(rows, storage);
  if (age === null) return unknown('no-aged-flowers');
  const model = fruitModel(rows, {
    ageScale,
    priors: NEUTRAL_PRIORS,
    seed: SEED,
    draws: DRAWS,
    originDays: age,
  });
  if (!model.fit.settled || model.fit.effective < FEWEST_EFFECTIVE) return unknown('model-not-settled');
  return summarise(differences(model, storage, age), level);
}

function differences(model: ReturnType<typeof fruitModel>, storage: string, ageDays: number): Float64Array {
  const total = model.pairs.reduce((sum, { flowers }) => sum + flowers, 0);
  const etas = model.pairs.map((pair) => pairPredictor(model, pair));
  const added = storagePredictor(model, storage, ageDays)!;
  return Float64Array.from(model.fit.draws, (draw) => {
    const occasion = occasionSd(model, draw);
    const fresh = spreadOf(occasion);
    const stored = spreadOf(Math.hypot(occasion, sdOf(model, draw, 'vial')));
    const shift = added(draw);
    let difference = 0;
    model.pairs.forEach(({ code, flowers }, i) => {
      if (draw.exclusive[code]) return;
      const eta = etas[i]!(draw);
      difference += (flowers / total) * (averagedRate(eta, fresh) - averagedRate(eta + shift, stored));
    });
    return difference;
  });
}
