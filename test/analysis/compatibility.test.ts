import { describe, expect, it } from 'vitest';
import { compatibility } from '../../lib/analysis/compatibility.ts';
import { usedFlowers } from '../../lib/analysis/flowers.ts';
import { type PooledPair, pairCounts } from '../../lib/analysis/pairs.ts';
import type { Cross, Season } from '../../lib/season/season.ts';
import { flowersOf, seasonOf } from '../season-of.ts';

/** Pairs as the model would give them, with a probability named for some of them. */
function pairsOf(season: Season, probability: ReadonlyMap<string, number>): PooledPair[] {
  return pairCounts(usedFlowers(season)).map((count) => ({
    ...count,
    ...{ estimate: 0.5, lower: 0.2, upper: 0.8, rawRate: null, basis: { storage: 'fresh', ageDays: 0 } },
    incompatible: probability.get(`${count.seedParent} × ${count.pollenParent}`) ?? 0.01,
    named: (probability.get(`${count.seedParent} × ${count.pollenParent}`) ?? 0.01) >= 0.8,
  }));
}

function compatibilityOf(
  crosses: readonly Partial<Cross>[],
  probability: Readonly<Record<string, number>> = {},
) {
  const season = seasonOf(crosses);
  return compatibility(season, usedFlowers(season), pairsOf(season, new Map(Object.entries(probability))));
}

const cross = (seedParent: string, pollenParent: string, more: Partial<Cross> = {}): Partial<Cross> => ({
  seedParent,
  pollenParent,
  ...more,
});
const selfed = (plant: string): Partial<Cross> => cross(plant, plant, { control: 'selfed' });
const frozen = { storage: 'frozen', ageDays: 40 };

describe('incompatible pairs', () => {
  it('stand with counts of the pair, of its fresh pollen, of that pollen and of that mother elsewhere', () => {
    const { pairs } = compatibilityOf(
      [
        ...flowersOf(0, 4, cross('A', 'B')),
        ...flowersOf(0, 3, cross('A', 'B', frozen)),
        ...flowersOf(5, 6, cross('C', 'B')),
        ...flowersOf(2, 8, cross('A', 'C')),
      ],
      { 'A × B': 0.93 },
    );
    expect(pairs).toHaveLength(1);
    expect(pairs[0]).toMatchObject({
      ...{ seedParent: 'A', pollenParent: 'B', kind: 'cross', incompatible: 0.93, named: true },
      all: { fruits: 0, flowers: 7 },
      fresh: { fruits: 0, flowers: 4 },
      pollenElsewhere: { fruits: 5, flowers: 6 },
      seedParentElsewhere: { fruits: 2, flowers: 8 },
      evidence: 'pollen-took-elsewhere',
    });
  });

  it('are kept apart from bad pollen: such as took nowhere, and such as was tried nowhere else', () => {
    const failed = [...flowersOf(0, 4, cross('A', 'B')), ...flowersOf(0, 4, cross('C', 'B'))];
    const evidence = (crosses: readonly Partial<Cross>[]) =>
      compatibilityOf(crosses, { 'A × B': 0.85 }).pairs[0]!.evidence;
    expect(evidence(failed)).toBe('pollen-failed-elsewhere');
    expect(evidence(flowersOf(0, 4, cross('A', 'B')))).toBe('pollen-not-tried-elsewhere');
  });

  it('are named from 8 in 10 on, suspected from 5 in 10 on, surest first', () => {
    const crosses = [cross('A', 'B'), cross('A', 'C'), cross('B', 'B'), cross('A', 'D')];
    const { pairs, named } = compatibilityOf(crosses, {
      'A × B': 0.5,
      'A × C': 0.79,
      'B × B': 0.8,
      'A × D': 0.49,
    });
    expect(named).toBe(0.8);
    expect(pairs.map((pair) => [pair.pollenParent, pair.kind, pair.named])).toEqual([
      ['B', 'self', true],
      ['C', 'cross', false],
      ['B', 'cross', false],
    ]);
  });

  it('are none where no model could be fitted', () => {
    const season = seasonOf([cross('A', 'B')]);
    const pairs = pairsOf(season, new Map()).map((pair) => ({ ...pair, incompatible: null }));
    expect(compatibility(season, usedFlowers(season), pairs).pairs).toEqual([]);
  });
});

describe('the indexes of self-incompatibility', () => {
  // Exact arithmetic: 1 of 10 selfed, 5 of 10 crossed; Katz: 0.9/1 + 0.5/5 = 1, so the ends are 0.2 exp(∓1.959964).
  it('are both there, each under its formula, with Katz’s range', () => {
    const { selfIncompatibility } = compatibilityOf([
      ...flowersOf(1, 10, selfed('A')),
      ...flowersOf(5, 10, cross('A', 'B')),
    ]);
    const [index] = selfIncompatibility;
    expect(index!.selfOverCross.estimate).toBeCloseTo(0.2, 12);
    expect(index!.selfOverCross.lower).toBeCloseTo(0.2 * Math.exp(-1.959963984540054), 12);
    expect(index!.selfOverCross.upper).toBeCloseTo(0.2 * Math.exp(1.959963984540054), 12);
    expect(index!.oneMinusSelfOverCross.estimate).toBeCloseTo(0.8, 12);
    expect(index!.oneMinusSelfOverCross.lower).toBeCloseTo(1 - index!.selfOverCross.upper!, 12);
    expect(index!.oneMinusSelfOverCross.upper).toBeCloseTo(1 - index!.selfOverCross.lower!, 12);
  });

  it('compare fresh pollen with fresh pollen, selfed controls and crosses of a plant with itself together', () => {
    const { selfIncompatibility } = compatibilityOf([
      selfed('A'),
      { ...selfed('A'), ...frozen },
      { ...cross('A', 'A'), outcome: 'none' },
      cross('A', 'B'),
      { ...cross('A', 'B', frozen), outcome: 'none' },
    ]);
    expect(selfIncompatibility[0]).toMatchObject({
      plant: 'A',
      selfed: { fruits: 1, flowers: 2 },
      crossed: { fruits: 1, flowers: 1 },
    });
  });

  it('are worked out over all plants that have both kinds, and only those', () => {
    const { selfIncompatibility } = compatibilityOf([
      ...flowersOf(0, 3, selfed('A')),
      ...flowersOf(2, 4, cross('A', 'B')),
      ...flowersOf(2, 2, selfed('Z')),
    ]);
    expect(selfIncompatibility.map(({ plant }) => plant)).toEqual(['A', 'Z', null]);
    expect(selfIncompatibility[2]).toMatchObject({
      selfed: { flowers: 3 },
      crossed: { fruits: 2, flowers: 4 },
    });
    expect(selfIncompatibility[1]!.selfOverCross).toMatchObject({
      estimate: null,
      because: 'no-fresh-cross',
    });
  });

  it('have no range where no selfed flower took, and no value where no cross did', () => {
    const selfedNone = compatibilityOf([
      ...flowersOf(0, 3, selfed('A')),
      ...flowersOf(2, 4, cross('A', 'B')),
    ]);
    expect(selfedNone.selfIncompatibility[0]!.oneMinusSelfOverCross).toEqual({
      estimate: 1,
      lower: null,
      upper: null,
      because: 'selfed-never-took',
    });
    const crossedNone = compatibilityOf([
      ...flowersOf(1, 3, selfed('A')),
      ...flowersOf(0, 4, cross('A', 'B')),
    ]);
    expect(crossedNone.selfIncompatibility[0]!.selfOverCross).toMatchObject({
      estimate: null,
      because: 'crosses-never-took',
    });
  });

  it('are none without a selfed flower', () => {
    expect(compatibilityOf([cross('A', 'B')]).selfIncompatibility).toEqual([]);
  });
});
