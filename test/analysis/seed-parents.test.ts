import { describe, expect, it } from 'vitest';
import type { PooledPair } from '../../lib/analysis/pairs.ts';
import { incompatiblePairs, seedParents, seedParentsFor } from '../../lib/analysis/seed-parents.ts';
import { flowersOf } from './flowers-of.ts';

const used = flowersOf([
  { seedParent: 'B' },
  { seedParent: 'A' },
  { seedParent: 'B' },
  { seedParent: '__proto__' },
]);
const expected = (seedParent: string, flowers: number) => ({
  file: 'flowers.csv',
  line: 2,
  row: 2,
  seedParent,
  flowers,
  opensFrom: null,
  opensTo: null,
});

describe('seedParents', () => {
  it('weighs the seed parents used so far by their flowers where there is no flowers file', () => {
    expect(seedParents(used, [])).toEqual([
      { seedParent: 'A', weight: 0.25 },
      { seedParent: 'B', weight: 0.5 },
      { seedParent: '__proto__', weight: 0.25 },
    ]);
  });

  it('weighs those of the flowers file by their expected flowers, and no others', () => {
    expect(
      seedParents(used, [expected('C', 3), expected('A', 4), expected('C', 1), expected('D', 0)]),
    ).toEqual([
      { seedParent: 'A', weight: 0.5 },
      { seedParent: 'C', weight: 0.5 },
    ]);
  });

  it('has nothing to weigh without flowers', () => {
    expect(seedParents([], [])).toEqual([]);
  });
});

describe('incompatiblePairs', () => {
  const pair = (seedParent: string, pollenParent: string, named: boolean): PooledPair => ({
    seedParent,
    pollenParent,
    incompatible: named ? 0.9 : 0.1,
    named,
    fruits: 0,
    flowers: 5,
    rawRate: 0,
    basis: { storage: 'fresh', ageDays: 0 },
    estimate: 0.1,
    lower: 0,
    upper: 0.3,
  });

  it('asks for the pairs that are named, each in its own direction', () => {
    const named = incompatiblePairs([
      pair('A', 'B', true),
      pair('A', 'C', false),
      pair('A', '__proto__', false),
      pair('constructor', 'B', true),
    ]);
    expect(named('A', 'B')).toBe(true);
    expect(named('B', 'A')).toBe(false);
    expect(named('A', 'C')).toBe(false);
    expect(named('A', '__proto__')).toBe(false);
    expect(named('constructor', 'B')).toBe(true);
    expect(named('toString', 'B')).toBe(false);
  });
});

describe('seedParentsFor', () => {
  const all = seedParents(used, [expected('A', 1), expected('B', 2), expected('C', 5)]);
  const none = () => false;

  it('leaves the plant itself out, and the weights of the others add up to 1', () => {
    expect(seedParentsFor('C', all, none)).toEqual([
      { seedParent: 'A', weight: 1 / 3 },
      { seedParent: 'B', weight: 2 / 3 },
    ]);
  });

  it('leaves incompatible seed parents out', () => {
    const over = seedParentsFor('Z', all, (mother) => mother === 'B');
    expect(over.map(({ seedParent }) => seedParent)).toEqual(['A', 'C']);
    expect(over[0]!.weight).toBeCloseTo(1 / 6, 14);
    expect(over.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 14);
  });

  it('asks about the cross in its direction', () => {
    const asked: string[] = [];
    seedParentsFor('Z', all, (mother, father) => asked.push(`${mother} × ${father}`) < 0);
    expect(asked).toEqual(['A × Z', 'B × Z', 'C × Z']);
  });

  it('may leave nobody', () => {
    expect(seedParentsFor('Z', all, () => true)).toEqual([]);
  });
});
