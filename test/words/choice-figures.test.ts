import { describe, expect, it } from 'vitest';
import { pairName, pairsWords, vialsWords } from '../../lib/words/choice-figures.ts';
import { season } from '../charts/fixture.ts';

describe('pairs', () => {
  it('keep their direction: the seed parent stands first', () => {
    expect(pairName({ seedParent: 'A', pollenParent: 'B' })).toBe('A × B');
    expect(pairName({ seedParent: 'B', pollenParent: 'A' })).toBe('B × A');
  });

  it('say how many are ranked, and why the others are not', () => {
    const group = (count: number) => Array.from({ length: count }, () => season.pairs[0]!);
    const groups = { ranked: group(6), selfed: group(1), incompatible: [], few: group(3) };
    expect(pairsWords.finding(groups)).toBe(
      '6 pairs ranked by the cautious end of the range, for fresh pollen; no rank: 1 with own pollen and 3 of few flowers.',
    );
    expect(pairsWords.finding({ ...groups, ranked: [], selfed: [] })).toBe(
      'No pair has flowers enough for a rank; no rank: 3 of few flowers.',
    );
  });

  // Found by a reader: 0.783 stood among the ranked pairs as "about 8 in 10" beside a group of "8+ in 10".
  it('say a chance that falls short of the line so that it cannot be taken for the line', () => {
    const said = (incompatible: number) =>
      pairsWords.cells({ ...season.pairs[0]!, incompatible, named: false }, 0.8).at(-1);
    expect([0.783, 0.7999, 0.8, 0.83, 0.9, 0.3].map(said)).toEqual([
      'likely (about 78 in 100)',
      'likely (under 80 in 100)',
      'likely (about 80 in 100)',
      'likely (about 83 in 100)',
      'likely (about 9 in 10)',
      'unlikely (about 3 in 10)',
    ]);
  });
});

describe('vials', () => {
  it('are counted by verdict in the words of the trade', () => {
    expect(vialsWords.heading('use-first', 3)).toBe('Use first: 3');
    const worth = { value: 0.3, source: 'option', freshRate: null } as const;
    expect(vialsWords.finding([['discard', 2]], worth)).toBe(
      'Discard 2. The line: what is worth a flower, about 3 in 10.',
    );
  });
});
