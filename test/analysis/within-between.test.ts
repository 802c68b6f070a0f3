import { describe, expect, it } from 'vitest';
import { agedFlowers, pairMeans, withinBetween } from '../../lib/analysis/within-between.ts';
import { flowersOf } from './flowers-of.ts';

// Two pairs: A × B with one fresh and three frozen flowers, B × A with two fresh ones.
const flowers = flowersOf([
  { seedParent: 'A', pollenParent: 'B' },
  { seedParent: 'A', pollenParent: 'B', storage: 'frozen', ageDays: 10 },
  { seedParent: 'B', pollenParent: 'A' },
  { seedParent: 'A', pollenParent: 'B', storage: 'frozen', ageDays: 30 },
  { seedParent: 'B', pollenParent: 'A' },
  { seedParent: 'A', pollenParent: 'B', storage: 'frozen', ageDays: 20 },
]);

describe('agedFlowers', () => {
  it('leaves out flowers whose pollen age is not known', () => {
    expect(agedFlowers([flowers[0]!, { ...flowers[1]!, ageDays: null }])).toEqual([flowers[0]]);
  });
});

describe('pairMeans', () => {
  it('gives each flower the mean of its own ordered pair, by hand', () => {
    expect([...pairMeans(flowers, Float64Array.of(1, 2, 10, 3, 20, 6))]).toEqual([3, 3, 15, 3, 15, 3]);
  });
});

describe('withinBetween', () => {
  const columns = withinBetween(flowers, ['frozen', 'room'], (ageDays) => ageDays / 10);
  const values = (name: string) => [...columns.find((column) => column.name === name)!.values];

  it('has four columns a method, named for it', () => {
    expect(columns.map(({ name }) => name)).toEqual([
      'storage: frozen',
      'age: frozen',
      'share: frozen',
      'mean age: frozen',
      'storage: room',
      'age: room',
      'share: room',
      'mean age: room',
    ]);
    expect(columns.slice(0, 4).map(({ role }) => role)).toEqual(['storage', 'age', 'share', 'meanAge']);
  });

  it('tells pollen from pair, by hand', () => {
    expect(values('storage: frozen')).toEqual([0, 1, 0, 1, 0, 1]);
    expect(values('age: frozen')).toEqual([0, 1, 0, 3, 0, 2]);
    expect(values('share: frozen')).toEqual([0.75, 0.75, 0, 0.75, 0, 0.75]);
    expect(values('mean age: frozen')).toEqual([1.5, 1.5, 0, 1.5, 0, 1.5]);
  });

  it('is 0 throughout for a method that was never tried', () => {
    expect(columns.slice(4).every((column) => column.values.every((value) => value === 0))).toBe(true);
  });
});
