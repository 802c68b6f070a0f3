/** The most that a pair could give if flowers could be cut in pieces: a bound where its shares are too many to look at. */

import type { AllocationProblem, Weights } from './allocation.ts';
import { MUST } from './allocation.ts';

/** Steps towards the best share in pieces; the bound holds wherever they end. */
const STEPS = 80;
const NEWTON_STEPS = 4;
/** A flower in pieces gains less than this from another step: near enough. */
const FLAT = 1e-6;

/** What one pair may be given, and at what price. */
interface Relaxed {
  /** What a flower of each source gives for certain: fruits less price. */
  readonly plain: Float64Array;
  /** Logs of the chances that a flower fails, source by source, draw by draw. */
  readonly logMiss: readonly Float64Array[];
  readonly most: Float64Array;
  readonly varieties: number;
}

/**
 * An upper bound of what any share of one pair gives, prices paid. With flowers in pieces what a pair gives is a concave
 * function, the chance of no fruit being a mean of exponentials, so its tangent at any share is above it everywhere
 * (Boyd & Vandenberghe 2004, Convex Optimization, 3.1.3). Steps one source at a time bring the tangent down.
 *
 * @param sources the pair's sources
 * @param cost price of a flower of a source
 */
export function relaxedBest(
  problem: AllocationProblem,
  weights: Weights,
  cost: (source: number) => number,
  pair: number,
  sources: readonly number[],
): number {
  const { flowers, doses, pairMost, pairFewest } = problem;
  const own = sources.map((s) => problem.sources[s]!);
  const offers = new Set(own.map(({ offer }) => offer));
  const room = [...offers].reduce((sum, offer) => sum + flowers[offer]!, 0);
  const total = Math.min(pairMost[pair]!, room);
  const relaxed: Relaxed = {
    plain: Float64Array.from(own, ({ rate }, at) => weights.fruits * rate - cost(sources[at]!)),
    logMiss: own.map(({ miss }) => miss.map((chance) => Math.log(chance))),
    most: Float64Array.from(own, ({ offer, pollen }) => Math.min(flowers[offer]!, doses[pollen]!, total)),
    varieties: weights.varieties,
  };
  // Flowers towards the pair's fewest count at most this.
  return MUST * Math.min(total, pairFewest[pair]!) + tangentBest(relaxed, total, problem.draws);
}

function tangentBest(relaxed: Relaxed, total: number, draws: number): number {
  const { plain, most, varieties } = relaxed;
  const counts = new Float64Array(plain.length);
  const barren = new Float64Array(draws).fill(1);
  let slopes = slopesAt(relaxed, barren);
  for (let step = 0; step < STEPS; step += 1) {
    const at = steepest(slopes, counts, most);
    if (at < 0) break;
    moveOne(relaxed, at, counts, barren);
    slopes = slopesAt(relaxed, barren);
  }
  let value = varieties * (1 - mean(barren));
  for (const [at, count] of counts.entries()) value += count * (plain[at]! - slopes[at]!);
  return value + filled(slopes, most, total);
}

function mean(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** What a small piece of a flower of each source would gain. */
function slopesAt({ plain, logMiss, varieties }: Relaxed, barren: Float64Array): Float64Array {
  return plain.map((gives, at) => {
    const logs = logMiss[at]!;
    let sum = 0;
    for (let k = 0; k < barren.length; k += 1) sum -= barren[k]! * logs[k]!;
    return gives + (varieties * sum) / barren.length;
  });
}

/** The source by which most is still to be gained; −1 where hardly any is. */
function steepest(slopes: Float64Array, counts: Float64Array, most: Float64Array): number {
  let best = -1;
  let gain = FLAT;
  for (let at = 0; at < slopes.length; at += 1) {
    const slope = slopes[at]!;
    const own = slope > 0 ? (counts[at]! < most[at]! ? slope : 0) : counts[at]! > 0 ? -slope : 0;
    if (own <= gain) continue;
    gain = own;
    best = at;
  }
  return best;
}

/** Brings one source to where its slope is 0, within its limits, by Newton steps. */
function moveOne(
  { plain, logMiss, most, varieties }: Relaxed,
  at: number,
  counts: Float64Array,
  barren: Float64Array,
): void {
  const logs = logMiss[at]!;
  let by = 0;
  for (let step = 0; step < NEWTON_STEPS; step += 1) {
    let [slope, curve] = [0, 0];
    for (let k = 0; k < barren.length; k += 1) {
      const left = barren[k]! * Math.exp(by * logs[k]!);
      slope -= left * logs[k]!;
      curve += left * logs[k]! * logs[k]!;
    }
    const gain = plain[at]! + (varieties * slope) / barren.length;
    const bend = (varieties * curve) / barren.length;
    const next = bend > 0 ? by + gain / bend : gain > 0 ? most[at]! : -counts[at]!;
    by = Math.min(most[at]! - counts[at]!, Math.max(-counts[at]!, next));
  }
  counts[at]! += by;
  for (let k = 0; k < barren.length; k += 1) barren[k]! *= Math.exp(by * logs[k]!);
}

/** The most that slopes can add up to within the limits. */
function filled(slopes: Float64Array, most: Float64Array, total: number): number {
  const gaining = [...slopes.keys()].filter((at) => slopes[at]! > 0).sort((a, b) => slopes[b]! - slopes[a]!);
  let [left, sum] = [total, 0];
  for (const at of gaining) {
    const used = Math.min(left, most[at]!);
    sum += used * slopes[at]!;
    left -= used;
  }
  return sum;
}
