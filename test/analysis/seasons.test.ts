import { describe, expect, it } from 'vitest';
import { usedFlowers } from '../../lib/analysis/flowers.ts';
import { plantsApart } from '../../lib/analysis/plants-apart.ts';
import { seasons } from '../../lib/analysis/seasons.ts';
import type { Cross, Season } from '../../lib/season/season.ts';
import { facts, threeSeasons } from '../season-facts-reference.ts';
import { flowersOf, seasonOf } from '../season-of.ts';

function seasonsOf(read: Season) {
  const { season, growers } = plantsApart(read);
  return seasons(usedFlowers(season), growers);
}

describe('the seasons of an invented grower, against R', () => {
  const { bySeason, changes } = seasonsOf(threeSeasons());

  it.each(facts.changes.map((change, i) => [change.from, change.to, i] as const))(
    'counts %s and %s and says what changed, over all flowers and like for like',
    (_from, _to, i) => {
      const expected = facts.changes[i]!;
      const change = changes[i]!;
      expect([change.from, change.to]).toEqual([expected.from, expected.to]);
      for (const side of ['earlier', 'later'] as const) {
        const { fruits, flowers, lower, upper } = expected[side];
        expect(change[side]).toMatchObject({ fruits, flowers });
        expect(change[side].lower).toBeCloseTo(lower, 9);
        expect(change[side].upper).toBeCloseTo(upper, 9);
      }
      expect(change.difference.lower).toBeCloseTo(expected.lower, 9);
      expect(change.difference.upper).toBeCloseTo(expected.upper, 9);
      const like = expected.likeForLike;
      expect(change.likeForLike.estimate).toBeCloseTo(like.difference, 9);
      expect(change.likeForLike.lower).toBeCloseTo(like.lower, 9);
      expect(change.likeForLike.upper).toBeCloseTo(like.upper, 9);
      expect(change.commonOddsRatio.estimate).toBeCloseTo(like.oddsRatio, 9);
      expect(change.commonOddsRatio.lower).toBeCloseTo(like.oddsLower, 9);
      expect(change.commonOddsRatio.upper).toBeCloseTo(like.oddsUpper, 8);
      expect([change.strataWithBoth, change.informativeStrata]).toEqual([like.strata, like.informative]);
    },
  );

  // First and last mornings with a known outcome, read off the file by eye.
  it('stand in the order of their first mornings', () => {
    expect(bySeason.map(({ season, from, to }) => [season, from, to])).toEqual([
      ['2023', '2023-06-17', '2023-07-28'],
      ['2024', '2024-06-11', '2024-07-21'],
      ['2025', '2025-06-20', '2025-09-06'],
    ]);
  });
});

// Counts of the tests' own making; their sums are the exact arithmetic.
describe('what changed between seasons', () => {
  const of = (season: string, fruits: number, flowers: number, cross: Partial<Cross> = {}) =>
    flowersOf(fruits, flowers, { season, pollinationDate: `${season}-06-20`, ...cross });

  it('is not the season where the second had harder pairs: like for like there is no difference', () => {
    const pair = (n: number) => ({ seedParent: `M${n}` });
    // Each pair takes 8 of 10 (easy) or 2 of 10 (hard) in either season; only how often they were used changes.
    const crosses = [1, 2, 3].flatMap((n) => [
      ...of('2024', 16, 20, pair(n)),
      ...of('2024', 2, 10, pair(n + 10)),
      ...of('2025', 8, 10, pair(n)),
      ...of('2025', 4, 20, pair(n + 10)),
    ]);
    const [change] = seasonsOf(seasonOf(crosses)).changes;
    // (24 + 12) of 90 less (48 + 6) of 90
    expect(change!.difference.estimate).toBeCloseTo(-0.2, 12);
    expect(change!.likeForLike.estimate).toBeCloseTo(0, 12);
    expect(change!.commonOddsRatio.estimate).toBeCloseTo(1, 12);
  });

  it('compares a pair’s frozen pollen with its frozen pollen, not with its fresh', () => {
    const crosses = [1, 2, 3].flatMap((n) => {
      const frozen = { seedParent: `M${n}`, storage: 'frozen', ageDays: 90 };
      return [...of('2024', 5, 6, { seedParent: `M${n}` }), ...of('2025', 1, 6, frozen)];
    });
    expect(seasonsOf(seasonOf(crosses)).changes[0]).toMatchObject({
      strataWithBoth: 0,
      likeForLike: { estimate: null, because: 'no-pairs-in-both-seasons' },
    });
  });

  it('is not told from the pairs by fewer than three of them', () => {
    const crosses = ['M1', 'M2'].flatMap((seedParent) => [
      ...of('2024', 3, 5, { seedParent }),
      ...of('2025', 2, 5, { seedParent }),
    ]);
    const [change] = seasonsOf(seasonOf(crosses)).changes;
    expect(change!.likeForLike).toEqual({
      estimate: null,
      lower: null,
      upper: null,
      because: 'too-few-pairs-in-both-seasons',
    });
    expect(change!.difference.estimate).toBeCloseTo(-0.2, 12);
  });

  it('is nothing with one season, and no season at all without a flower', () => {
    expect(seasonsOf(seasonOf(of('2025', 1, 2))).changes).toEqual([]);
    expect(seasonsOf(seasonOf([])).bySeason).toEqual([]);
  });
});

describe('growers', () => {
  it('are counted each, those without a name last, and season by season', () => {
    const crosses = [
      ...flowersOf(1, 2, { grower: null }),
      ...flowersOf(2, 3, { grower: 'Ina' }),
      ...flowersOf(0, 1, { grower: 'Bo', season: '2024', pollinationDate: '2024-06-20' }),
    ];
    const { byGrower, bySeasonAndGrower, growers } = seasonsOf(seasonOf(crosses));
    expect(byGrower.map(({ grower, fruits, flowers }) => [grower, fruits, flowers])).toEqual([
      ['Bo', 0, 1],
      ['Ina', 2, 3],
      [null, 1, 2],
    ]);
    expect(bySeasonAndGrower.map(({ season, grower, flowers }) => [season, grower, flowers])).toEqual([
      ['2024', 'Bo', 1],
      ['2025', 'Ina', 3],
      ['2025', null, 2],
    ]);
    expect(growers.names).toEqual(['Bo', 'Ina']);
  });
});
