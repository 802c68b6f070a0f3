/** What next season could be made of: which flower could get which pollen, and what would come of it. */

import { averagedRateAgainst } from '../analysis/fruit-rate.ts';
import type { Predictor } from '../analysis/predictor.ts';
import { daysBetween } from '../season/dates.ts';
import type { ExpectedFlowers, Vial } from '../season/season.ts';

/** A stretch of mornings; null is open. */
export interface Stretch {
  readonly from: string | null;
  readonly to: string | null;
}

/** A pollen that can be planned with: what is left in a vial, or a plant's fresh pollen. */
export interface PlannedPollen {
  readonly pollenParent: string;
  /** Null for fresh pollen. */
  readonly vial: Vial | null;
  /** Flowers it can serve: infinite for fresh pollen. */
  readonly doses: number;
}

/** Flowers of one row of the flowers file with a pollen that they could get. */
export interface PlannedSource {
  readonly offer: ExpectedFlowers;
  readonly pollen: PlannedPollen;
  /** Mornings on which it can be done. */
  readonly when: Stretch;
}

/** As much of a source as its chances depend on. */
export interface Crossing {
  readonly offer: Pick<ExpectedFlowers, 'seedParent'>;
  readonly pollen: Pick<PlannedPollen, 'pollenParent' | 'vial'>;
}

/** A vial that can't be planned with, and why. */
export interface LeftOutVial {
  readonly vial: string;
  readonly because: string;
}

/** What the pollens are judged by. */
export interface PlanQuestion {
  readonly predict: Predictor;
  readonly useOn: string;
  /** Pairs named incompatible. */
  readonly incompatible: (seedParent: string, pollenParent: string) => boolean;
}

/** Doses of a vial whose number is not known. */
const BLANK_DOSES = 1;

/** The vials that can be planned with, as pollens, and those that can't. */
export function storedPollens(
  vials: readonly Vial[],
  { predict, useOn }: PlanQuestion,
): { readonly pollens: PlannedPollen[]; readonly leftOut: LeftOutVial[] } {
  const pollens: PlannedPollen[] = [];
  const leftOut: LeftOutVial[] = [];
  for (const vial of vials) {
    const because = whyNot(vial, predict, useOn);
    if (because !== null) leftOut.push({ vial: vial.vial, because });
    else pollens.push({ pollenParent: vial.pollenParent, vial, doses: vial.dosesLeft ?? BLANK_DOSES });
  }
  return { pollens, leftOut };
}

function whyNot(vial: Vial, predict: Predictor, useOn: string): string | null {
  if (vial.dosesLeft === 0) return 'no-doses-left';
  const ageDays = daysBetween(vial.collected, useOn);
  if (ageDays < 0) return 'used-before-collected';
  return predict.storage(vial.storage, ageDays) === null ? 'method-never-tried' : null;
}

/** The fresh pollen of every plant that is expected to flower, in the order of the file. */
export function freshPollens(offers: readonly ExpectedFlowers[]): PlannedPollen[] {
  const plants = [...new Set(offers.map(({ seedParent }) => seedParent))];
  return plants.map((pollenParent) => ({ pollenParent, vial: null, doses: Number.POSITIVE_INFINITY }));
}

/**
 * Every flower with every pollen that it could get: not its own plant's, not of a pair named incompatible, and fresh
 * only where both plants can flower on the same morning.
 */
export function plannedSources(
  offers: readonly ExpectedFlowers[],
  pollens: readonly PlannedPollen[],
  incompatible: PlanQuestion['incompatible'],
): PlannedSource[] {
  return offers.flatMap((offer) =>
    pollens.flatMap((pollen): PlannedSource[] => {
      const { seedParent } = offer;
      if (seedParent === pollen.pollenParent || incompatible(seedParent, pollen.pollenParent)) return [];
      const own = { from: offer.opensFrom, to: offer.opensTo };
      const when = pollen.vial ? own : sharedStretch(own, offers, pollen.pollenParent);
      return when === null ? [] : [{ offer, pollen, when }];
    }),
  );
}

/** The first stretch of mornings on which a plant flowers too; null where there is none. */
function sharedStretch(own: Stretch, offers: readonly ExpectedFlowers[], plant: string): Stretch | null {
  const shared = offers
    .filter(({ seedParent }) => seedParent === plant)
    .map(({ opensFrom, opensTo }) => ({ from: later(own.from, opensFrom), to: earlier(own.to, opensTo) }))
    .filter(({ from, to }) => from === null || to === null || from <= to);
  return shared.reduce<Stretch | null>(
    (first, next) => (first === null || (next.from ?? '') < (first.from ?? '') ? next : first),
    null,
  );
}

function later(a: string | null, b: string | null): string | null {
  if (a === null || b === null) return a ?? b;
  return a > b ? a : b;
}

function earlier(a: string | null, b: string | null): string | null {
  if (a === null || b === null) return a ?? b;
  return a < b ? a : b;
}

/** A flower's chances with a pollen, draw by draw. */
export interface Chances {
  /** Fruit set of one flower, averaged over mornings and seasons to come. */
  readonly rates: (source: Crossing) => Float64Array;
  /** The same in one season to come, with a factor on the odds against a fruit, one a draw. */
  readonly ratesIn: (source: Crossing, factor: Float64Array) => Float64Array;
}

/**
 * Chances at some of the predictor's draws.
 *
 * @param draws positions of the draws used
 */
export function chancesAt(
  draws: Int32Array,
  { predict, useOn }: Pick<PlanQuestion, 'predict' | 'useOn'>,
): Chances {
  const pick = (values: Float64Array) => picked(values, draws);
  const occasion = pick(predict.occasion);
  const morning = pick(predict.morning);
  const changes = new Map<Crossing['pollen'], Float64Array>();
  const change = (pollen: Crossing['pollen']): Float64Array => {
    const known = changes.get(pollen) ?? pick(changeBy(pollen, predict, useOn));
    changes.set(pollen, known);
    return known;
  };
  const odds = ({ offer, pollen }: Crossing): Float64Array => {
    const against = pick(predict.against(offer.seedParent, pollen.pollenParent));
    const by = change(pollen);
    for (let k = 0; k < against.length; k += 1) against[k]! *= by[k]!;
    return against;
  };
  const averaged = (against: Float64Array, spread: Float64Array): Float64Array => {
    for (let k = 0; k < against.length; k += 1) against[k] = averagedRateAgainst(against[k]!, spread[k]!);
    return against;
  };
  return {
    rates: (source) => averaged(odds(source), occasion),
    ratesIn: (source, factor) => {
      const against = odds(source);
      for (let k = 0; k < against.length; k += 1) against[k]! *= factor[k]!;
      return averaged(against, morning);
    },
  };
}

/** The values at some positions, copied. */
function picked(values: Float64Array, positions: Int32Array): Float64Array {
  const chosen = new Float64Array(positions.length);
  for (let k = 0; k < chosen.length; k += 1) chosen[k] = values[positions[k]!]!;
  return chosen;
}

/** Factor on the odds against a fruit that storage, age and the vial itself bring; 1 for fresh pollen. */
function changeBy({ vial }: Crossing['pollen'], predict: Predictor, useOn: string): Float64Array {
  if (vial === null) return new Float64Array(predict.size).fill(1);
  const added = predict.storage(vial.storage, daysBetween(vial.collected, useOn))!;
  const own = predict.vial(vial.vial);
  return added.map((shift, k) => Math.exp(-shift - own[k]!));
}

/** Evenly spread draws, since neighbouring ones share their hyperparameters. */
export function evenDraws(size: number, wanted: number): Int32Array {
  const count = Math.min(size, wanted);
  return Int32Array.from({ length: count }, (_, k) => Math.floor(((k + 0.5) * size) / count));
}
