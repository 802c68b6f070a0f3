/** What a grower's plants and pollen are like in truth: drawn anew for each grower, from one of four kinds of world. */

import type { AgeScale } from '../../lib/analysis/models.ts';
import type { NormalPrior } from '../../lib/analysis/priors.ts';
import { GROWER_PRIORS } from '../../lib/analysis/priors.ts';
import type { RandomStream } from '../../lib/numerics/random.ts';

/** The methods of storing that are simulated. */
export type StoredMethod = 'frozen' | 'refrigerated';

/** Everything on the logit scale that does not belong to one plant, pair, vial or morning. */
export interface Nature {
  /** Fresh pollen on an average pair. */
  readonly intercept: number;
  /** What each method costs at age 0. */
  readonly storage: Readonly<Record<StoredMethod, number>>;
  /** What is lost between age 0 and the method's reference age, never above 0. */
  readonly fading: Readonly<Record<StoredMethod, number>>;
  readonly ageScale: AgeScale;
  /** What a pair that does not flower together takes less, whatever the pollen. */
  readonly apart: number;
  readonly sds: {
    readonly seedParent: number;
    readonly pollenParent: number;
    readonly pair: number;
    readonly vial: number;
    readonly morning: number;
    readonly season: number;
    readonly grower: number;
  };
  /** Share of the pairs of plants that never set fruit, one way or both. */
  readonly incompatible: number;
  /** Share of the plants that give no good pollen at all. */
  readonly noGoodPollen: number;
  /** Who fills in one file: one grower, or two or three who swap pollen and keep two seasons. */
  readonly together: boolean;
}

export type DrawNature = (random: RandomStream) => Nature;

const eitherScale = ({ uniform }: RandomStream): AgeScale => (uniform() < 0.5 ? 'days' : 'log1p-days');

/** Gamma with shape 2: a loss that is hardly ever nothing and now and then large. */
const loss = ({ uniform }: RandomStream, mean: number): number =>
  (mean / 2) * Math.log(uniform() * uniform());

/**
 * Not the model's priors, but of the size of what is published: date palm set fruit on 85 % of flowers with fresh pollen, 75 %
 * after −30 °C, 65 % after 4 °C (Kadri 2022, abstract), which is −0.6 and −1.1 on the logit scale, storage and age together.
 * That about two thirds of fresh flowers take and a plant in twelve pairs is incompatible is common practice, no source.
 */
const likePublished: DrawNature = (random) => {
  const { normal } = random;
  const about = (sd: number) => sd * Math.exp(0.3 * normal());
  return {
    intercept: 0.5 + 0.8 * normal(),
    storage: { frozen: -0.3 + 0.3 * normal(), refrigerated: -0.3 + 0.3 * normal() },
    fading: { frozen: loss(random, 0.8), refrigerated: loss(random, 1) },
    ageScale: eitherScale(random),
    apart: 0.8,
    sds: {
      seedParent: about(0.7),
      pollenParent: about(0.6),
      pair: about(0.6),
      vial: about(0.35),
      morning: about(0.35),
      season: about(0.3),
      grower: 0.4,
    },
    incompatible: 0.08,
    noGoodPollen: 0,
    together: false,
  };
};

/** As the model's own priors say. */
const likePriors: DrawNature = (random) => {
  const { normal } = random;
  const draw = ({ mean, sd, below = Number.POSITIVE_INFINITY }: NormalPrior): number => {
    for (;;) {
      const value = mean + sd * normal();
      if (value < below) return value;
    }
  };
  const { sds, ...priors } = GROWER_PRIORS;
  const half = (scale: number) => Math.abs(scale * normal());
  return {
    intercept: draw(priors.intercept),
    storage: { frozen: draw(priors.storage), refrigerated: draw(priors.storage) },
    fading: { frozen: draw(priors.age), refrigerated: draw(priors.age) },
    ageScale: eitherScale(random),
    apart: half(priors.share.sd),
    sds: {
      seedParent: half(sds.seedParent),
      pollenParent: half(sds.pollenParent),
      pair: half(sds.pair),
      vial: half(sds.vial),
      morning: half(sds.morning),
      season: half(sds.season),
      grower: 0,
    },
    incompatible: 1 / (1 + Math.exp(-draw(priors.incompatible))),
    noGoodPollen: 0,
    together: false,
  };
};

/** The kinds of growers: the first is the one that targets are set for. */
export const NATURES: ReadonlyMap<string, DrawNature> = new Map([
  ['growers', likePublished],
  ['as the priors say', likePriors],
  // A kind of plant that the model does not know.
  ['plants without good pollen', (random) => ({ ...likePublished(random), noGoodPollen: 0.08 })],
  ['growers together', (random) => ({ ...likePublished(random), together: true })],
]);
