import { describe, expect, it } from 'vitest';
import type { Mix } from '../../lib/decisions/mix.ts';
import { mixOf, namedMixes } from '../../lib/decisions/mix-names.ts';

function mix(expectedFruits: number, expectedVarieties: number): Mix {
  const fruits = { percentile10: 0, percentile90: 9 };
  return {
    name: null,
    expectedFruits,
    expectedVarieties,
    expectedSeeds: null,
    fruits,
    allocation: [],
    within: 0,
  };
}

const names = (mixes: readonly Mix[]) => namedMixes(mixes).map(({ name }) => name);

describe('namedMixes', () => {
  // By hand: the line from (10, 0) to (0, 10) has fruits + varieties 10; the mixes between lie 3, 6 and 4 above it.
  it('names both ends, and the mix that stands out most between them', () => {
    expect(names([mix(10, 0), mix(9, 4), mix(8, 8), mix(5, 9), mix(0, 10)])).toEqual([
      'most-fruit',
      null,
      'balanced',
      null,
      'most-varieties',
    ]);
  });

  it('has no mix between one or two', () => {
    expect(names([])).toEqual([]);
    expect(names([mix(3, 2)])).toEqual(['most-fruit']);
    expect(names([mix(3, 2), mix(2, 3)])).toEqual(['most-fruit', 'most-varieties']);
  });
});

describe('mixOf', () => {
  it('finds the mix of a name, and the nearest where there are too few', () => {
    const [first, second, third] = namedMixes([mix(10, 0), mix(8, 8), mix(0, 10)]);
    const all = [first!, second!, third!];
    expect(mixOf(all, 'balanced')).toBe(second);
    expect(mixOf([first!, third!], 'balanced')).toBe(first);
    expect(mixOf([first!], 'most-varieties')).toBe(first);
    expect(mixOf([], 'most-fruit')).toBeUndefined();
  });
});
