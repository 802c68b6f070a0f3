/** Importance weights: how to tame them, what they are worth, and how to draw by them. */

import type { RandomStream } from './random.ts';

/** Log of the mean of exp(x), without overflow. */
export function logMeanExp(x: ArrayLike<number>): number {
  let top = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < x.length; i += 1) top = Math.max(top, x[i]!);
  if (top === Number.NEGATIVE_INFINITY) return top;
  let sum = 0;
  for (let i = 0; i < x.length; i += 1) sum += Math.exp(x[i]! - top);
  return top + Math.log(sum / x.length);
}

export interface Weights {
  /** Adds up to 1. */
  readonly weights: Float64Array;
  /** Number of independent draws these are worth: 1 ÷ sum of squared weights (Kong 1992). */
  readonly effective: number;
}

/**
 * Normalised importance weights, each cut at the square root of their number times their mean.
 *
 * Source: Ionides (2008), Truncated importance sampling, J. Comput. Graph. Stat. 17:295–311.
 */
export function truncateWeights(logWeights: ArrayLike<number>): Weights {
  const n = logWeights.length;
  const centre = logMeanExp(logWeights);
  const cap = Math.sqrt(n);
  const weights = Float64Array.from(logWeights, (w) => Math.min(cap, Math.exp(w - centre)));
  let sum = 0;
  for (const w of weights) sum += w;
  let squares = 0;
  for (let i = 0; i < n; i += 1) {
    weights[i]! /= sum;
    squares += weights[i]! * weights[i]!;
  }
  return { weights, effective: 1 / squares };
}

/**
 * Indices of `count` draws in proportion to their weights, by systematic resampling (Carpenter, Clifford &
 * Fearnhead 1999): one uniform number, then equal steps.
 */
export function systematicResample(weights: Float64Array, count: number, random: RandomStream): Int32Array {
  const chosen = new Int32Array(count);
  const start = random.uniform();
  let cumulative = weights[0]!;
  let at = 0;
  for (let k = 0; k < count; k += 1) {
    const target = (k + start) / count;
    while (cumulative < target && at < weights.length - 1) {
      at += 1;
      cumulative += weights[at]!;
    }
    chosen[k] = at;
  }
  return chosen;
}
