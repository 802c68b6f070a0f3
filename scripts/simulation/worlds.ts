/** The worlds that the ranges are tried in: one that matches the priors, and three that do not. */

import { GROWER_PRIORS } from '../../lib/analysis/priors.ts';
import { randomStream } from '../../lib/numerics/random.ts';
import type { Size, World } from './season-world.ts';

/** As the priors say, incompatible pairs as a point mass; frozen pollen goes to hard pairs; either age scale. */
const MATCHING: World = {
  priors: GROWER_PRIORS,
  ageScales: ['log1p-days', 'days'],
  frozenOnHardPairs: true,
};

export const WORLDS: ReadonlyMap<string, World> = new Map([
  ['matching', MATCHING],
  // The priors say that pollen fades: mean −1 a year.
  ['no fading', { ...MATCHING, age: 0 }],
  ['strong fading', { ...MATCHING, age: -3 }],
  ['heavy tails', { ...MATCHING, tails: 't3' }],
]);

/** A grower of 60 to 300 flowers, evenly: a plant for every 20 of them, six to ten mornings a season. */
export function sizeOf(seed: number): Size {
  const { uniform } = randomStream(-1 - seed);
  const flowers = 60 + Math.floor(uniform() * 241);
  return {
    flowers,
    plants: 4 + Math.round(flowers / 25),
    mornings: 6 + Math.floor(uniform() * 5),
    seasons: flowers > 150 ? 2 : 1,
  };
}
