import { describe, expect, it } from 'vitest';
import { designOf } from '../../lib/regression/design.ts';
import { orthogonalBasis } from '../../lib/regression/orthogonal-basis.ts';
import { separatingWithin, strataOf, withinStrata } from '../../lib/regression/strata.ts';

const design = designOf({
  successes: [1, 0, 1, 1, 0, 2],
  trials: [1, 1, 1, 1, 1, 3],
  columns: { x: [4, 2, 1, 1, 7, 3], shared: [0.1, 0.1, 5, 5, 0.3, 0.3] },
  groups: { pair: ['a', 'a', 'b', 'b', 'c', 'c'] },
  intercept: false,
});
const informative = strataOf(design, design.groups[0]!);

describe('strataOf', () => {
  it('keeps the strata with both outcomes', () => {
    // Pair b has fruits only.
    expect(informative.rows).toEqual([0, 1, 4, 5]);
    expect(
      informative.strata.map(({ totalSuccesses, totalTrials }) => [totalSuccesses, totalTrials]),
    ).toEqual([
      [1, 2],
      [2, 4],
    ]);
  });
});

describe('withinStrata', () => {
  it('takes away the mean of each stratum, and leaves an exact zero where nothing varies', () => {
    const [x, shared] = withinStrata(design, informative.strata, informative.rows);
    // Means by hand: (4 + 2) / 2, and (7 + 3 · 3) / 4.
    expect([...x!]).toEqual([1, -1, 3, -1]);
    expect([...shared!]).toEqual([0, 0, 0, 0]);
  });
});

describe('separatingWithin', () => {
  it('tells whether successes stand above failures within all strata', () => {
    const [x] = withinStrata(design, informative.strata, informative.rows);
    const trials = Float64Array.of(1, 1, 1, 3);
    const basis = orthogonalBasis([x!], trials);
    if ('column' in basis) throw new Error('x varies');
    // Pair a puts the success above, pair c below (7 failed, 3 has both).
    expect(separatingWithin(informative.strata, basis)).toEqual([]);
    expect(separatingWithin(informative.strata.slice(0, 1), basis)).toEqual([0]);
  });
});
