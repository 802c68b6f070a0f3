import { describe, expect, it } from 'vitest';
import { usedFlowers } from '../../lib/analysis/flowers.ts';
import { reciprocalCrosses } from '../../lib/analysis/reciprocal.ts';
import type { Cross } from '../../lib/season/season.ts';
import { flowersOf, seasonOf } from '../season-of.ts';

const cross = (seedParent: string, pollenParent: string, more: Partial<Cross> = {}) => ({
  seedParent,
  pollenParent,
  ...more,
});

const crossesOf = (crosses: readonly Partial<Cross>[]) => reciprocalCrosses(usedFlowers(seasonOf(crosses)));

describe('reciprocal crosses', () => {
  // Fisher's tea: 3 of 4 against 1 of 4, two-sided p 34/70 (Agresti 2013, 3.5.2); mid-p takes off half of 16/70.
  it('are compared with counts, difference and Fisher’s test', () => {
    const [found, ...others] = crossesOf([
      ...flowersOf(1, 4, cross('B', 'A')),
      ...flowersOf(3, 4, cross('A', 'B')),
    ]);
    expect(others).toEqual([]);
    expect(found!.first).toMatchObject({ seedParent: 'A', pollenParent: 'B', fruits: 3, flowers: 4 });
    expect(found!.second).toMatchObject({ seedParent: 'B', pollenParent: 'A', fruits: 1, flowers: 4 });
    expect(found!.difference.estimate).toBeCloseTo(0.5, 12);
    expect(found!.fisher.p).toBeCloseTo(34 / 70, 12);
    expect(found!.fisher.midP).toBeCloseTo(26 / 70, 12);
  });

  // Newcombe (1998) Stat Med 17:873, Table II, method 10: 56/70 − 48/80 is 0.2000, 0.0524 to 0.3339.
  it('have Newcombe’s range', () => {
    const [found] = crossesOf([...flowersOf(56, 70, cross('A', 'B')), ...flowersOf(48, 80, cross('B', 'A'))]);
    expect(found!.difference.estimate).toBeCloseTo(0.2, 12);
    expect(found!.difference.lower).toBeCloseTo(0.0524, 4);
    expect(found!.difference.upper).toBeCloseTo(0.3339, 4);
  });

  it('tell the direction from the pollen: the same rate within each kind is no difference', () => {
    const frozen = { storage: 'frozen', ageDays: 60 };
    // Fresh takes 8 of 10 and frozen 2 of 10, whichever way; one way was mostly fresh, the other mostly frozen.
    const [found] = crossesOf([
      ...flowersOf(16, 20, cross('A', 'B')),
      ...flowersOf(2, 10, cross('A', 'B', frozen)),
      ...flowersOf(8, 10, cross('B', 'A')),
      ...flowersOf(4, 20, cross('B', 'A', frozen)),
    ]);
    expect(found!.difference.estimate).toBeCloseTo(0.2, 12);
    expect(found!.sameStorage.estimate).toBeCloseTo(0, 12);
  });

  it('say that the two ways had no pollen in common', () => {
    const [found] = crossesOf([cross('A', 'B'), cross('B', 'A', { storage: 'frozen', ageDays: 9 })]);
    expect(found!.sameStorage).toMatchObject({ estimate: null, because: 'no-storage-in-both-directions' });
  });

  it('are no selfing, and none where each pair was crossed one way', () => {
    expect(crossesOf([cross('A', 'A'), cross('A', 'B'), cross('B', 'C')])).toEqual([]);
  });

  it('stand with most flowers first, whatever the plants are called', () => {
    const found = crossesOf([
      ...flowersOf(1, 1, cross('A', 'B')),
      ...flowersOf(1, 1, cross('B', 'A')),
      ...flowersOf(1, 2, cross('constructor', '__proto__')),
      ...flowersOf(1, 1, cross('__proto__', 'constructor')),
    ]);
    expect(found.map(({ first }) => first.seedParent)).toEqual(['__proto__', 'A']);
  });
});
