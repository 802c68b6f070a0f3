/** Keys `ageCurve` and `halfAge`: how fruit set fades with the age of the pollen, by storage method. */

import { quantileOfSorted } from '../numerics/quantile.ts';
import type { Estimate, Interval } from '../proportions/interval.ts';
import { unknown } from '../proportions/interval.ts';
import type { FruitModel } from './fruit-model.ts';
import { averagedRateAgainst } from './fruit-rate.ts';
import type { Predictor } from './predictor.ts';
import { mean, summarise } from './summary.ts';
import type { AgedFlower } from './within-between.ts';

/** One point of key `ageCurve`: fruit set over all used crosses were all pollen this method at this age. */
export interface AgePoint extends Interval {
  readonly storage: string;
  readonly ageDays: number;
  /** Fruit set at this age by some equally likely curves: the same position is the same curve at every age. */
  readonly plausible: readonly number[];
}

/** Key `halfAge`: days until the curve of a method is half of its value at age 0. */
export interface HalfAge extends Estimate {
  readonly storage: string;
  /** Oldest age tried with this method, in days: nothing is claimed past it. */
  readonly oldestAgeDays: number | null;
}

/** Ages that a person would ask about, in days; the oldest tried is added. */
const AGES = [
  0, 1, 2, 3, 5, 7, 10, 14, 21, 30, 45, 60, 90, 120, 150, 180, 240, 300, 365, 450, 545, 640, 730, 910, 1095,
  1460, 1825, 2555, 3650,
];

/** Fruit set of one method at any age, averaged over all used crosses: one entry a draw. */
export type AgeRates = (ageDays: number) => Float64Array;

/**
 * The rates behind the curve of a method.
 *
 * Every used cross keeps its pair; morning, season and vial are averaged over.
 *
 * @returns null for a method that the model does not have
 */
export function ageRates(predict: Predictor, pairs: FruitModel['pairs'], storage: string): AgeRates | null {
  if (predict.storage(storage, 0) === null) return null;
  const total = pairs.reduce((sum, { flowers }) => sum + flowers, 0);
  // Odds against a fruit with fresh pollen; infinite in draws where a pair never sets fruit.
  const against = pairs.map(({ seedParent, pollenParent }) => predict.against(seedParent, pollenParent));
  const known = new Map<number, Float64Array>();
  return (ageDays) => {
    const rates = known.get(ageDays) ?? new Float64Array(predict.size);
    if (known.has(ageDays)) return rates;
    known.set(ageDays, rates);
    const change = predict.storage(storage, ageDays)!.map((shift) => Math.exp(-shift));
    pairs.forEach(({ flowers }, i) => {
      const weight = flowers / total;
      const odds = against[i]!;
      for (let k = 0; k < rates.length; k += 1) {
        rates[k]! += weight * averagedRateAgainst(odds[k]! * change[k]!, predict.occasionAndVial[k]!);
      }
    });
    return rates;
  };
}

/** The curve of a method from age 0 to the oldest age tried. */
export function ageCurve(storage: string, rates: AgeRates, oldest: number, level: number): AgePoint[] {
  const ages = [...AGES.filter((age) => age < oldest), oldest];
  return ages.map((ageDays) => {
    const drawn = rates(ageDays);
    return { storage, ageDays, ...summarise(drawn, level), plausible: curvesOf(drawn) };
  });
}

/** Curves of the fan, at most. */
const MOST_CURVES = 15;

/** Evenly spread draws, since neighbouring ones share their hyperparameters. */
function curvesOf(drawn: Float64Array): number[] {
  const count = Math.min(drawn.length, MOST_CURVES);
  return Array.from({ length: count }, (_, j) => drawn[Math.floor(((j + 0.5) * drawn.length) / count)]!);
}

/** Oldest age of a method among some flowers, null where it was never tried with a known age. */
export function oldestAge(flowers: readonly AgedFlower[], storage: string): number | null {
  let oldest: number | null = null;
  for (const flower of flowers) {
    if (flower.storage === storage) oldest = Math.max(oldest ?? 0, flower.ageDays);
  }
  return oldest;
}

/**
 * Half age of a method: when its curve has fallen to half of its value at age 0.
 *
 * @param flowers used flowers with known ages: two ages in two vials are the least that can tell
 * @returns in days; open, or null with a lower end, where the data do not reach that far
 */
export function halfAge(
  flowers: readonly AgedFlower[],
  storage: string,
  rates: AgeRates,
  oldest: number,
  level: number,
): HalfAge {
  const known = { storage, oldestAgeDays: oldest };
  if (!twoAgesInTwoVials(flowers, storage)) return { ...known, ...unknown('one-age-or-vial') };
  const perDraw = halfAges(rates, oldest).sort();
  const tail = (1 - level) / 2;
  const lower = quantileOfSorted(perDraw, tail);
  const upper = quantileOfSorted(perDraw, 1 - tail);
  const half = mean(rates(0)) / 2;
  const estimate = bisect((age) => mean(rates(age)) - half, oldest);
  if (estimate === null) {
    return {
      ...known,
      estimate: null,
      lower: Math.min(lower, oldest),
      upper: null,
      because: 'past-oldest-age',
    };
  }
  return {
    ...known,
    estimate,
    lower: Math.min(lower, estimate),
    upper: Number.isFinite(upper) ? Math.max(upper, estimate) : null,
  };
}

function twoAgesInTwoVials(flowers: readonly AgedFlower[], storage: string): boolean {
  const ages = new Set<number>();
  const lots = new Set<string>();
  for (const flower of flowers) {
    if (flower.storage !== storage) continue;
    ages.add(flower.ageDays);
    // Without a vial, pollen of one father and one age of one morning is one lot.
    lots.add(JSON.stringify(flower.vial ?? [flower.pollenParent, flower.morning, flower.ageDays]));
  }
  return ages.size >= 2 && lots.size >= 2;
}

const HALVINGS = 24;

/** Where a falling function crosses zero between 0 and `oldest`; null where it does not. */
function bisect(f: (age: number) => number, oldest: number): number | null {
  if (f(oldest) > 0) return null;
  let low = 0;
  let high = oldest;
  for (let i = 0; i < HALVINGS; i += 1) {
    const middle = (low + high) / 2;
    if (f(middle) > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Half age of every draw, between the ages of the curve by straight lines; Infinity where a draw never gets there. */
function halfAges(rates: AgeRates, oldest: number): Float64Array {
  const half = rates(0).map((rate) => rate / 2);
  const grid = [...AGES.filter((age) => age < oldest), oldest];
  const result = new Float64Array(half.length).fill(Number.POSITIVE_INFINITY);
  let before = rates(0);
  for (let g = 1; g < grid.length; g += 1) {
    const after = rates(grid[g]!);
    for (let k = 0; k < half.length; k += 1) {
      if (before[k]! <= half[k]! || after[k]! > half[k]!) continue;
      const share = (before[k]! - half[k]!) / (before[k]! - after[k]!);
      result[k] = grid[g - 1]! + share * (grid[g]! - grid[g - 1]!);
    }
    before = after;
  }
  return result;
}
