import { describe, expect, it } from 'vitest';
import { across, atShare, BEYOND, BOTTOM, height, TOP, WIDTH } from '../../lib/charts/age-axis.ts';

describe('the sheet of the age chart', () => {
  it('runs rates from the bottom to the top', () => {
    expect([height(0), height(1)]).toEqual([BOTTOM, TOP]);
  });

  it('leaves a strip past the oldest age, and none of it is used', () => {
    expect(across(100 * BEYOND, 100)).toBeCloseTo(WIDTH, 10);
    expect(across(100, 100)).toBeLessThan(WIDTH);
    expect(across(0, 100)).toBe(0);
  });

  it('runs evenly up to 60 days, as the square root past that', () => {
    expect(across(15, 60) / across(60, 60)).toBeCloseTo(1 / 4, 10);
    expect(across(100, 400) / across(400, 400)).toBeCloseTo(1 / 2, 10);
  });

  it('finds the age at a share of the way', () => {
    expect(across(atShare(0.3, 400 * BEYOND), 400)).toBeCloseTo(0.3 * WIDTH, 10);
    expect(across(atShare(0.3, 50 * BEYOND), 50)).toBeCloseTo(0.3 * WIDTH, 10);
  });
});
