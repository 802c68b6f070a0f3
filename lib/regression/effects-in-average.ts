/** What the random effects of a mixed fit are taken to be when its probabilities are averaged. */

import type { Fit } from './fit.ts';
import type { MixedFit } from './mixed-logistic.ts';
import { linkFunction, linkInverse, linkSlope } from './response.ts';

/**
 * `modes`: each row keeps its plants' conditional modes, held fixed. `zero`: plants of effect 0. `averaged`: over plants
 * never seen, effects drawn from their normal distribution.
 */
export type EffectsInAverage = 'modes' | 'zero' | 'averaged';

/** How a linear predictor becomes a probability, with the derivative, and what each row adds to the predictor. */
export interface Curve {
  readonly probability: (eta: number) => number;
  readonly slope: (eta: number) => number;
  readonly offset: Float64Array;
}

const step = 1 / 8;
const reach = 8;

/** Expectation over a standard normal z, by the trapezoidal rule, which for a normal weight is exact to 1e-14. */
function normalMean(value: (z: number) => number): number {
  let sum = 0;
  let weights = 0;
  for (let z = -reach; z <= reach; z += step) {
    const weight = Math.exp((-z * z) / 2);
    sum += weight * value(z);
    weights += weight;
  }
  return sum / weights;
}

/** Sum of the conditional modes of each row: what its fitted probability has beyond columns and offset. */
function rowModes({ design, coefficients, fitted }: MixedFit): Float64Array {
  return Float64Array.from(fitted, (mean, i) =>
    coefficients.reduce(
      (rest, beta, j) => rest - beta * design.columns[j]![i]!,
      linkFunction('logit', mean) - design.offset[i]!,
    ),
  );
}

/**
 * The curve of a fit.
 *
 * @param fit a fit of `logistic`, which has no random effects, or of `mixedLogistic`
 * @param effects what they are taken to be; variances are held fixed at their estimates
 */
export function curveOf(fit: Fit | MixedFit, effects: EffectsInAverage): Curve {
  const { link, design } = fit;
  const probability = (eta: number): number => linkInverse(link, eta);
  const slope = (eta: number): number => linkSlope(link, eta);
  if (fit.method !== 'laplace' || effects === 'zero') return { probability, slope, offset: design.offset };
  if (effects === 'modes') {
    const modes = rowModes(fit);
    return { probability, slope, offset: design.offset.map((value, i) => value + modes[i]!) };
  }
  const sd = Math.sqrt(fit.variances.reduce((sum, { variance }) => sum + variance, 0));
  return {
    probability: (eta) => normalMean((z) => probability(eta + sd * z)),
    slope: (eta) => normalMean((z) => slope(eta + sd * z)),
    offset: design.offset,
  };
}
