/** The grower's model asked about any pair, seen or not: one linear predictor a draw. */

import type { PosteriorDraw } from '../regression/posterior.ts';
import type { FruitModel } from './fruit-model.ts';
import { levelAt, occasionSd, pairPredictor, sdOf, spreadOf, storagePredictor } from './fruit-rate.ts';
import type { ModelDraw } from './grower-model.ts';
import { streamFor } from './strangers.ts';

export interface Predictor {
  readonly size: number;
  /**
   * Linear predictor of a pair with fresh pollen, one entry a draw; −Infinity in draws where it never sets fruit.
   */
  readonly pair: (seedParent: string, pollenParent: string) => Float64Array;
  /** What a method at an age adds; null for a method the model does not have. */
  readonly storage: (storage: string, ageDays: number) => Float64Array | null;
  /** Effect of a vial: its own where it was tried, else one of a new vial. */
  readonly vial: (vial: string) => Float64Array;
  /** Spread for `averagedRate` of mornings and seasons to come, one entry a draw. */
  readonly occasion: Float64Array;
  /** The same with the variation from vial to vial. */
  readonly occasionAndVial: Float64Array;
}

/** A value for one draw of one model; `draw` counts from 0. */
type DrawValue = (draw: PosteriorDraw) => number;

/** A predictor over the draws of a fitted model. */
export function predictor(draws: readonly ModelDraw[]): Predictor {
  const cache = new Map<string, Map<string, Float64Array>>();
  const models = [...new Set(draws.map(({ model }) => model))];
  /** Evaluates, draw by draw, what `prepare` made of each model once. */
  const each = (prepare: (model: FruitModel) => DrawValue): Float64Array => {
    const prepared = new Map(models.map((model) => [model, prepare(model)]));
    return Float64Array.from(draws, ({ model, draw }) => prepared.get(model)!(draw));
  };
  return {
    size: draws.length,
    pair: (seedParent, pollenParent) => {
      const row = cache.get(seedParent) ?? new Map<string, Float64Array>();
      cache.set(seedParent, row);
      const eta = row.get(pollenParent) ?? each((model) => anyPair(model, seedParent, pollenParent));
      row.set(pollenParent, eta);
      return eta;
    },
    storage: (storage, ageDays) => {
      if (models.some((model) => storagePredictor(model, storage, ageDays) === null)) return null;
      return each((model) => storagePredictor(model, storage, ageDays)!);
    },
    vial: (vial) => each((model) => ownOrNew(model, 'vial', [vial])),
    occasion: each((model) => (draw) => spreadOf(occasionSd(model, draw))),
    occasionAndVial: each(
      (model) => (draw) => spreadOf(Math.hypot(occasionSd(model, draw), sdOf(model, draw, 'vial'))),
    ),
  };
}

/** A pair of the data, or the sum of what is known of its parents and what is new. */
function anyPair(model: FruitModel, seedParent: string, pollenParent: string): DrawValue {
  const seen = model.pairs.find(
    (pair) => pair.seedParent === seedParent && pair.pollenParent === pollenParent,
  );
  if (seen) {
    const eta = pairPredictor(model, seen);
    return (draw) => (draw.exclusive[seen.code] ? Number.NEGATIVE_INFINITY : eta(draw));
  }
  const intercept = model.index.columns.get('(Intercept)')!;
  const mother = ownOrNew(model, 'seedParent', [seedParent]);
  const father = ownOrNew(model, 'pollenParent', [pollenParent]);
  const both = ownOrNew(model, 'pair', [seedParent, pollenParent]);
  const kind = streamFor('incompatible', [seedParent, pollenParent]);
  return (draw) =>
    kind.uniform() < draw.exclusiveShare
      ? Number.NEGATIVE_INFINITY
      : draw.columns[intercept]! + mother(draw) + father(draw) + both(draw);
}

/** The effect of a level, or, where the data never had it, of a new one with the spread of its kind. */
function ownOrNew(model: FruitModel, factor: string, names: readonly string[]): DrawValue {
  const own = names.length === 1 ? levelAt(model, factor, names[0]!) : null;
  if (own) return ({ effects }) => effects[own.g]![own.code]!;
  const stream = streamFor(factor, names);
  return (draw) => stream.normal() * sdOf(model, draw, factor);
}
