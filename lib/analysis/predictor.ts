/** The grower's model asked about any pair, seen or not: one linear predictor a draw. */

import type { PosteriorDraw } from '../regression/posterior.ts';
import type { FruitModel, SeenPair } from './fruit-model.ts';
import { levelAt, pairPredictor, sdOf, spreadOf, storagePredictor } from './fruit-rate.ts';
import type { ModelDraw } from './grower-model.ts';
import { streamFor } from './strangers.ts';

export interface Predictor {
  readonly size: number;
  /**
   * Linear predictor of a pair with fresh pollen in the hands of the seed parent's grower, one entry a draw; −Infinity
   * in draws where it never sets fruit.
   */
  readonly pair: (seedParent: string, pollenParent: string) => Float64Array;
  /** Odds against a fruit, exp(−eta), of the same; infinite in draws where the pair never sets fruit. */
  readonly against: (seedParent: string, pollenParent: string) => Float64Array;
  /** What a method at an age adds; null for a method the model does not have. */
  readonly storage: (storage: string, ageDays: number) => Float64Array | null;
  /** Effect of a vial: its own where it was tried, else one of a new vial. */
  readonly vial: (vial: string) => Float64Array;
  /** Spread for `averagedRate` of mornings and seasons to come, in the same hands, one entry a draw. */
  readonly occasion: Float64Array;
  /** The same with the variation from vial to vial. */
  readonly occasionAndVial: Float64Array;
  /** The same of mornings alone. */
  readonly morning: Float64Array;
  /** Standard deviation of what all flowers of one season share. */
  readonly seasonSd: Float64Array;
}

/**
 * Probability that a pair is incompatible where it is so the other way round. Plants that share their incompatibility alleles, as
 * sisters and offsets do, refuse each other both ways (de Nettancourt 2001, Incompatibility and Incongruity in Wild and Cultivated
 * Plants, chapter 1, from memory); that it is three in four is common practice, no source.
 */
const BOTH_WAYS = 0.75;

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
  const spread = (...factors: readonly string[]): Float64Array =>
    each((model) => (draw) => spreadOf(Math.hypot(...factors.map((factor) => sdOf(model, draw, factor)))));
  const isSeen = (seedParent: string, pollenParent: string): boolean =>
    models.some((model) => seenPair(model, seedParent, pollenParent) !== undefined);
  const hands = remembered((seedParent) => each((model) => handsOf(model, seedParent)));
  const pair = remembered((seedParent, pollenParent) =>
    isSeen(seedParent, pollenParent)
      ? each((model) => knownPair(model, seenPair(model, seedParent, pollenParent)!))
      : unseenPair(draws, [seedParent, pollenParent], (model) => seenPair(model, pollenParent, seedParent), [
          intercept,
          effect('seedParent', seedParent),
          effect('pollenParent', pollenParent),
          hands(seedParent, ''),
        ]),
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
    occasion: spread('morning', 'season'),
    morning: spread('morning'),
    seasonSd: each((model) => (draw) => sdOf(model, draw, 'season')),
    occasionAndVial: spread('morning', 'season', 'vial'),
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
  const hands = handsOf(model, pair.seedParent);
  return (draw) => (draw.exclusive[pair.code] ? Number.NEGATIVE_INFINITY : eta(draw) + hands(draw));
}

/**
 * What the hands of a seed parent's grower add: a plant stays with its grower. Of several, each counts by the plant's
 * flowers with it; a plant never seen is with one of them, the likelier the more flowers that one has.
 */
function handsOf(model: FruitModel, seedParent: string): DrawValue {
  const g = model.index.factors.get('grower');
  if (g === undefined) return () => 0;
  const own = model.rows.filter((row) => row.seedParent === seedParent);
  const shares = growerShares(model, own.length > 0 ? own : model.rows);
  if (own.length > 0) {
    return ({ effects }) => shares.reduce((sum, { at, share }) => sum + share * (effects[g]![at] ?? 0), 0);
  }
  const stream = streamFor('grower', [seedParent]);
  return ({ effects }) => {
    let left = stream.uniform();
    const whose = shares.find(({ share }) => {
      left -= share;
      return left < 0;
    });
    return effects[g]![(whose ?? shares[0]!).at] ?? 0;
  };
}

/** Each grower's share of some flowers; rows without a grower have no effect (position −1). */
function growerShares(model: FruitModel, rows: FruitModel['rows']): { at: number; share: number }[] {
  const levels = model.index.levels.get('grower')!;
  const counts = new Map<number, number>();
  for (const { grower, flowers } of rows) {
    const at = grower === null ? -1 : levels.get(grower)!;
    counts.set(at, (counts.get(at) ?? 0) + flowers);
  }
  const total = [...counts.values()].reduce((sum, count) => sum + count, 0);
  return [...counts].map(([at, count]) => ({ at, share: count / total }));
}

/**
 * What is known of the parents, and a pair effect and a kind that are new; of the kind, the same pair the other way round tells
 * something where it was tried.
 */
function unseenPair(
  draws: readonly ModelDraw[],
  names: readonly [string, string],
  reverseOf: (model: FruitModel) => SeenPair | undefined,
  parts: readonly Float64Array[],
): Float64Array {
  const both = streamFor('pair', names);
  const kind = streamFor('incompatible', names);
  const reverses = new Map<FruitModel, SeenPair | undefined>();
  const reverse = (model: FruitModel) => {
    if (!reverses.has(model)) reverses.set(model, reverseOf(model));
    return reverses.get(model);
  };
  return Float64Array.from(draws, ({ model, draw }, k) =>
    kind.uniform() < barrenChance(draw, reverse(model))
      ? Number.NEGATIVE_INFINITY
      : parts.reduce((sum, part) => sum + part[k]!, 0) + both.normal() * sdOf(model, draw, 'pair'),
  );
}

/** Probability that a pair never tried never sets fruit, given what the draw holds of the same pair the other way round. */
function barrenChance({ exclusiveShare, exclusive }: PosteriorDraw, reverse: SeenPair | undefined): number {
  if (reverse === undefined) return exclusiveShare;
  if (exclusive[reverse.code]) return BOTH_WAYS;
  return (exclusiveShare * (1 - BOTH_WAYS)) / (1 - exclusiveShare);
}

/** The effect of a level, or, where the data never had it, of a new one with the spread of its kind. */
function ownOrNew(model: FruitModel, factor: string, names: readonly string[]): DrawValue {
  const own = levelAt(model, factor, names[0]!);
  if (own) return ({ effects }) => effects[own.g]![own.code]!;
  const stream = streamFor(factor, names);
  return (draw) => stream.normal() * sdOf(model, draw, factor);
}
