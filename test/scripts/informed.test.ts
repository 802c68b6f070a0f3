import { describe, expect, it } from 'vitest';
import { randomStream } from '../../lib/numerics/random.ts';
import type { InformedProblem, Trial } from '../../scripts/simulation/informed-chain.ts';
import { coupleKinds, informedDraws } from '../../scripts/simulation/informed-chain.ts';

const logistic = (x: number) => 1 / (1 + Math.exp(-x));
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

const trial = (outcome: 0 | 1 | null, more: Partial<Trial> = {}): Trial => ({
  outcome,
  pair: 0,
  occasion: [],
  pollen: 0,
  choice: null,
  ...more,
});

/** One pair, whose mother, father and leaning do not vary unless it is said. */
const problem = (trials: readonly Trial[], more: Partial<InformedProblem> = {}): InformedProblem => ({
  intercept: 0.4,
  sds: [0, 0, 0, 0],
  trials,
  pairs: [{ effects: [0, 1, 2, 3], apart: 0, couple: 0, way: 0, father: 0 }],
  couples: 1,
  fathers: 1,
  incompatible: 0,
  noGoodPollen: 0,
  ...more,
});

describe('what can be known at best', () => {
  it('of the kind of a pair is what Bayes’ rule says', () => {
    // 0.3 of couples are incompatible, 7 in 8 of them this way round; three flowers of chance logistic(0.4) all failed.
    const barren = 0.3 * (7 / 8);
    const missed = (1 - logistic(0.4)) ** 3;
    const exact = barren / (barren + (1 - barren) * missed);
    const asked = problem([trial(0), trial(0), trial(0)], { incompatible: 0.3 });
    const draws = informedDraws(asked, 4000, randomStream(1));
    const found = mean(draws.map(({ couples }) => couples[0]! & 1));
    // Draws of a kind alone are independent: within 4 standard errors.
    expect(Math.abs(found - exact)).toBeLessThan(4 * Math.sqrt((exact * (1 - exact)) / 4000));
    // The other way round: all but 1 in 7 of these couples, and 1 in 8 of the incompatible among the rest.
    const other = exact * (6 / 7) + ((1 - exact) * (0.3 / 8)) / (1 - barren);
    const back = mean(draws.map(({ couples }) => couples[0]! >> 1));
    expect(Math.abs(back - other)).toBeLessThan(4 * Math.sqrt((other * (1 - other)) / 4000));
  });

  it('of a couple with a fruit is that it takes, and of a plant with one that its pollen is good', () => {
    const asked = problem([trial(1), trial(0)], { incompatible: 0.5, noGoodPollen: 0.5 });
    for (const { couples, badFathers } of informedDraws(asked, 200, randomStream(2))) {
      expect(couples[0]! & 1).toBe(0);
      expect(badFathers[0]).toBe(0);
    }
  });

  it('of an effect is its posterior mean by quadrature, outcome and choice of pollen together', () => {
    // A pair effect of sd 0.9 and a leaning of sd 1: one fruit, two failures, fresh pollen taken in two of three.
    const chosen = (taken: number) => ({ freshToHave: true, lots: 2, taken });
    const trials = [
      trial(1, { choice: chosen(-1) }),
      trial(0, { choice: chosen(-1) }),
      trial(0, { choice: chosen(1), pollen: -0.5 }),
    ];
    const asked = problem(trials, { sds: [0, 0, 0.9, 1] });
    const draws = informedDraws(asked, 6000, randomStream(3));
    let [all, first, second] = [0, 0, 0];
    for (let effect = -5; effect <= 5; effect += 0.02) {
      for (let lean = -5; lean <= 5; lean += 0.02) {
        const fresh = logistic(0.8 + Math.max(-3, effect) + lean);
        const older = Math.exp(0.8 * Math.max(-3, effect));
        const weight =
          Math.exp(-((effect / 0.9) ** 2 + lean ** 2) / 2) *
          logistic(0.4 + effect) *
          (1 - logistic(0.4 + effect)) *
          (1 - logistic(0.4 + effect - 0.5)) *
          (fresh ** 2 * (1 - fresh) * (older / (1 + older)));
        all += weight;
        first += weight * effect;
        second += weight * lean;
      }
    }
    // Five sweeps apart draws are nearly independent: standard errors are below 0.9 and 1 over the root of 6000, times two.
    expect(Math.abs(mean(draws.map(({ effects }) => effects[2]!)) - first / all)).toBeLessThan(0.07);
    expect(Math.abs(mean(draws.map(({ effects }) => effects[3]!)) - second / all)).toBeLessThan(0.07);
  });

  it('shares out the kinds of couples as the truth does', () => {
    const kinds = coupleKinds(0.08);
    expect(kinds.reduce((sum, kind) => sum + kind, 0)).toBeCloseTo(1, 12);
    expect(kinds[3]).toBeCloseTo(0.06, 12);
    expect([kinds[1], kinds[2]]).toEqual([expect.closeTo(0.01, 12), expect.closeTo(0.01, 12)]);
  });
});
