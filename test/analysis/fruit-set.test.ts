import { describe, expect, it } from 'vitest';
import { fruitSet } from '../../lib/analysis/fruit-set.ts';
import { facts, threeSeasons } from '../season-facts-reference.ts';
import { seasonOf } from '../season-of.ts';

describe('initial and final fruit set', () => {
  it.each(['initial', 'final', 'kept'] as const)(
    'are in the invented grower’s file what R counts: %s',
    (key) => {
      const { fruits, flowers, lower, upper } = facts.fruitSet[key];
      const counted = fruitSet(threeSeasons())[key];
      expect(counted).toMatchObject({ fruits, flowers });
      expect(counted.lower).toBeCloseTo(lower, 9);
      expect(counted.upper).toBeCloseTo(upper, 9);
    },
  );

  // Definitions: fruits at the check, and fruits harvested, ÷ flowers pollinated.
  it('count what dropped as set and as not harvested, and leave out at harvest what still hangs', () => {
    const crosses = [
      { harvestedOn: '2025-08-20' },
      { harvestedOn: null },
      { outcome: 'dropped' as const },
      { outcome: 'none' as const },
      { outcome: 'unknown' as const },
    ];
    const { initial, final, kept, harvestsRecorded } = fruitSet(seasonOf(crosses));
    expect(harvestsRecorded).toBe(true);
    expect([initial.fruits, initial.flowers]).toEqual([3, 4]);
    expect([final.fruits, final.flowers]).toEqual([1, 3]);
    expect([kept.fruits, kept.flowers]).toEqual([1, 2]);
  });

  it('take every fruit that did not drop as harvested where no harvest is recorded', () => {
    const { final, harvestsRecorded } = fruitSet(seasonOf([{}, { outcome: 'dropped' }]));
    expect(harvestsRecorded).toBe(false);
    expect([final.fruits, final.flowers]).toEqual([1, 2]);
  });

  it('do not depend on the endpoint that the season was read for', () => {
    const season = threeSeasons();
    expect(fruitSet({ ...season, endpoint: 'final' })).toEqual(fruitSet(season));
  });

  it('add up over storage methods', () => {
    const { initial, byStorage } = fruitSet(threeSeasons());
    expect(byStorage.reduce((sum, method) => sum + method.initial.flowers, 0)).toBe(initial.flowers);
  });

  it('are unknown without a flower', () => {
    expect(fruitSet(seasonOf([])).initial).toMatchObject({ estimate: null, because: 'no-flowers' });
  });
});
