/** The grower's model asked about any pair, seen or not: one linear predictor a draw. */

import type { PosteriorDraw } from '../regression/posterior.ts';
import type { Vial } from '../season/season.ts';
import type { FruitModel, SeenPair } from './fruit-model.ts';
import { levelAt, pairPredictor, sdOf, spreadOf, storagePredictor } from './fruit-rate.ts';
import type { ModelDraw } from './grower-model.ts';
import { type StrangerKey, strangerKeys, streamFor } from './strangers.ts';

export interface Predictor {
  readonly size: number;
  /**
   * Linear predictor of a pair with fresh pollen in the hands of the seed parent's grower, one entry a draw; −Infinity
   * in draws where it never sets fruit. A new array each time.
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
 * A predictor over the draws of a fitted model. Odds and effects are kept: a table of pairs and vials asks the same
 * again and again.
 *
 * @param vials of the season, so that those never tried are told apart without their names
 */
export function predictor(draws: readonly ModelDraw[], vials: readonly Vial[] = []): Predictor {
  const keys = strangerKeys(draws[0]?.model.ranks, vials);
  const each = evaluator(draws);
  const models = [...new Set(draws.map(({ model }) => model))];
  const effect = remembered((factor, level) =>
    each((model) => ownOrNew(model, factor, level, factor === 'vial' ? keys.vial(level) : keys.plant(level))),
  );
  const intercept = each((model) => {
    const at = model.index.columns.get('(Intercept)')!;
    return ({ columns }) => columns[at]!;
  });
  const spread = (...factors: readonly string[]): Float64Array =>
    each((model) => (draw) => spreadOf(Math.hypot(...factors.map((factor) => sdOf(model, draw, factor)))));
  const seen = new Map(models.map((model) => [model, pairFinder(model)]));
  const isSeen = (seedParent: string, pollenParent: string): boolean =>
    models.some((model) => seen.get(model)!(seedParent, pollenParent) !== undefined);
  const hands = remembered((seedParent) =>
    each((model) => handsOf(model, seedParent, keys.plant(seedParent))),
  );
  const pairSd = each((model) => (draw) => sdOf(model, draw, 'pair'));
  const share = each(() => barrenChance(undefined));
  const unseen = (seedParent: string, pollenParent: string): Float64Array =>
    unseenPair(
      [keys.plant(seedParent), keys.plant(pollenParent)],
      sums(
        intercept,
        effect('seedParent', seedParent),
        effect('pollenParent', pollenParent),
        hands(seedParent, ''),
      ),
      pairSd,
      isSeen(pollenParent, seedParent)
        ? each((model) => barrenChance(seen.get(model)!(pollenParent, seedParent)))
        : share,
    );
  const pair = (seedParent: string, pollenParent: string): Float64Array =>
    isSeen(seedParent, pollenParent)
      ? each((model) => knownPair(model, seen.get(model)!(seedParent, pollenParent)!))
      : unseen(seedParent, pollenParent);
  return {
    size: draws.length,
    pair,
    against: remembered((seedParent, pollenParent) => {
      const odds = pair(seedParent, pollenParent);
      for (let k = 0; k < odds.length; k += 1) odds[k] = Math.exp(-odds[k]!);
      return odds;
    }),
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

/** Finds a model's pairs by their names: there may be thousands of pairs to ask about. */
function pairFinder(model: FruitModel): (seedParent: string, pollenParent: string) => SeenPair | undefined {
  const found = new Map<string, Map<string, SeenPair>>();
  for (const pair of model.pairs) {
    const row = found.get(pair.seedParent) ?? new Map<string, SeenPair>();
    found.set(pair.seedParent, row.set(pair.pollenParent, pair));
  }
  return (seedParent, pollenParent) => found.get(seedParent)?.get(pollenParent);
}

function knownPair(model: FruitModel, pair: SeenPair): DrawValue {
  const eta = pairPredictor(model, pair);
  const hands = handsOf(model, pair.seedParent, pair.seedParent);
  return (draw) => (draw.exclusive[pair.code] ? Number.NEGATIVE_INFINITY : eta(draw) + hands(draw));
}

/**
 * What the hands of a seed parent's grower add: a plant stays with its grower. Of several, each counts by the plant's
 * flowers with it; a plant never seen is with one of them, the likelier the more flowers that one has.
 */
function handsOf(model: FruitModel, seedParent: string, key: StrangerKey): DrawValue {
  const g = model.index.factors.get('grower');
  if (g === undefined) return () => 0;
  const own = model.rows.filter((row) => row.seedParent === seedParent);
  const shares = growerShares(model, own.length > 0 ? own : model.rows);
  if (own.length > 0) {
    return ({ effects }) => shares.reduce((sum, { at, share }) => sum + share * (effects[g]![at] ?? 0), 0);
  }
  const stream = streamFor('grower', [key]);
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

/** Some values of each draw added up, in their order. */
function sums(first: Float64Array, ...others: readonly Float64Array[]): Float64Array {
  const total = first.slice();
  for (const other of others) for (let k = 0; k < total.length; k += 1) total[k]! += other[k]!;
  return total;
}

/**
 * What is known of the parents, and a pair effect and a kind that are new.
 *
 * @param parents linear predictor without the pair's own effect; written over
 * @param sd standard deviation of pairs
 * @param barren probability that it never sets fruit
 */
function unseenPair(
  keys: readonly [StrangerKey, StrangerKey],
  parents: Float64Array,
  sd: Float64Array,
  barren: Float64Array,
): Float64Array {
  const both = streamFor('pair', keys);
  const kind = streamFor('incompatible', keys);
  for (let k = 0; k < parents.length; k += 1) {
    if (kind.uniform() < barren[k]!) parents[k] = Number.NEGATIVE_INFINITY;
    else parents[k]! += both.normal() * sd[k]!;
  }
  return parents;
}

/**
 * Probability that a pair never tried never sets fruit; the same pair the other way round tells something where it was
 * tried.
 */
function barrenChance(reverse: SeenPair | undefined): DrawValue {
  if (reverse === undefined) return ({ exclusiveShare }) => exclusiveShare;
  return ({ exclusiveShare, exclusive }) =>
    exclusive[reverse.code] ? BOTH_WAYS : (exclusiveShare * (1 - BOTH_WAYS)) / (1 - exclusiveShare);
}

/** The effect of a level, or, where the data never had it, of a new one with the spread of its kind. */
function ownOrNew(model: FruitModel, factor: string, level: string, key: StrangerKey): DrawValue {
  const own = levelAt(model, factor, level);
  if (own) return ({ effects }) => effects[own.g]![own.code]!;
  const stream = streamFor(factor, [key]);
  return (draw) => stream.normal() * sdOf(model, draw, factor);
}
