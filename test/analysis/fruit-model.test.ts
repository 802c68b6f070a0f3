import { describe, expect, it } from 'vitest';
import { pairCoder } from '../../lib/analysis/flowers.ts';
import type { FruitModel, FruitModelOptions } from '../../lib/analysis/fruit-model.ts';
import { fruitModel } from '../../lib/analysis/fruit-model.ts';
import { GROWER_PRIORS } from '../../lib/analysis/priors.ts';
import type { AgedFlower } from '../../lib/analysis/within-between.ts';
import { flowersOf, smallSeason } from './flowers-of.ts';

const OPTIONS: FruitModelOptions = { ageScale: 'log1p-days', priors: GROWER_PRIORS, seed: 1, draws: 100 };

/** Pair codes as they would be had the file stood in this order. */
function recoded(flowers: readonly AgedFlower[]): AgedFlower[] {
  const pairOf = pairCoder();
  return flowers.map((flower) => ({ ...flower, pair: pairOf(flower.seedParent, flower.pollenParent) }));
}

/** What is told of pairs, without the codes that a file's order gives them. */
function pairsOf({ pairs, fit }: FruitModel) {
  return pairs.map(({ code, between, ...pair }) => ({
    ...pair,
    between: [...between],
    exclusive: fit.exclusive[code],
    effects: fit.draws.map(({ effects }) => effects[2]![code]),
  }));
}

describe('fruitModel', () => {
  const flowers = smallSeason();
  const model = fruitModel(flowers, OPTIONS);

  it('gives the same numbers to the last digit in whatever order the rows stand', () => {
    for (const step of [7, 13, 39]) {
      const turned = recoded(flowers.map((_, i) => flowers[(i * step + 3) % flowers.length]!));
      const other = fruitModel(turned, OPTIONS);
      expect(other.fit).toEqual(model.fit);
      expect(pairsOf(other)).toEqual(pairsOf(model));
    }
  });

  it('gives the same numbers to the last digit whatever the plants are called', () => {
    for (const names of [
      ['Q 1', 'Q 2', 'Q 3', 'R'],
      ['D', 'C', 'B', 'A'],
    ]) {
      expect(fruitModel(smallSeason(names), OPTIONS).fit).toEqual(model.fit);
    }
  });

  it('takes plants of any name', () => {
    const names = ['__proto__', 'constructor', 'toString', 'valueOf'];
    const other = fruitModel(smallSeason(names), OPTIONS);
    expect(other.fit).toEqual(model.fit);
    expect(other.pairs.map(({ seedParent }) => seedParent)).toContain('__proto__');
    expect([...other.index.levels.get('seedParent')!.keys()].sort()).toEqual(names);
  });

  it('counts every pair’s flowers and fruits', () => {
    expect(model.pairs.reduce((sum, pair) => sum + pair.flowers, 0)).toBe(flowers.length);
    for (const pair of model.pairs) {
      const own = flowers.filter(
        ({ seedParent, pollenParent }) =>
          seedParent === pair.seedParent && pollenParent === pair.pollenParent,
      );
      expect(pair.flowers).toBe(own.length);
      expect(pair.fruits).toBe(own.filter(({ fruit }) => fruit === 1).length);
    }
  });

  it('counts each flower of a joined row in the share of its pair, and centres it over flowers', () => {
    // Pair 1: three fresh and one frozen flower, share 1/4; pair 2: one fresh, share 0; mean over 5 flowers 1/5.
    const { pairs } = fruitModel(
      flowersOf([
        {},
        {},
        {},
        { storage: 'frozen', ageDays: 365, vial: 'V1' },
        { seedParent: 'Salt Moon', pollenParent: 'Lantern Creek' },
      ]),
      OPTIONS,
    );
    const of = (mother: string) => pairs.find(({ seedParent }) => seedParent === mother)!.between;
    expect(of('Lantern Creek').get('share: frozen')).toBeCloseTo(1 / 4 - 1 / 5, 14);
    expect(of('Salt Moon').get('share: frozen')).toBeCloseTo(-1 / 5, 14);
    // The age term of 365 days of frozen pollen is 1.
    expect(of('Lantern Creek').get('mean age: frozen')).toBeCloseTo(1 / 4 - 1 / 5, 14);
  });

  it('has vials for stored pollen only, and growers where there are several', () => {
    const two = flowersOf([
      { vial: 'V0', grower: 'Ilse' },
      { storage: 'frozen', ageDays: 3, vial: 'V1', grower: 'Omar' },
    ]);
    const { index } = fruitModel(two, OPTIONS);
    expect([...index.levels.get('vial')!.keys()]).toEqual(['V1']);
    expect([...index.levels.get('grower')!.keys()].sort()).toEqual(['Ilse', 'Omar']);
    expect(fruitModel(two.slice(1), OPTIONS).index.factors.has('grower')).toBe(false);
  });

  it('keeps a place for a method that was never tried', () => {
    const { methods, index, fit } = fruitModel(flowers, { ...OPTIONS, methods: ['room', 'fresh', 'frozen'] });
    expect(methods).toEqual(['frozen', 'room']);
    const at = index.columns.get('age: room')!;
    expect(fit.draws.every(({ columns }) => columns[at]! < 0)).toBe(true);
  });

  it('suspects the pair that never took, and no pair that did', () => {
    const pairs = pairsOf(model);
    const never = pairs.filter(({ fruits }) => fruits === 0);
    expect(never.length).toBeGreaterThan(0);
    for (const { exclusive } of never) expect(exclusive).toBeGreaterThan(0.05);
    for (const { exclusive, fruits } of pairs) if (fruits > 0) expect(exclusive).toBe(0);
  });
});
