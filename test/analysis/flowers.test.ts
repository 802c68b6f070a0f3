import { describe, expect, it } from 'vitest';
import { byCodePoint, pairCoder, storageOrder, usedFlowers } from '../../lib/analysis/flowers.ts';
import { seasonOf } from '../season-of.ts';

// The rules of counting are the contract's, sections 1 and 4; no value here comes from a model.
describe('usedFlowers', () => {
  const outcomes = seasonOf([
    { outcome: 'fruit', harvestedOn: '2025-08-01' },
    { outcome: 'fruit' },
    { outcome: 'dropped' },
    { outcome: 'none' },
    { outcome: 'unknown' },
    { outcome: 'pending' },
  ]);

  it('counts a dropped fruit as set at the check, and neither a lost tag nor a pending flower', () => {
    expect(usedFlowers(outcomes).map(({ fruit }) => fruit)).toEqual([1, 1, 1, 0]);
  });

  it('leaves a fruit without harvest date pending at the harvest, where the season records harvests', () => {
    expect(usedFlowers({ ...outcomes, endpoint: 'final' }).map(({ fruit }) => fruit)).toEqual([1, 0, 0]);
  });

  it('counts every fruit at the harvest where no harvest date is kept', () => {
    const season = seasonOf([{ outcome: 'fruit' }, { outcome: 'dropped' }], { endpoint: 'final' });
    expect(usedFlowers(season).map(({ fruit }) => fruit)).toEqual([1, 0]);
  });

  it('leaves controls out', () => {
    const season = seasonOf([
      { control: 'unpollinated', pollenParent: null, storage: null, ageDays: null, outcome: 'none' },
      { control: 'selfed', pollenParent: 'Lantern Creek', outcome: 'none' },
      {},
    ]);
    expect(usedFlowers(season)).toHaveLength(1);
  });

  it('keeps the direction of a pair, and names such as __proto__ apart', () => {
    const season = seasonOf([
      { seedParent: 'A', pollenParent: 'B' },
      { seedParent: 'B', pollenParent: 'A' },
      { seedParent: '__proto__', pollenParent: 'A' },
      { seedParent: 'A', pollenParent: 'B' },
    ]);
    expect(usedFlowers(season).map(({ pair }) => pair)).toEqual([0, 1, 2, 0]);
  });
});

describe('pairCoder', () => {
  it('does not mix up names that look alike when joined', () => {
    const code = pairCoder();
    expect([code('A × B', 'C'), code('A', 'B × C'), code('A × B', 'C')]).toEqual([0, 1, 0]);
  });
});

describe('the order of tables', () => {
  it('puts fresh first, then the method of most flowers, ties by name', () => {
    const flowers = ['room', 'frozen', 'chilled', 'frozen', 'fresh'].map((storage) => ({ storage }));
    expect(storageOrder(flowers)).toEqual(['fresh', 'frozen', 'chilled', 'room']);
  });

  // Unicode: U+FF5E stands before U+1F335, though its UTF-16 unit FF5E stands after D83C.
  it('compares names by code points', () => {
    expect(['b', '🌵', 'B', '～', 'ab', 'a'].sort(byCodePoint)).toEqual(['B', 'a', 'ab', 'b', '～', '🌵']);
  });
});
