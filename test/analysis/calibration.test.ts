/**
 * Simulation-based calibration (Talts et al. 2018, arXiv:1804.06788): where parameters are drawn from the priors and
 * flowers from the parameters, a posterior range covers the truth with exactly the probability that it claims.
 */

import { describe, expect, it } from 'vitest';
import { fruitModel } from '../../lib/analysis/fruit-model.ts';
import { likeForLike } from '../../lib/analysis/like-for-like.ts';
import { pairCounts, pooledPairs } from '../../lib/analysis/pairs.ts';
import { predictor } from '../../lib/analysis/predictor.ts';
import { GROWER_PRIORS, NEUTRAL_PRIORS } from '../../lib/analysis/priors.ts';
import { vialAdvice } from '../../lib/decisions/vials.ts';
import type { Size, World } from '../../scripts/simulation/season-world.ts';
import { simulatedSeason } from '../../scripts/simulation/season-world.ts';

const SEASONS = 40;
const DRAWS = 1000;
const FRESH = { storage: 'fresh', ageDays: 0 };
const SIZE: Size = { flowers: 80, plants: 6, mornings: 8, seasons: 1 };
const WORLD: World = { priors: GROWER_PRIORS, ageScales: ['log1p-days'] };

/**
 * Numbers of successes beyond which chance goes less than once in 1,000 at either end: exact binomial tails by adding
 * up. One range a season is looked at, since those of one season share its parents.
 */
function rareBounds(trials: number, p: number): [least: number, most: number] {
  const tail = (from: number, to: number): number => {
    let sum = 0;
    for (let k = from; k <= to; k += 1) {
      let term = p ** k * (1 - p) ** (trials - k);
      for (let j = 0; j < k; j += 1) term *= (trials - j) / (j + 1);
      sum += term;
    }
    return sum;
  };
  let least = 0;
  while (tail(0, least) < 0.001) least += 1;
  let most = trials;
  while (tail(most, trials) < 0.001) most -= 1;
  return [least, most];
}

function expectCount(count: number, trials: number, p: number): void {
  const [least, most] = rareBounds(trials, p);
  expect(count).toBeGreaterThanOrEqual(least);
  expect(count).toBeLessThanOrEqual(most);
}

describe('the fruit model over 40 seasons drawn from its priors', () => {
  const seasons = Array.from({ length: SEASONS }, (_, k) => {
    const { flowers, vials, truth } = simulatedSeason(WORLD, SIZE, 1000 + k);
    const model = fruitModel(flowers, {
      ageScale: 'log1p-days',
      priors: GROWER_PRIORS,
      seed: 1,
      draws: DRAWS,
    });
    const predict = predictor(model.fit.draws.map((draw) => ({ model, draw })));
    return { flowers, vials, truth, model, predict };
  });

  function covered(level: number): { one: number; all: number[] } {
    let one = 0;
    const all = seasons.map(({ flowers, truth, predict }, k) => {
      const pairs = pooledPairs(pairCounts(flowers), predict, FRESH, { level, because: '' });
      const hits = pairs.map(({ seedParent, pollenParent, lower, upper }) => {
        const rate = truth.freshRate(seedParent, pollenParent);
        return lower! <= rate && rate <= upper!;
      });
      // The pair whose turn it is: chosen before the flowers were.
      if (hits[k % hits.length]) one += 1;
      return hits.filter(Boolean).length / hits.length;
    });
    return { one, all };
  }

  it.each([0.5, 0.8, 0.95])(
    'has ranges of pairs at level %s that cover the truth about that often',
    (level) => {
      const { one, all } = covered(level);
      expectCount(one, SEASONS, level);
      // All pairs of all seasons: seasons are independent, so their own spread gives the standard error of the mean.
      const mean = all.reduce((a, b) => a + b, 0) / SEASONS;
      const error = Math.sqrt(
        all.reduce((sum, share) => sum + (share - mean) ** 2, 0) / (SEASONS - 1) / SEASONS,
      );
      // 0 is held back with a mass of its own, so that a range with 0 in it covers a little more often than its level.
      expect(mean).toBeGreaterThan(level - 3.5 * error);
      expect(mean).toBeLessThan(level + 0.05 + 3.5 * error);
    },
  );

  it.each([0.5, 0.8, 0.95])(
    'has ranges of vials a year ahead, at level %s, that cover the truth about that often',
    (level) => {
      const covered = seasons.map(({ vials, truth, predict }, k) => {
        // The vial whose turn it is, opened or not, on the flowers of the plant after its father.
        const vial = vials[k % vials.length]!;
        const father = Number(vial.pollenParent.split(' ')[1]);
        const over = [{ seedParent: `Plant ${(father % SIZE.plants) + 1}`, weight: 1 }];
        const [advice] = vialAdvice([vial], predict, {
          useOn: '2026-06-17',
          worth: null,
          level,
          over: () => over,
          record: () => ({ fruits: 0, flowers: 0 }),
          because: '',
        });
        const rate = truth.vialRate(vial, advice!.ageDays, over);
        return advice!.lower! <= rate && rate <= advice!.upper!;
      });
      expectCount(covered.filter(Boolean).length, SEASONS, level);
    },
  );

  it.each([
    ['the intercept', '(Intercept)', 'intercept'],
    ['storage', 'storage: frozen', 'storage'],
    ['age', 'age: frozen', 'age'],
  ] as const)('ranks the true effect of %s evenly among its draws', (_, column, key) => {
    const ranks = seasons.map(({ model, truth }) => {
      const at = model.index.columns.get(column)!;
      return model.fit.draws.filter(({ columns }) => columns[at]! < truth[key]).length / DRAWS;
    });
    ranks.sort((a, b) => a - b);
    const distance = ranks.reduce(
      (worst, rank, k) => Math.max(worst, rank - k / SEASONS, (k + 1) / SEASONS - rank),
      0,
    );
    // Kolmogorov's distance of 40 uniform numbers is above 0.303 once in 1,000 (Marsaglia, Tsang & Wang 2003).
    expect(distance).toBeLessThan(0.303);
  });
});

describe('the like-for-like difference over 24 seasons drawn from its priors', () => {
  it('has 80 % ranges that cover the truth about that often', () => {
    const trials = 24;
    const world: World = { priors: NEUTRAL_PRIORS, ageScales: ['log1p-days'], origin: 'median' };
    let covered = 0;
    for (let k = 0; k < trials; k += 1) {
      const { flowers, truth } = simulatedSeason(world, SIZE, 2000 + k);
      const { lower, upper } = likeForLike(flowers, 'frozen', 3, { ageScale: 'log1p-days', level: 0.8 });
      if (lower! <= truth.difference && truth.difference <= upper!) covered += 1;
    }
    expectCount(covered, trials, 0.8);
  });
});
