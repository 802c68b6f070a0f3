import { describe, expect, it } from 'vitest';
import { fruitModel } from '../../lib/analysis/fruit-model.ts';
import {
  averagedRate,
  levelAt,
  occasionSd,
  pairPredictor,
  sdOf,
  spreadOf,
  storagePredictor,
} from '../../lib/analysis/fruit-rate.ts';
import { GROWER_PRIORS } from '../../lib/analysis/priors.ts';
import { meanRate } from '../../scripts/simulation/season-world.ts';
import { smallSeason } from './flowers-of.ts';

/** Largest error of `averagedRate` over linear predictors from −8 to 8, against the trapezoidal rule. */
function worstError(sd: number): number {
  let worst = 0;
  for (let eta = -8; eta <= 8; eta += 0.1) {
    worst = Math.max(worst, Math.abs(averagedRate(eta, spreadOf(sd)) - meanRate(eta, sd)));
  }
  return worst;
}

describe('averagedRate', () => {
  it('is the inverse logit where nothing varies', () => {
    for (const eta of [-3, 0, 0.7])
      expect(averagedRate(eta, spreadOf(0))).toBeCloseTo(1 / (1 + Math.exp(-eta)), 14);
  });

  it.each([
    [0.5, 0.00005],
    [1, 0.0014],
    [1.5, 0.007],
    [2, 0.018],
  ])('errs at a spread of %s by at most %s', (sd, bound) => {
    const worst = worstError(sd);
    expect(worst).toBeLessThan(bound);
    // The bound that its doc comment states is no wider than it must be.
    expect(worst).toBeGreaterThan(bound / 2);
  });

  it('rises with the linear predictor and stays between 0 and 1, far out too', () => {
    const etas = [-900, -40, -2, 0, 2, 40, 900];
    const rates = etas.map((eta) => averagedRate(eta, spreadOf(0.8)));
    expect(rates.every((rate) => rate >= 0 && rate <= 1)).toBe(true);
    expect(rates.every((rate, k) => k === 0 || rate >= rates[k - 1]!)).toBe(true);
  });

  it('is as likely to fail at −eta as to take at eta', () => {
    expect(averagedRate(-1.3, spreadOf(0.6))).toBeCloseTo(1 - averagedRate(1.3, spreadOf(0.6)), 14);
  });
});

describe('the parts of a linear predictor', () => {
  const model = fruitModel(smallSeason(), {
    ageScale: 'days',
    priors: GROWER_PRIORS,
    seed: 1,
    draws: 20,
    methods: ['room'],
  });
  const draw = model.fit.draws[7]!;
  const { columns, factors, levels } = model.index;

  it('adds intercept, parents, pair and between-pair terms, and nothing of pollen or morning', () => {
    const pair = model.pairs[4]!;
    const effect = (factor: string, level: string) =>
      draw.effects[factors.get(factor)!]![levels.get(factor)!.get(level)!]!;
    const between = [...pair.between].reduce(
      (sum, [name, value]) => sum + value * draw.columns[columns.get(name)!]!,
      0,
    );
    const expected =
      draw.columns[columns.get('(Intercept)')!]! +
      effect('seedParent', pair.seedParent) +
      effect('pollenParent', pair.pollenParent) +
      draw.effects[factors.get('pair')!]![pair.code]! +
      between;
    expect([...pair.between.keys()].sort()).toEqual([
      'mean age: frozen',
      'mean age: room',
      'share: frozen',
      'share: room',
    ]);
    expect(pairPredictor(model, pair)(draw)).toBeCloseTo(expected, 12);
  });

  it('adds storage and its slope times the age over the reference age', () => {
    const at = (name: string) => draw.columns[columns.get(name)!]!;
    expect(storagePredictor(model, 'fresh', 0)!(draw)).toBe(0);
    expect(storagePredictor(model, 'frozen', 730)!(draw)).toBeCloseTo(
      at('storage: frozen') + 2 * at('age: frozen'),
      12,
    );
    expect(storagePredictor(model, 'room', 3)!(draw)).toBeCloseTo(at('storage: room') + at('age: room'), 12);
    expect(storagePredictor(model, 'refrigerated', 3)).toBeNull();
  });

  it('starts a method at the origin that the model was given', () => {
    const moved = { ...model, originDays: 365 };
    expect(storagePredictor(moved, 'frozen', 365)!(draw)).toBe(draw.columns[columns.get('storage: frozen')!]);
  });

  it('knows the standard deviations by factor, 0 for a factor that the model does not have', () => {
    expect(sdOf(model, draw, 'vial')).toBe(draw.sds[factors.get('vial')!]);
    expect(sdOf(model, draw, 'grower')).toBe(0);
    const [morning, season] = [sdOf(model, draw, 'morning'), sdOf(model, draw, 'season')];
    expect(occasionSd(model, draw)).toBeCloseTo(Math.sqrt(morning ** 2 + season ** 2), 14);
  });

  it('knows only levels of the data', () => {
    expect(levelAt(model, 'seedParent', 'Ash Lantern')).toEqual({
      g: factors.get('seedParent'),
      code: levels.get('seedParent')!.get('Ash Lantern'),
    });
    expect(levelAt(model, 'seedParent', '__proto__')).toBeNull();
    expect(levelAt(model, 'grower', 'anyone')).toBeNull();
  });
});
