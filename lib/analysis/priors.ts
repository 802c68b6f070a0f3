/**
 * The weak priors behind age curves, pairs and vials, on the logit scale. They were written down before any
 * simulation was run and are part of every result (`models.grower.priors`).
 *
 * Where they come from:
 * - Pollen fades and does not improve, storage costs something (common practice, no source). Sizes are of the
 *   order of published ones: date palm set fruit on 85 % of flowers with fresh pollen, 75 % after −30 °C, 65 %
 *   after 4 °C, 45 % after 28 °C (Kadri 2022, abstract), which is −0.6, −1.1 and −1.9 on the logit scale.
 * - Parents differ moderately: half-normal standard deviations let the middle two thirds of the parents lie
 *   within about 4 and 9 in 10 of each other, and favour small differences over large ones (Gelman 2006,
 *   Bayesian Analysis 1:515–534, on half-normal priors for standard deviations of few groups).
 * - An incompatible pair is possible: about 7 in 100 pairs, could be 2 to 26 in 100 (common practice, no source).
 */

import { onScale } from './age-scale.ts';
import type { AgeScale } from './models.ts';

/** A normal prior; `below` is the bound of a truncated one. */
export interface NormalPrior {
  readonly mean: number;
  readonly sd: number;
  readonly below?: number;
}

/** Priors of one model. */
export interface Priors {
  /** Fresh pollen on an average pair. */
  readonly intercept: NormalPrior;
  /** Each stored method at age 0 against fresh. */
  readonly storage: NormalPrior;
  /** Each stored method between age 0 and its reference age. */
  readonly age: NormalPrior;
  /** Between pairs: a pair with only this method against one with none of it. */
  readonly share: NormalPrior;
  /** Between pairs: the pair's mean of the age term. */
  readonly meanAge: NormalPrior;
  /** Scales of half-normal standard deviations. */
  readonly sds: {
    readonly seedParent: number;
    readonly pollenParent: number;
    readonly pair: number;
    readonly vial: number;
    readonly morning: number;
    readonly season: number;
    readonly grower: number;
  };
  /** Logit of the share of incompatible pairs. */
  readonly incompatible: { readonly mean: number; readonly sd: number };
}

/** Priors of what reaches a grower: curves, pairs, vials. */
export const GROWER_PRIORS: Priors = {
  intercept: { mean: 0.3, sd: 1.2 },
  storage: { mean: -0.5, sd: 0.7 },
  age: { mean: -1, sd: 1, below: 0 },
  share: { mean: 0, sd: 1.5 },
  meanAge: { mean: 0, sd: 1 },
  sds: { seedParent: 0.8, pollenParent: 0.8, pair: 0.6, vial: 0.5, morning: 0.5, season: 0.4, grower: 0.5 },
  incompatible: { mean: -2.6, sd: 0.8 },
};

/**
 * Priors of the like-for-like difference: they do not lean to a loss, since whether there is one is the question;
 * the storage effect stands at the method's median age.
 */
export const NEUTRAL_PRIORS: Priors = {
  ...GROWER_PRIORS,
  storage: { mean: 0, sd: 1.5 },
  age: { mean: 0, sd: 1 },
  share: { mean: 0, sd: 2 },
};

/** Days over which the age prior is stated: a span in which a method's pollen is expected to lose something. */
const REFERENCE_DAYS = new Map([
  ['room', 3],
  ['refrigerated', 60],
  ['frozen', 365],
]);
const OTHER_REFERENCE_DAYS = 90;

/** The reference age of a method, in days; 90 for a method of the grower's own. */
export function referenceDays(storage: string): number {
  return REFERENCE_DAYS.get(storage) ?? OTHER_REFERENCE_DAYS;
}

/** The age term of a method: 0 at age 0, 1 at the method's reference age. */
export function ageTerm(ageDays: number, storage: string, ageScale: AgeScale): number {
  return onScale(ageDays, ageScale) / onScale(referenceDays(storage), ageScale);
}
