/** A binomial response with priors on everything: what a caller writes, and its latent form. */

import { normalCdf, normalQuantile } from '../numerics/normal.ts';
import type { LatentScales } from './latent-likelihood.ts';
import type { LatentFactor, LatentModel } from './latent-model.ts';
import { latentModel } from './latent-model.ts';

/** A dense column with a normal prior on its coefficient; `below` truncates it from above (logit scale). */
export interface PriorColumn {
  readonly name: string;
  /** n values. */
  readonly values: Float64Array;
  readonly mean: number;
  readonly sd: number;
  /** Upper bound of the coefficient; left out for none. Columns with a bound come last. */
  readonly below?: number;
}

/** A grouping factor whose effects are N(0, sd²), sd half-normal with this scale. */
export interface PriorFactor extends LatentFactor {
  readonly scale: number;
}

/** The factor of which a level may never succeed: logit of that share is N(mean, sd²). */
export interface ExclusivePrior {
  readonly factor: string;
  readonly mean: number;
  readonly sd: number;
}

export interface PriorModel {
  readonly successes: Float64Array;
  readonly trials: Float64Array;
  readonly columns: readonly PriorColumn[];
  readonly factors: readonly PriorFactor[];
  readonly exclusive: ExclusivePrior | null;
}

/** The latent form: prior means go into the offset, so that every coefficient is standard normal. */
export function latentOf(model: PriorModel): LatentModel {
  const offset = new Float64Array(model.successes.length);
  let bounded = false;
  for (const { values, mean, below, name } of model.columns) {
    if (bounded && below === undefined) {
      throw new RangeError(`posterior: column ${name} must come before the columns with a bound`);
    }
    bounded = below !== undefined;
    for (let i = 0; i < offset.length; i += 1) offset[i]! += mean * values[i]!;
  }
  return latentModel({
    successes: model.successes,
    trials: model.trials,
    offset,
    columns: model.columns.map((column) => column.values),
    factors: model.factors,
    exclusive: exclusiveIndex(model),
  });
}

function exclusiveIndex(model: PriorModel): number {
  if (model.exclusive === null) return -1;
  const { factor } = model.exclusive;
  const index = model.factors.findIndex(({ name }) => name === factor);
  if (index < 0)
    throw new RangeError(`posterior: exclusive factor must be one of the factors, got ${factor}`);
  return index;
}

/** Upper bounds of the bounded columns on the standard normal scale. */
export function tailBounds(model: PriorModel): Float64Array {
  return Float64Array.from(
    model.columns.filter(({ below }) => below !== undefined),
    ({ below, mean, sd }) => (below! - mean) / sd,
  );
}

/** Number of hyperparameters: a standard deviation for each factor, and the exclusive share. */
export function hyperSize(model: PriorModel): number {
  return model.factors.length + (model.exclusive ? 1 : 0);
}

/**
 * Scales at a point u of hyperparameter space, where every hyperparameter is standard normal beforehand: a
 * half-normal standard deviation is scale × quantile((1 + Phi(u)) / 2), the share logistic(mean + sd × u).
 */
export function scalesAt(model: PriorModel, u: ArrayLike<number>): LatentScales {
  const last = u[model.factors.length];
  return {
    columns: Float64Array.from(model.columns, ({ sd }) => sd),
    factors: Float64Array.from(model.factors, ({ scale }, g) => scale * halfNormal(u[g]!)),
    exclusive: model.exclusive ? 1 / (1 + Math.exp(-(model.exclusive.mean + model.exclusive.sd * last!))) : 0,
  };
}

/** Half-normal quantile at Phi(u), from the smaller tail so that both ends keep their digits. */
function halfNormal(u: number): number {
  return -normalQuantile(normalCdf(-u) / 2);
}
