/** The 2 × 2 tables with given margins, by the count x of the first group's successes, at any odds ratio. */

import { firstWhole } from '../numerics/binomial.ts';
import { hypergeometricCdf, hypergeometricDensity } from '../numerics/hypergeometric.ts';
import type { Tail } from '../numerics/normal.ts';

/** Both group sizes and the successes of both together; x goes from `least` to `most`. */
export interface Margins {
  readonly n1: number;
  readonly n2: number;
  readonly successes: number;
  readonly least: number;
  readonly most: number;
}

export function marginsOf(n1: number, n2: number, successes: number): Margins {
  return { n1, n2, successes, least: Math.max(0, successes - n2), most: Math.min(n1, successes) };
}

/** log P(X = x) at odds ratio 1. */
export function logProbability(x: number, { n1, n2, successes }: Margins): number {
  return hypergeometricDensity(x, n1, n2, successes, { log: true });
}

/** P(X ≤ x) or P(X > x) at odds ratio 1. */
export function tailAt(x: number, { n1, n2, successes }: Margins, tail: Tail): number {
  return hypergeometricCdf(x, n1, n2, successes, { tail });
}

/** P(X = x + 1) / P(X = x) at odds ratio 1; falls with x. */
function ratioUp(x: number, { n1, n2, successes }: Margins): number {
  return ((n1 - x) / (x + 1)) * ((successes - x) / (n2 - successes + x + 1));
}

/** A most probable x at log odds ratio eta. */
export function modeOf(margins: Margins, eta: number): number {
  const { least, most } = margins;
  return firstWhole(least, most, (x) => x === most || Math.log(ratioUp(x, margins)) + eta < 0);
}

/** Tables rarer than this beside all others are left out of a sum. */
const NEGLIGIBLE = 1e-30;

/**
 * Weighted sum of the tables at log odds ratio eta: its logarithm over the sum of all, and its slope in eta, which is the
 * difference of the two means of x. Summed from the mode outwards, so that a million trials take a few thousand terms.
 */
export function logShare(margins: Margins, eta: number, weight: (x: number) => number): [number, number] {
  const mode = modeOf(margins, eta);
  const own = weight(mode);
  let [all, allX, part, partX] = [1, 0, own, 0];
  const add = (x: number, term: number): boolean => {
    const [weighted, distance] = [weight(x) * term, x - mode];
    all += term;
    allX += term * distance;
    part += weighted;
    partX += weighted * distance;
    return term > NEGLIGIBLE * all;
  };
  const factor = Math.exp(eta);
  for (let x = mode, term = 1; x < margins.most; x += 1) {
    term *= ratioUp(x, margins) * factor;
    if (!add(x + 1, term)) break;
  }
  for (let x = mode, term = 1; x > margins.least; x -= 1) {
    term /= ratioUp(x - 1, margins) * factor;
    if (!add(x - 1, term)) break;
  }
  return [Math.log(part / all), partX / part - allX / all];
}

/** Mean and variance of x at log odds ratio eta. */
export function momentsAt(margins: Margins, eta: number): [mean: number, variance: number] {
  const { least } = margins;
  const [logMean, slope] = logShare(margins, eta, (x) => x - least);
  const above = Math.exp(logMean);
  return [least + above, above * slope];
}
