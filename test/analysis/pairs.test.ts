import { describe, expect, it } from 'vitest';
import { growerModel } from '../../lib/analysis/grower-model.ts';
import { NAMED_INCOMPATIBLE, pairCounts, pooledPairs } from '../../lib/analysis/pairs.ts';
import { predictor } from '../../lib/analysis/predictor.ts';
import { fakePredictor } from './fake-predictor.ts';
import { flowersOf } from './flowers-of.ts';

const FRESH = { storage: 'fresh', ageDays: 0 };
const OPTIONS = { level: 0.95, because: 'model-not-settled' };

describe('pairCounts', () => {
  it('counts every ordered pair once: A × B is not B × A', () => {
    const flowers = flowersOf([
      { seedParent: 'A', pollenParent: 'B', fruit: 1 },
      { seedParent: 'B', pollenParent: 'A', fruit: 0 },
      { seedParent: 'A', pollenParent: 'B', fruit: 0 },
      { seedParent: '__proto__', pollenParent: 'constructor', fruit: 1 },
    ]);
    expect(pairCounts(flowers)).toEqual([
      { seedParent: 'A', pollenParent: 'B', fruits: 1, flowers: 2 },
      { seedParent: 'B', pollenParent: 'A', fruits: 0, flowers: 1 },
      { seedParent: '__proto__', pollenParent: 'constructor', fruits: 1, flowers: 1 },
    ]);
  });
});

describe('pooledPairs', () => {
  const counts = [{ seedParent: 'A', pollenParent: 'B', fruits: 1, flowers: 4 }];

  it('has the posterior mean, the range and the raw rate, each its own', () => {
    // 11 draws from 0.30 to 0.40: mean 0.35, type 7 quantiles of the middle 80 % are 0.31 and 0.39.
    const draws = Array.from({ length: 11 }, (_, k) => 0.3 + k / 100);
    const predict = fakePredictor({ pair: () => draws, draws: 11 });
    const [pair] = pooledPairs(counts, predict, FRESH, { ...OPTIONS, level: 0.8 });
    expect(pair!.estimate).toBeCloseTo(0.35, 12);
    expect(pair!.lower).toBeCloseTo(0.31, 12);
    expect(pair!.upper).toBeCloseTo(0.39, 12);
    expect(pair).toMatchObject({ fruits: 1, flowers: 4, rawRate: 0.25, incompatible: 0, basis: FRESH });
  });

  it('counts the draws in which the pair never sets fruit, and takes them for 0', () => {
    const predict = fakePredictor({ pair: () => [0, 0.5, 0, 0.5], draws: 4 });
    const [pair] = pooledPairs(counts, predict, FRESH, OPTIONS);
    expect(pair).toMatchObject({ incompatible: 0.5, named: false });
    expect(pair!.estimate).toBeCloseTo(0.25, 12);
  });

  it('names a pair from a probability of 0.8 on, by the unrounded number', () => {
    const named = (barren: number, draws: number) => {
      const pair = () => Array.from({ length: draws }, (_, k) => (k < barren ? 0 : 0.5));
      return pooledPairs(counts, fakePredictor({ pair, draws }), FRESH, OPTIONS)[0]!.named;
    };
    expect(NAMED_INCOMPATIBLE).toBe(0.8);
    expect([named(8, 10), named(799, 1000), named(783, 1000)]).toEqual([true, false, false]);
  });

  it('varies stored pollen by vial too', () => {
    // Around 0.9 any spread lowers the mean; nothing varies for fresh pollen here.
    const predict = fakePredictor({ pair: () => 0.9, occasion: 0, occasionAndVial: 1 });
    const at = (storage: string) =>
      pooledPairs(counts, predict, { storage, ageDays: 0 }, OPTIONS)[0]!.estimate;
    expect(at('fresh')).toBeCloseTo(0.9, 12);
    expect(at('frozen')).toBeLessThan(0.88);
  });

  it('is null with a reason where there is no model, or none of the method', () => {
    for (const predict of [null, fakePredictor({ storage: () => null })]) {
      const [pair] = pooledPairs(counts, predict, FRESH, OPTIONS);
      expect(pair).toMatchObject({
        estimate: null,
        lower: null,
        upper: null,
        incompatible: null,
        rawRate: 0.25,
      });
      expect(pair!.because).toBe('model-not-settled');
    }
  });

  it('pools towards the parents, keeps the direction, and names the incompatible pair', () => {
    // Made up: 12 plants’ worth of good crosses, Moth × Hour never took in 8 flowers though both parents are good.
    const good = ['Hour', 'Moth', 'Ember'].flatMap((seedParent) =>
      ['Hour', 'Moth', 'Ember']
        .filter(
          (pollenParent) =>
            pollenParent !== seedParent && !(seedParent === 'Moth' && pollenParent === 'Hour'),
        )
        .flatMap((pollenParent) =>
          Array.from({ length: 8 }, (_, i) => ({
            seedParent,
            pollenParent,
            fruit: (i === 7 ? 0 : 1) as 0 | 1,
          })),
        ),
    );
    const never = Array.from({ length: 8 }, () => ({
      seedParent: 'Moth',
      pollenParent: 'Hour',
      fruit: 0 as const,
    }));
    const once = [{ seedParent: 'Hour', pollenParent: 'Anchor', fruit: 0 as const }];
    const flowers = flowersOf([...good, ...never, ...once]);
    const model = growerModel(flowers, { ageScale: null, methods: [] });
    if (!('draws' in model)) throw new Error('the model must fit');
    const pairs = pooledPairs(pairCounts(flowers), predictor(model.draws), FRESH, OPTIONS);
    const find = (mother: string, father: string) =>
      pairs.find(({ seedParent, pollenParent }) => seedParent === mother && pollenParent === father)!;
    expect(pairs).toHaveLength(7);
    // 0 of 8 against 7 of 8 elsewhere: an ordinary pair would do that less than once in 1,000, incompatible ones are 7 in 100.
    expect(find('Moth', 'Hour').incompatible).toBeGreaterThan(0.8);
    expect(find('Hour', 'Moth').incompatible).toBe(0);
    expect(find('Hour', 'Moth').estimate).toBeGreaterThan(0.6);
    // One failure is not 0: it leans on the mother's other crosses.
    expect(find('Hour', 'Anchor').rawRate).toBe(0);
    expect(find('Hour', 'Anchor').estimate).toBeGreaterThan(0.2);
    expect(find('Hour', 'Anchor').incompatible).toBeLessThan(0.5);
  });
});
