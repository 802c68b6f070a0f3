/** The exact conditional likelihood of strata, given their numbers of successes. */

import type { ClimbPoint } from './climb.ts';
import type { Stratum } from './strata.ts';

/** The conditional log-likelihood at one point; its curvature is the observed (here also expected) information. */
export interface ConditionalPoint extends ClimbPoint {
  /** Largest distance of a linear predictor from the middle of its stratum. */
  readonly reach: number;
}

/** The shift alpha of the linear predictor at which the stratum expects `k` successes, by safeguarded Newton steps. */
function tilt(eta: Float64Array, trials: Float64Array, k: number): number {
  let lower = -Math.max(...eta) - 50;
  let upper = -Math.min(...eta) + 50;
  let alpha = (lower + upper) / 2;
  for (let step = 0; step < 100; step += 1) {
    let excess = -k;
    let slope = 0;
    for (let i = 0; i < eta.length; i += 1) {
      const p = 1 / (1 + Math.exp(-eta[i]! - alpha));
      excess += trials[i]! * p;
      slope += trials[i]! * p * (1 - p);
    }
    if (excess > 0) upper = alpha;
    else lower = alpha;
    const next = alpha - excess / slope;
    const inside = next > lower && next < upper;
    if (inside && Math.abs(next - alpha) < 1e-6) return next;
    alpha = inside ? next : (lower + upper) / 2;
  }
  return alpha;
}

/** Sums over the ways to place j = 0 … k successes: their probability, and the first two moments of the sum of x. */
interface Moments {
  readonly mass: Float64Array;
  /** (k + 1) × p. */
  readonly first: Float64Array;
  /** (k + 1) × p × p, lower triangles. */
  readonly second: Float64Array;
}

/** Adds one trial with success probability q and covariates x to the sums for `least` ≤ j ≤ `most` successes. */
function addTrial(
  { mass, first, second }: Moments,
  q: number,
  x: Float64Array,
  least: number,
  most: number,
): void {
  const p = x.length;
  const stay = 1 - q;
  for (let j = most; j >= Math.max(least, 1); j -= 1) {
    const before = mass[j - 1]!;
    const at = j * p;
    for (let a = 0; a < p; a += 1) {
      const row = at * p + a * p;
      const rowBefore = row - p * p;
      const firstBefore = first[at - p + a]!;
      for (let b = 0; b <= a; b += 1) {
        const cross = x[a]! * first[at - p + b]! + firstBefore * x[b]! + x[a]! * x[b]! * before;
        second[row + b] = stay * second[row + b]! + q * (second[rowBefore + b]! + cross);
      }
    }
    for (let a = 0; a < p; a += 1) {
      first[at + a] = stay * first[at + a]! + q * (first[at - p + a]! + x[a]! * before);
    }
    mass[j] = stay * mass[j]! + q * before;
  }
  if (least === 0) mass[0]! *= stay;
}

/** Adds the log-likelihood, score and information of one stratum to the sums, given its signed linear predictor. */
function addStratum(
  stratum: Stratum,
  eta: Float64Array,
  rows: Float64Array,
  p: number,
  score: Float64Array,
  information: Float64Array,
): number {
  const { from, trials, successes, totalSuccesses, totalTrials } = stratum;
  // Counting failures where they are fewer gives the same likelihood with signs turned, and shorter sums.
  const sign = 2 * totalSuccesses > totalTrials ? -1 : 1;
  const k = sign === 1 ? totalSuccesses : totalTrials - totalSuccesses;
  const signed = eta.map((value) => sign * value);
  const alpha = tilt(signed, trials, k);
  const moments = {
    mass: new Float64Array(k + 1),
    first: new Float64Array((k + 1) * p),
    second: new Float64Array((k + 1) * p * p),
  };
  moments.mass[0] = 1;
  let logLik = alpha * k;
  let done = 0;
  const x = new Float64Array(p);
  for (let i = 0; i < trials.length; i += 1) {
    const odds = signed[i]! + alpha;
    const count = sign === 1 ? successes[i]! : trials[i]! - successes[i]!;
    for (let a = 0; a < p; a += 1) {
      x[a] = sign * rows[(from + i) * p + a]!;
      score[a]! += count * x[a]!;
    }
    logLik += count * signed[i]! - trials[i]! * (Math.max(odds, 0) + Math.log1p(Math.exp(-Math.abs(odds))));
    const q = 1 / (1 + Math.exp(-odds));
    for (let t = 0; t < trials[i]!; t += 1) {
      done += 1;
      addTrial(moments, q, x, Math.max(0, k - (totalTrials - done)), Math.min(k, done));
    }
  }
  addMoments(moments, k, p, score, information);
  return logLik - Math.log(moments.mass[k]!);
}

/** Takes the conditional mean from the score and adds the conditional covariance to the information. */
function addMoments(
  { mass, first, second }: Moments,
  k: number,
  p: number,
  score: Float64Array,
  information: Float64Array,
): void {
  const total = mass[k]!;
  for (let a = 0; a < p; a += 1) {
    const mean = first[k * p + a]! / total;
    score[a]! -= mean;
    for (let b = 0; b <= a; b += 1) {
      information[a * p + b]! += second[(k * p + a) * p + b]! / total - (mean * first[k * p + b]!) / total;
    }
  }
}

/**
 * Conditional log-likelihood, score and information of strata.
 *
 * The sum over all placements of k successes is the probability of k successes among independent trials whose
 * probabilities are tilted to expect k (a Poisson binomial): it neither over- nor underflows, however many the
 * placements. The moments of the covariates are carried through the same recursion.
 *
 * @param strata strata with both outcomes
 * @param rows covariates of the informative rows, row by row, p each; centred within strata
 * @param p number of covariates; 0 gives the log-likelihood at zero
 * @param gamma p coefficients
 * @source Gail, Lubin & Rubinstein (1981) Biometrika 68, 703–707, equations 2–4, on probabilities
 */
export function conditionalPoint(
  strata: readonly Stratum[],
  rows: Float64Array,
  p: number,
  gamma: Float64Array,
): ConditionalPoint {
  const score = new Float64Array(p);
  const curvature = new Float64Array(p * p);
  let objective = 0;
  let reach = 0;
  for (const stratum of strata) {
    const eta = stratum.offset.slice();
    for (let i = 0; i < eta.length; i += 1) {
      for (let a = 0; a < p; a += 1) eta[i]! += rows[(stratum.from + i) * p + a]! * gamma[a]!;
    }
    reach = Math.max(reach, (Math.max(...eta) - Math.min(...eta)) / 2);
    objective += addStratum(stratum, eta, rows, p, score, curvature);
  }
  return { gamma, objective, score, curvature, reach };
}
