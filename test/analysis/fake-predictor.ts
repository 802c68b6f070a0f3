/** A predictor of which a test says everything: rates by draw, no model behind it. */

import { spreadOf } from '../../lib/analysis/fruit-rate.ts';
import type { Predictor } from '../../lib/analysis/predictor.ts';

export interface FakeRates {
  /** Fruit set of a pair with fresh pollen, by draw; one number for all draws. */
  readonly pair?: (seedParent: string, pollenParent: string) => number | readonly number[];
  /** What a method adds at an age, on the logit scale; null for a method without a model. */
  readonly storage?: (storage: string, ageDays: number) => number | readonly number[] | null;
  readonly vial?: (vial: string) => number;
  /** Standard deviations of what varies; 0 where left out. */
  readonly occasion?: number;
  readonly occasionAndVial?: number;
  /** The share of `occasion` that a whole season has in common. */
  readonly season?: number;
  readonly draws?: number;
}

function logit(p: number): number {
  return p === 0 ? Number.NEGATIVE_INFINITY : Math.log(p / (1 - p));
}

export function fakePredictor(rates: FakeRates): Predictor {
  const { draws = 10, occasion = 0, occasionAndVial = occasion, season = 0 } = rates;
  const spread = (value: number | readonly number[]): Float64Array =>
    typeof value === 'number' ? new Float64Array(draws).fill(value) : Float64Array.from(value);
  const pair = (seedParent: string, pollenParent: string): Float64Array =>
    spread(rates.pair?.(seedParent, pollenParent) ?? 0.5).map(logit);
  return {
    size: draws,
    pair,
    against: (seedParent, pollenParent) => pair(seedParent, pollenParent).map((eta) => Math.exp(-eta)),
    storage: (storage, ageDays) => {
      const added = rates.storage ? rates.storage(storage, ageDays) : 0;
      return added === null ? null : spread(added);
    },
    vial: (vial) => spread(rates.vial?.(vial) ?? 0),
    occasion: spread(spreadOf(occasion)),
    occasionAndVial: spread(spreadOf(occasionAndVial)),
    morning: spread(spreadOf(Math.sqrt(occasion ** 2 - season ** 2))),
    seasonSd: spread(season),
  };
}
