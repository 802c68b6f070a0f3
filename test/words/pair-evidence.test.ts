import { describe, expect, it } from 'vitest';
import type { SelfCompatibility, SuspectedPair } from '../../lib/analysis/compatibility.ts';
import type { Reciprocal } from '../../lib/analysis/reciprocal.ts';
import { unknown } from '../../lib/proportions/interval.ts';
import {
  incompatibleSaid,
  reciprocalSaid,
  selfIndexesSaid,
  selfingSaid,
} from '../../lib/words/pair-evidence.ts';
import { proportion } from '../charts/fixture.ts';

describe('what is said of incompatible pairs', () => {
  const pair: SuspectedPair = {
    ...{ seedParent: 'A', pollenParent: 'B', kind: 'cross', incompatible: 0.93, named: true },
    ...{ all: proportion(0, 7, 0, 0.4), fresh: proportion(0, 6, 0, 0.4) },
    ...{ pollenElsewhere: proportion(36, 43, 0.7, 0.9), seedParentElsewhere: proportion(5, 9, 0.3, 0.8) },
    evidence: 'pollen-took-elsewhere',
  };

  it('is the evidence: counts, fresh pollen, probability with its number, and what the pollen did elsewhere', () => {
    expect(incompatibleSaid({ named: 0.8, pairs: [pair] })).toBe(
      'A × B counts as incompatible, likely (about 9 in 10): 0 of 7 took, 0 of 6 with fresh pollen; the same pollen took 36 of 43 ' +
        'on other plants, so it is not bad pollen.',
    );
  });

  it('says once that all flowers had fresh pollen', () => {
    expect(incompatibleSaid({ named: 0.8, pairs: [{ ...pair, fresh: pair.all }] })).toContain(
      ': 0 of 7 took, all with fresh pollen; the same pollen',
    );
  });

  it('does not clear pollen that took nowhere, or was tried nowhere else', () => {
    const failed = {
      ...pair,
      evidence: 'pollen-failed-elsewhere' as const,
      pollenElsewhere: proportion(0, 4, 0, 0.5),
    };
    expect(incompatibleSaid({ named: 0.8, pairs: [failed] })).toContain(
      'took 0 of 4 on other plants, so it could be bad pollen',
    );
    const alone = { ...pair, kind: 'self' as const, evidence: 'pollen-not-tried-elsewhere' as const };
    expect(incompatibleSaid({ named: 0.8, pairs: [alone] })).toContain('its own pollen');
    expect(incompatibleSaid({ named: 0.8, pairs: [alone] })).toContain(
      'tried on no other plant, so it could be bad pollen',
    );
  });

  it('names none that is only suspected', () => {
    expect(incompatibleSaid({ named: 0.8, pairs: [{ ...pair, named: false }] })).toBe('');
  });
});

describe('what is said of selfed flowers', () => {
  const index: SelfCompatibility = {
    ...{ plant: null, selfed: proportion(1, 10, 0.018, 0.404), crossed: proportion(5, 10, 0.237, 0.763) },
    selfOverCross: { estimate: 0.2, lower: 0.028, upper: 1.42 },
    oneMinusSelfOverCross: { estimate: 0.8, lower: -0.42, upper: 0.972 },
  };

  it('is the counts, and apart from them both indexes with their formulas', () => {
    const both = { selfIncompatibility: [{ ...index, plant: 'A' }, index] };
    expect(selfingSaid(both)).toBe(
      'On plants both selfed and crossed with fresh pollen, their own took 1 of 10 (about 1 in 10; could be 2 to 40 in 100), ' +
        'that of others 5 of 10 (about 5 in 10; could be 2 to 8 in 10).',
    );
    // Found by a reader: "0 of 6; could still be as high as 4 in 10 took".
    const none = { ...index, selfed: proportion(0, 6, 0, 0.39) };
    expect(selfingSaid({ selfIncompatibility: [none] })).toContain(
      'their own took 0 of 6 (could still be as high as 4 in 10), that of others',
    );
    expect(selfIndexesSaid(both)).toBe(
      'Two indexes of self-incompatibility are in use: 1 − self ÷ cross = 0.80 (could be −0.42 to 0.97); self ÷ cross = 0.20 (could be 0.03 to 1.42).',
    );
  });

  it('has no index where nothing can be divided, and is nothing without a plant that has both', () => {
    const none = unknown('crosses-never-took');
    const undivided = [{ ...index, selfOverCross: none, oneMinusSelfOverCross: none }];
    expect(selfIndexesSaid({ selfIncompatibility: undivided })).toBe('');
    expect(selfingSaid({ selfIncompatibility: undivided })).toContain('1 of 10');
    for (const said of [selfingSaid, selfIndexesSaid])
      expect(said({ selfIncompatibility: [{ ...index, plant: 'A' }] })).toBe('');
  });
});

describe('what is said of crosses both ways', () => {
  const way = (seedParent: string, pollenParent: string, fruits: number, flowers: number) => ({
    seedParent,
    pollenParent,
    ...proportion(fruits, flowers, 0.1, 0.9),
  });
  const both: Reciprocal = {
    ...{ first: way('A', 'B', 6, 7), second: way('B', 'A', 9, 19) },
    difference: { estimate: 0.38, lower: 0, upper: 0.6 },
    sameStorage: unknown('no-storage-in-both-directions'),
    fisher: { p: 0.1, midP: 0.08 },
  };

  it('keeps the direction and says the difference of the second way, without a p-value', () => {
    expect(reciprocalSaid([both])).toBe(
      '1 pair of plants was crossed both ways. Most often A × B, 6 of 7, against B × A, 9 of 19: the second gives about 4 ' +
        'fewer in every 10 (could be no different to 6 fewer).',
    );
  });

  it('compares none that has fewer than three flowers one way', () => {
    const few = { ...both, first: way('A', 'B', 1, 2) };
    expect(reciprocalSaid([few, few])).toBe(
      '2 pairs of plants were crossed both ways, none often enough to compare.',
    );
    expect(reciprocalSaid([])).toBe('');
  });
});
