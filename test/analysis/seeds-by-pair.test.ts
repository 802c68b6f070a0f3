import { describe, expect, it } from 'vitest';
import { seedsByPair, shrinkage } from '../../lib/analysis/seeds-by-pair.ts';
import { readSeason } from '../../lib/season/read-season.ts';
import type { Endpoint, Season } from '../../lib/season/season.ts';

function seasonOf(rows: readonly string[], endpoint: Endpoint = 'final'): Season {
  const header = 'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome,seeds';
  const lines = rows.map((row, at) => `${at + 1},2025-06-1${at % 9},${row}`);
  const bytes = new TextEncoder().encode([header, ...lines, ''].join('\n'));
  return readSeason([{ name: 'crosses.csv', bytes }], { endpoint });
}

describe('shrinkage', () => {
  it('agrees with the estimators written out by hand', () => {
    // Groups 1, 3 and 7, 9: within (1+1+1+1)/2 = 2; between (2·9+2·9 − 1·2)/(4 − 8/4) = 34/2 = 17; ratio 2/17; centre 5.
    const { centre, ratio } = shrinkage([
      [1, 3],
      [7, 9],
    ]);
    expect(centre).toBeCloseTo(5, 12);
    expect(ratio).toBeCloseTo(2 / 17, 12);
  });

  it('weighs groups of unequal size by their credibility', () => {
    // Groups 2, 4, 6 and 10: N 4, mean 5.5; within 8/2 = 4; between 3·1.5² + 4.5² = 27; size 4 − 10/4 = 1.5;
    // variance between (27 − 4)/1.5 = 46/3; ratio 4·3/46 = 6/23; weights 3/(3 + 6/23) = 23/25 and 23/29.
    const { centre, ratio } = shrinkage([[2, 4, 6], [10]]);
    expect(ratio).toBeCloseTo(6 / 23, 12);
    expect(centre).toBeCloseTo(((23 / 25) * 4 + (23 / 29) * 10) / (23 / 25 + 23 / 29), 12);
  });

  it('pulls all the way where pairs differ no more than fruits do, or cannot be told apart', () => {
    expect(
      shrinkage([
        [1, 9],
        [2, 8],
      ]),
    ).toEqual({ centre: 5, ratio: Number.POSITIVE_INFINITY });
    expect(shrinkage([[3], [5]])).toEqual({ centre: 4, ratio: Number.POSITIVE_INFINITY });
    expect(shrinkage([[3, 5]])).toEqual({ centre: 4, ratio: Number.POSITIVE_INFINITY });
  });
});

describe('seedsByPair', () => {
  const rows = ['A,B,fresh,fruit,1', 'A,B,fresh,fruit,3', 'B,A,fresh,fruit,7', 'B,A,fresh,fruit,9'];

  it('leans a pair of few fruits towards the mean of all, and gives that of a pair never seen', () => {
    const seeds = seedsByPair(seasonOf(rows))!;
    // Credibility 2 ÷ (2 + 2/17) = 17/18, by the numbers above.
    expect(seeds('A', 'B')).toBeCloseTo((17 / 18) * 2 + 5 / 18, 12);
    expect(seeds('B', 'A')).toBeCloseTo((17 / 18) * 8 + 5 / 18, 12);
    expect(seeds('A', 'C')).toBeCloseTo(5, 12);
  });

  it('takes off the fruits that drop where fruit set is counted at the check', () => {
    const dropped = [...rows, 'A,B,fresh,dropped,'];
    // Four of five fruits were kept.
    expect(seedsByPair(seasonOf(dropped, 'initial'))!('A', 'C')).toBeCloseTo(0.8 * 5, 12);
    expect(seedsByPair(seasonOf(dropped, 'final'))!('A', 'C')).toBeCloseTo(5, 12);
  });

  it('knows nothing without seed counts', () => {
    expect(seedsByPair(seasonOf(['A,B,fresh,fruit,']))).toBeNull();
  });
});
