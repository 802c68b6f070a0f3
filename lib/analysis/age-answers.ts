/** Keys `ageCurve` and `halfAge`: how fruit set falls with age, for every stored method. */

import type { AgePoint, HalfAge } from './age-curve.ts';
import { ageCurve, ageRates, halfAge, oldestAge } from './age-curve.ts';
import type { Flower } from './flowers.ts';
import { storageOrder } from './flowers.ts';
import type { GrowerModel } from './grower-model.ts';
import type { Predictor } from './predictor.ts';
import { agedFlowers } from './within-between.ts';

/**
 * The curve and the half age of every stored method.
 *
 * @param because why there is no model, where `model` is null
 */
export function ageAnswers(
  flowers: readonly Flower[],
  model: GrowerModel | null,
  predict: Predictor | null,
  { level, because }: { readonly level: number; readonly because: string },
): { readonly ageCurve: readonly AgePoint[]; readonly halfAge: readonly HalfAge[] } {
  const aged = agedFlowers(flowers);
  const curve: AgePoint[] = [];
  const halves: HalfAge[] = [];
  for (const storage of storageOrder(flowers)) {
    if (storage === 'fresh') continue;
    const oldest = oldestAge(aged, storage);
    const rates = model && predict && ageRates(predict, model.models[0]!.pairs, storage);
    if (oldest === null || rates === null) {
      const why = oldest === null ? 'no-aged-flowers' : because;
      halves.push({ storage, oldestAgeDays: oldest, estimate: null, lower: null, upper: null, because: why });
      continue;
    }
    curve.push(...ageCurve(storage, rates, oldest, level));
    halves.push(halfAge(aged, storage, rates, oldest, level));
  }
  return { ageCurve: curve, halfAge: halves };
}
