/** The grower's model asked about any pair, seen or not: one linear predictor a draw. */

import type { PosteriorDraw } from '../regression/posterior.ts';
import type { FruitModel, SeenPair } from './fruit-model.ts';
import { levelAt, occasionSd, pairPredictor, sdOf, spreadOf, storagePredictor } from './fruit-rate.ts';
import type { ModelDraw } from './grower-model.ts';
import { streamFor } from './strangers.ts';

export interface Predictor {
  readonly size: number;
  /**
   * Linear predictor of a pair with fresh pollen, one entry a draw; −Infinity in draws where it never sets fruit.
   */
  readonly pair: (seedParent: string, pollenParent: string) => Float64Array;
  /** Odds against a fruit, exp(−eta), of the same; infinite in draws where the pair never sets fruit. */
  readonly against: (seedParent: string, pollenParent: string) => Float64Array;
  /** What a method at an age adds; null for a method the model does not have. */
  readonly storage: (storage: string, ageDays: number) => Float64Array | null;
  /** Effect of a vial: its own where it was tried, else one of a new vial. */
  readonly vial: (vial: string) => Float64Array;
  /** Spread for `averagedRate` of mornings and seasons to come, one entry a draw. */
  readonly occasion: Float64Array;
  /** The same with the variation from vial to vial. */
  readonly occasionAndVial: Float64Array;
  /** The same of mornings alone. */
  readonly morning: Float64Array;
  /** Standard deviation of what all flowers of one season and grower share. */
  readonly seasonSd: Float64Array;
}

/** A value for one draw of one model. */
type DrawValue = (draw: PosteriorDraw) => number;

/**
 * A predictor over the draws of a fitted model. Answers are kept: a table of pairs and vials asks the same again
 * and again.
 */
export function predictor(draws: readonly ModelDraw[]): Predictor {
  const each = evaluator(draws);
  const models = [...new Set(draws.map(({ model }) => model))];
  const effect = remembered((factor, level) => each((model) => ownOrNew(model, factor, [level])));
  const intercept = each((model) => {
    const at = model.index.columns.get('(Intercept)')!;
    return ({ columns }) => columns[at]!;
  });
  const isSeen = (seedParent: string, pollenParent: string): boolean =>
    models.some((model) => seenPair(model, seedParent, pollenParent) !== undefined);
  const pair = remembered((seedParent, pollenParent) =>
    isSeen(seedParent, pollenParent)
      ? each((model) => knownPair(model, seenPair(model, seedParent, pollenParent)!))
      : unseenPair(
          draws,
          [seedParent, pollenParent],
          [intercept, effect('seedParent', seedParent), effect('pollenParent', pollenParent)],
        ),
  );
  return {
    size: draws.length,
    pair,
    against: remembered((seedParent, pollenParent) =>
      pair(seedParent, pollenParent).map((eta) => Math.exp(-eta)),
    ),
    storage: (storage, ageDays) => {
      if (models.some((model) => storagePredictor(model, storage, ageDays) === null)) return null;
      return each((model) => storagePredictor(model, storage, ageDays)!);
    },
    vial: (vial) => effect('vial', vial),
    occasion: each((model) => (draw) => spreadOf(occasionSd(model, draw))),
    morning: each((model) => (draw) => spreadOf(sdOf(model, draw, 'morning'))),
    seasonSd: each((model) => (draw) => Math.hypot(sdOf(model, draw, 'season'), sdOf(model, draw, 'grower'))),
    occasionAndVial: each(
      (model) => (draw) => spreadOf(Math.hypot(occasionSd(model, draw), sdOf(model, draw, 'vial'))),
    ),
  };
}

/** Evaluates, draw by draw, what is prepared of each model once; draws of one model stand together. */
function evaluator(draws: readonly ModelDraw[]): (prepare: (model: FruitModel) => DrawValue) => Float64Array {
  return (prepare) => {
    const values = new Float64Array(draws.length);
    let model: FruitModel | null = null;
    let value: DrawValue = () => 0;
    for (let k = 0; k < values.length; k += 1) {
      const next = draws[k]!;
      if (next.model !== model) {
        model = next.model;
        value = prepare(model);
      }
      values[k] = value(next.draw);
    }
    return values;
  };
}

/** Keeps the answer to each pair of names. Names are data: a map of maps, never a joined string. */
function remembered(
  answer: (first: string, second: string) => Float64Array,
): (first: string, second: string) => Float64Array {
  const answers = new Map<string, Map<string, Float64Array>>();
  return (first, second) => {
    const row = answers.get(first) ?? new Map<string, Float64Array>();
    answers.set(first, row);
    const known = row.get(second) ?? answer(first, second);
    row.set(second, known);
    return known;
  };
}

function seenPair(model: FruitModel, seedParent: string, pollenParent: string): SeenPair | undefined {
  return model.pairs.find((pair) => pair.seedParent === seedParent && pair.pollenParent === pollenParent);
}

function knownPair(model: FruitModel, pair: SeenPair): DrawValue {
  const eta = pairPredictor(model, pair);
  return (draw) => (draw.exclusive[pair.code] ? Number.NEGATIVE_INFINITY : eta(draw));
}

/** What is known of the parents, and a pair effect and a kind that are new. */
function unseenPair(
  draws: readonly ModelDraw[],
  names: readonly [string, string],
  [intercept, mother, father]: readonly [Float64Array, Float64Array, Float64Array],
): Float64Array {
  const both = streamFor('pair', names);
  const kind = streamFor('incompatible', names);
  return Float64Array.from(draws, ({ model, draw }, k) =>
    kind.uniform() < draw.exclusiveShare
      ? Number.NEGATIVE_INFINITY
      : intercept[k]! + mother[k]! + father[k]! + both.normal() * sdOf(model, draw, 'pair'),
  );
}

/** The effect of a level, or, where the data never had it, of a new one with the spread of its kind. */
function ownOrNew(model: FruitModel, factor: string, names: readonly string[]): DrawValue {
  const own = levelAt(model, factor, names[0]!);
  if (own) return ({ effects }) => effects[own.g]![own.code]!;
  const stream = streamFor(factor, names);
  return (draw) => stream.normal() * sdOf(model, draw, factor);
}
