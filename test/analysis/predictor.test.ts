import { describe, expect, it } from 'vitest';
import { fruitModel } from '../../lib/analysis/fruit-model.ts';
import { pairPredictor, sdOf, spreadOf } from '../../lib/analysis/fruit-rate.ts';
import { predictor } from '../../lib/analysis/predictor.ts';
import { GROWER_PRIORS } from '../../lib/analysis/priors.ts';
import { smallSeason } from './flowers-of.ts';

const flowers = smallSeason();
const [model, other] = (['log1p-days', 'days'] as const).map((ageScale) =>
  fruitModel(flowers, { ageScale, priors: GROWER_PRIORS, seed: 1, draws: 1000, methods: ['room'] }),
) as [ReturnType<typeof fruitModel>, ReturnType<typeof fruitModel>];
const draws = [
  ...model.fit.draws.map((draw) => ({ model, draw })),
  ...other.fit.draws.map((draw) => ({ model: other, draw })),
];
const predict = predictor(draws);
const mean = (values: Float64Array) => values.reduce((a, b) => a + b, 0) / values.length;
const sd = (values: Float64Array) =>
  Math.sqrt(values.reduce((sum, value) => sum + (value - mean(values)) ** 2, 0) / values.length);

describe('predictor', () => {
  it('answers a seen pair from its own effects, each draw by its own model', () => {
    const pair = model.pairs[2]!;
    const eta = predict.pair(pair.seedParent, pair.pollenParent);
    expect(predict.size).toBe(2000);
    draws.forEach(({ model: own, draw }, k) => {
      const same = own.pairs.find(({ code }) => code === pair.code)!;
      const expected = draw.exclusive[pair.code] ? Number.NEGATIVE_INFINITY : pairPredictor(own, same)(draw);
      expect(eta[k]).toBe(expected);
    });
  });

  it('answers the same however often and in whatever order it is asked', () => {
    const once = predict.pair('Ash Lantern', 'Far Beacon').slice();
    const again = predictor(draws);
    again.pair('Far Beacon', 'Ash Lantern');
    again.vial('nobody’s');
    expect(again.pair('Ash Lantern', 'Far Beacon')).toEqual(once);
    expect(predict.pair('Ash Lantern', 'Far Beacon')).toEqual(once);
  });

  it('keeps the direction of a cross', () => {
    expect(predict.pair('Far Beacon', 'Ash Lantern')).not.toEqual(predict.pair('Ash Lantern', 'Far Beacon'));
  });

  it('takes an unseen pair for incompatible as often as the share of such pairs says', () => {
    const eta = predict.pair('New Plant', 'Other New Plant');
    const shares = Float64Array.from(draws, ({ draw }) => draw.exclusiveShare);
    const share = mean(shares);
    const found = eta.filter((value) => value === Number.NEGATIVE_INFINITY).length / eta.length;
    // One Bernoulli draw each: within 4 standard deviations.
    expect(Math.abs(found - share)).toBeLessThan(4 * Math.sqrt((share * (1 - share)) / eta.length));
  });

  it('gives an unseen vial the spread of vials, and a seen one its own effect', () => {
    const fresh = predict.vial('V unseen');
    const expected = Math.sqrt(
      mean(Float64Array.from(draws, ({ model: own, draw }) => sdOf(own, draw, 'vial') ** 2)),
    );
    // Mean 0 within 4.5 standard errors; the spread of 2,000 draws of a heavy-tailed mixture within a tenth.
    expect(Math.abs(mean(fresh))).toBeLessThan((4.5 * expected) / Math.sqrt(2000));
    expect(Math.abs(sd(fresh) / expected - 1)).toBeLessThan(0.1);
    const code = model.index.levels.get('vial')!.get('1 0')!;
    const at = model.index.factors.get('vial')!;
    expect([...predict.vial('1 0')]).toEqual(draws.map(({ draw }) => draw.effects[at]![code]!));
  });

  it('knows the methods of its models and no others', () => {
    expect([...predict.storage('fresh', 0)!].every((added) => added === 0)).toBe(true);
    expect(predict.storage('frozen', 100)).toHaveLength(2000);
    expect(predict.storage('room', 3)).toHaveLength(2000);
    expect(predict.storage('refrigerated', 3)).toBeNull();
  });

  it('uses each model’s own age scale', () => {
    // On either scale frozen pollen has lost its whole age effect at 365 days: the age term is 1 in both.
    const added = predict.storage('frozen', 365)!;
    draws.forEach(({ model: own, draw }, k) => {
      const at = (name: string) => draw.columns[own.index.columns.get(name)!]!;
      expect(added[k]).toBeCloseTo(at('storage: frozen') + at('age: frozen'), 12);
    });
    // Half of it at half the age in days; log(1 + 182.5) ÷ log(366) of it on the other scale.
    const half = predict.storage('frozen', 182.5)!;
    const slope = (k: number) => draws[k]!.draw.columns[draws[k]!.model.index.columns.get('age: frozen')!]!;
    expect(half[1999]! - added[1999]!).toBeCloseTo(-slope(1999) / 2, 12);
    expect(half[0]! - added[0]!).toBeCloseTo(slope(0) * (Math.log(183.5) / Math.log(366) - 1), 12);
  });

  it('spreads occasions by morning and season, and by vial on top', () => {
    draws.forEach(({ model: own, draw }, k) => {
      const occasion = Math.hypot(sdOf(own, draw, 'morning'), sdOf(own, draw, 'season'));
      expect(predict.occasion[k]).toBe(spreadOf(occasion));
      expect(predict.occasionAndVial[k]).toBeCloseTo(
        spreadOf(Math.hypot(occasion, sdOf(own, draw, 'vial'))),
        14,
      );
    });
  });

  it('leaves each plant in the hands of its grower', () => {
    // Ash Lantern's flowers are all Ina's, Blue Hour's two thirds Odo's, all others Odo's.
    const grown = flowers.map((flower, i) => ({
      ...flower,
      grower:
        flower.seedParent === 'Ash Lantern' || (flower.seedParent === 'Blue Hour' && i % 3 === 0)
          ? 'Ina'
          : 'Odo',
    }));
    const together = fruitModel(grown, { ageScale: 'days', priors: GROWER_PRIORS, seed: 1, draws: 500 });
    const own = together.fit.draws.map((draw) => ({ model: together, draw }));
    const asked = predictor(own);
    const g = together.index.factors.get('grower')!;
    const at = (name: string) => together.index.levels.get('grower')!.get(name)!;
    const shareOfIna = (mother: string) => {
      const rows = grown.filter(({ seedParent }) => seedParent === mother);
      return rows.filter(({ grower }) => grower === 'Ina').length / rows.length;
    };
    for (const pair of together.pairs) {
      const share = shareOfIna(pair.seedParent);
      const eta = asked.pair(pair.seedParent, pair.pollenParent);
      own.forEach(({ draw }, k) => {
        if (draw.exclusive[pair.code]) return;
        const hands = share * draw.effects[g]![at('Ina')]! + (1 - share) * draw.effects[g]![at('Odo')]!;
        expect(eta[k]).toBeCloseTo(pairPredictor(together, pair)(draw) + hands, 10);
      });
    }
    expect([shareOfIna('Ash Lantern'), shareOfIna('Cold Ember')]).toEqual([1, 0]);
    // What varies from one occasion to the next has no grower in it.
    own.forEach(({ draw }, k) => {
      expect(asked.seasonSd[k]).toBe(sdOf(together, draw, 'season'));
    });
  });
});
