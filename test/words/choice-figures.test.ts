import { describe, expect, it } from 'vitest';
import { pairName, pairsWords, vialsWords } from '../../lib/words/choice-figures.ts';

describe('pairs', () => {
  it('keep their direction: the seed parent stands first', () => {
    expect(pairName({ seedParent: 'A', pollenParent: 'B' })).toBe('A × B');
    expect(pairName({ seedParent: 'B', pollenParent: 'A' })).toBe('B × A');
  });

  it('claim no safest bet where none can be ranked', () => {
    expect(pairsWords.finding(undefined)).toBe('The flowers can’t tell yet which pair is safest.');
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
