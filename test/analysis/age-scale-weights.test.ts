import { describe, expect, it } from 'vitest';
import { leaveOneVialOut, scaleWeights } from '../../lib/analysis/age-scale-weights.ts';
import type { FruitModel } from '../../lib/analysis/fruit-model.ts';
import { fruitModel } from '../../lib/analysis/fruit-model.ts';
import { GROWER_PRIORS } from '../../lib/analysis/priors.ts';
import { smallSeason } from './flowers-of.ts';

describe('scaleWeights', () => {
  it('weighs by the exponential of the scores', () => {
    // exp(0) : exp(log 3) = 1 : 3.
    const [a, b] = scaleWeights([-7, -7 + Math.log(3)]);
    expect(a).toBeCloseTo(0.25, 14);
    expect(b).toBeCloseTo(0.75, 14);
  });

  it('does not vanish or overflow for scores far from 0', () => {
    expect(scaleWeights([-5000, -5000])).toEqual([0.5, 0.5]);
    expect(scaleWeights([900, -900])).toEqual([1, 0]);
  });
});

describe('leaveOneVialOut', () => {
  const options = { ageScale: 'days', priors: GROWER_PRIORS, seed: 1, draws: 400 } as const;

  it('is the log of the harmonic mean of a single draw’s likelihoods, by hand', () => {
    const model = fruitModel(smallSeason(), options);
    const draw = model.fit.draws[0]!;
    const still: FruitModel = {
      ...model,
      fit: {
        ...model.fit,
        draws: [{ ...draw, sds: draw.sds.map(() => 0), exclusive: draw.exclusive.map(() => 0) }],
      },
    };
    const at = (name: string) => draw.columns[model.index.columns.get(name)!]!;
    const effect = (factor: string, level: string) =>
      draw.effects[model.index.factors.get(factor)!]![model.index.levels.get(factor)!.get(level)!]!;
    let expected = 0;
    for (const row of model.rows.filter(({ storage }) => storage === 'frozen')) {
      const pair = model.pairs.find(
        ({ seedParent, pollenParent }) => seedParent === row.seedParent && pollenParent === row.pollenParent,
      )!;
      let eta = at('(Intercept)') + at('storage: frozen') + (row.ageDays / 365) * at('age: frozen');
      eta += effect('seedParent', row.seedParent) + effect('pollenParent', row.pollenParent);
      eta += effect('morning', row.morning) + effect('season', row.season);
      eta += draw.effects[model.index.factors.get('pair')!]![pair.code]!;
      for (const [name, value] of pair.between) eta += value * at(name);
      // With one draw and no vial spread the score is the log-likelihood of the stored flowers.
      const p = 1 / (1 + Math.exp(-eta));
      expected += row.fruits * Math.log(p) + (row.flowers - row.fruits) * Math.log(1 - p);
    }
    expect(leaveOneVialOut(still)).toBeCloseTo(expected, 10);
  });

  it('integrates the vial’s own effect out', () => {
    const model = fruitModel(smallSeason(), options);
    const draw = model.fit.draws[0]!;
    const vialAt = model.index.factors.get('vial')!;
    // A draw in which everything is 0 but the spread of vials: each vial is an integral over one normal.
    const plain = {
      ...draw,
      columns: draw.columns.map(() => 0),
      effects: draw.effects.map((values) => values.map(() => 0)),
      sds: draw.sds.map((_, g) => (g === vialAt ? 0.9 : 0)),
      exclusive: draw.exclusive.map(() => 0),
    };
    const vials = new Map<string, { fruits: number; flowers: number }>();
    for (const { vial, storage, fruits, flowers } of model.rows) {
      if (storage === 'fresh') continue;
      const seen = vials.get(vial!) ?? { fruits: 0, flowers: 0 };
      vials.set(vial!, { fruits: seen.fruits + fruits, flowers: seen.flowers + flowers });
    }
    let expected = 0;
    for (const { fruits, flowers } of vials.values()) {
      let sum = 0;
      // The trapezoidal rule from −8 to 8 stands for the exact integral.
      for (let z = -8; z <= 8; z += 0.02) {
        const p = 1 / (1 + Math.exp(-0.9 * z));
        sum +=
          ((0.02 * Math.exp(-(z * z) / 2)) / Math.sqrt(2 * Math.PI)) *
          p ** fruits *
          (1 - p) ** (flowers - fruits);
      }
      expected += Math.log(sum);
    }
    // Seven points err by a few in 10,000 of a log score at this spread.
    expect(
      Math.abs(leaveOneVialOut({ ...model, fit: { ...model.fit, draws: [plain] } }) - expected),
    ).toBeLessThan(0.002);
  });

  it('scores vials alone: fresh flowers do not count', () => {
    const fresh = smallSeason().filter(({ storage }) => storage === 'fresh');
    expect(leaveOneVialOut(fruitModel(fresh, options))).toBe(0);
  });
});
