import { describe, expect, it } from 'vitest';
import { medianAge, onScale } from '../../lib/analysis/age-scale.ts';
import type { AgedFlower } from '../../lib/analysis/within-between.ts';

const flower = (storage: string, ageDays: number) => ({ storage, ageDays }) as AgedFlower;

describe('the age scales', () => {
  it('are 0 for fresh pollen on both', () => {
    expect([onScale(0, 'days'), onScale(0, 'log1p-days')]).toEqual([0, 0]);
  });

  it('keep days as they are, or take the logarithm of one day more', () => {
    expect(onScale(90, 'days')).toBe(90);
    expect(onScale(Math.E - 1, 'log1p-days')).toBeCloseTo(1, 15);
  });
});

describe('the median age of a method', () => {
  it('is the middle of its own ages, or the mean of the two in the middle', () => {
    const flowers = [flower('frozen', 10), flower('frozen', 40), flower('frozen', 20), flower('room', 1)];
    expect(medianAge(flowers, 'frozen')).toBe(20);
    expect(medianAge([...flowers, flower('frozen', 30)], 'frozen')).toBe(25);
  });

  it('is null for a method without a known age', () => {
    expect(medianAge([flower('frozen', 10)], 'room')).toBeNull();
  });
});
