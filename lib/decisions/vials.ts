/** Key `vials`: what each stored pollen lot is expected to give on the day of use, and what to do with it. */

import { averagedRateAgainst } from '../analysis/fruit-rate.ts';
import type { Predictor } from '../analysis/predictor.ts';
import type { WeightedParent } from '../analysis/seed-parents.ts';
import { mean, summarise } from '../analysis/summary.ts';
import type { Estimate } from '../proportions/interval.ts';
import { unknown } from '../proportions/interval.ts';
import { addYear, daysBetween } from '../season/dates.ts';
import type { Vial } from '../season/season.ts';

export type VialVerdict = 'keep' | 'use-first' | 'test-first' | 'discard';

/** One entry of key `vials`. */
export interface VialAdvice extends Estimate {
  readonly vial: string;
  readonly pollenParent: string;
  readonly storage: string;
  /** Age in days on the day of use. */
  readonly ageDays: number;
  /** Oldest pollen kept this way that was tried, in days: past it an estimate only carries the curve on. */
  readonly oldestTriedDays: number | null;
  /** The vial's own record: fruits of flowers with a known outcome. */
  readonly fruits: number;
  readonly flowers: number;
  readonly dosesLeft: number | null;
  /** Seed parents the estimate is averaged over; weights add up to 1. */
  readonly over: readonly WeightedParent[];
  readonly probabilityWorth: number | null;
  /** The same a year after the day of use. */
  readonly probabilityWorthYearLater: number | null;
  readonly flowersFor90: number | null;
  readonly verdict: VialVerdict;
  readonly reasonCode: string;
  /** Whether no other vial of this pollen parent is left. */
  readonly lastOfParent: boolean;
  /** Codes of warnings: `last-vial`, `no-doses-left`, `older-than-tried`. */
  readonly warnings: readonly string[];
}

/** What verdicts need to know beside the model. */
export interface VialQuestion {
  readonly useOn: string;
  /** The lowest fruit set that is worth a flower; null where the grower must say. */
  readonly worth: number | null;
  readonly level: number;
  /** Seed parents in question for a pollen parent: its own plant and incompatible pairs left out. */
  readonly over: (pollenParent: string) => readonly WeightedParent[];
  /** The vial's own record. */
  readonly record: (vial: string) => { readonly fruits: number; readonly flowers: number };
  /** Oldest age of a storage method that was tried, in days; null where none is known, as where this is left out. */
  readonly oldestTried?: (storage: string) => number | null;
  /** Why there is no model, where `predict` is null. */
  readonly because: string;
}

const MOST_FLOWERS = 100;
const DISCARD_BELOW = 0.1;
const KEEP_FROM = 0.5;

/**
 * Advice for every vial of the register.
 *
 * @param predict the grower's model, null where it could not be fitted
 * @returns one entry a vial, in the register's order
 */
export function vialAdvice(
  vials: readonly Vial[],
  predict: Predictor | null,
  question: VialQuestion,
): VialAdvice[] {
  return vials.map((vial) => {
    const lastOfParent = !vials.some(
      (other) => other !== vial && other.pollenParent === vial.pollenParent && other.dosesLeft !== 0,
    );
    const ageDays = daysBetween(vial.collected, question.useOn);
    const over = question.over(vial.pollenParent);
    const rates =
      predict && ageDays >= 0 && over.length > 0 ? vialRates(vial, predict, over, question.useOn) : null;
    const judged = judge(rates, question);
    const oldestTriedDays = question.oldestTried?.(vial.storage) ?? null;
    const warnings = [
      ...(judged.verdict === 'discard' && lastOfParent ? ['last-vial'] : []),
      ...(vial.dosesLeft === 0 ? ['no-doses-left'] : []),
      ...(rates && oldestTriedDays !== null && ageDays > oldestTriedDays ? ['older-than-tried'] : []),
    ];
    return {
      vial: vial.vial,
      pollenParent: vial.pollenParent,
      storage: vial.storage,
      ...{ ageDays, oldestTriedDays },
      ...question.record(vial.vial),
      dosesLeft: vial.dosesLeft,
      over,
      ...(rates
        ? summarise(rates.then, question.level)
        : unknown(whyUnknown(ageDays, over, question.because))),
      ...judged,
      lastOfParent,
      warnings,
    };
  });
}

function whyUnknown(ageDays: number, over: readonly WeightedParent[], because: string): string {
  if (ageDays < 0) return 'used-before-collected';
  return over.length === 0 ? 'no-seed-parent' : because;
}

/** A vial's fruit set over the seed parents in question. */
export interface VialRates {
  /** Fruit set on the day of use, one entry a draw. */
  readonly then: Float64Array;
  /** The same a year later. */
  readonly yearLater: Float64Array;
}

/** The rates that a verdict rests on; null for a method that the model does not have. */
export function vialRates(
  vial: Vial,
  predict: Predictor,
  over: readonly WeightedParent[],
  useOn: string,
): VialRates | null {
  const on = (date: string): Float64Array | null => {
    const added = predict.storage(vial.storage, daysBetween(vial.collected, date));
    if (added === null) return null;
    const own = predict.vial(vial.vial);
    const change = added.map((shift, k) => Math.exp(-shift - own[k]!));
    const rates = new Float64Array(predict.size);
    for (const { seedParent, weight } of over) {
      const against = predict.against(seedParent, vial.pollenParent);
      for (let k = 0; k < rates.length; k += 1) {
        rates[k]! += weight * averagedRateAgainst(against[k]! * change[k]!, predict.occasion[k]!);
      }
    }
    return rates;
  };
  const then = on(useOn);
  const yearLater = on(addYear(useOn));
  return then && yearLater ? { then, yearLater } : null;
}

type Judgement = Pick<
  VialAdvice,
  'probabilityWorth' | 'probabilityWorthYearLater' | 'flowersFor90' | 'verdict' | 'reasonCode'
>;

/**
 * The verdict: `keep` where the vial is worth a flower on the day of use and a year later, each with probability
 * of at least a half; `use-first` where it is so on the day of use only; `discard` where the probability is below
 * one in ten; else `test-first`.
 */
function judge(rates: VialRates | null, { worth }: VialQuestion): Judgement {
  const flowersFor90 = rates ? flowersForNineInTen(rates.then) : null;
  if (rates === null || worth === null) {
    return {
      probabilityWorth: null,
      probabilityWorthYearLater: null,
      flowersFor90,
      verdict: 'test-first',
      reasonCode: rates === null ? 'no-estimate' : 'worth-not-given',
    };
  }
  const probabilityWorth = shareAtLeast(rates.then, worth);
  const probabilityWorthYearLater = shareAtLeast(rates.yearLater, worth);
  const verdict = verdictOf(probabilityWorth, probabilityWorthYearLater);
  return { probabilityWorth, probabilityWorthYearLater, flowersFor90, verdict, reasonCode: REASONS[verdict] };
}

const REASONS: Readonly<Record<VialVerdict, string>> = {
  keep: 'worth-now-and-a-year-later',
  'use-first': 'worth-now-only',
  'test-first': 'could-be-either',
  discard: 'hardly-worth',
};

/** The verdict of two probabilities of being worth a flower: on the day of use, and a year later. */
export function verdictOf(then: number, yearLater: number): VialVerdict {
  if (then >= KEEP_FROM) return yearLater >= KEEP_FROM ? 'keep' : 'use-first';
  return then < DISCARD_BELOW ? 'discard' : 'test-first';
}

function shareAtLeast(rates: Float64Array, worth: number): number {
  return mean(rates.map((rate) => (rate >= worth ? 1 : 0)));
}

/** The smallest number of flowers with which at least one fruit is expected nine times in ten; null above 100. */
function flowersForNineInTen(rates: Float64Array): number | null {
  const none = new Float64Array(rates.length).fill(1);
  for (let n = 1; n <= MOST_FLOWERS; n += 1) {
    for (let k = 0; k < none.length; k += 1) none[k]! *= 1 - rates[k]!;
    if (mean(none) <= 0.1) return n;
  }
  return null;
}
