import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type FreshVersusStored, freshVersusStored } from '../../lib/analysis/fresh-versus-stored.ts';
import { unknown } from '../../lib/proportions/interval.ts';
import type { Season } from '../../lib/season/season.ts';
import { referenceCase, referenceSeason } from '../reference-season.ts';
import { flowersOf, seasonOf } from '../season-of.ts';

const withoutAdjusted = () => unknown('too-few-pairs-with-both');
const compared = (season: Season) => freshVersusStored(season, { adjusted: withoutAdjusted });

function entryOf(season: Season, storage: string): FreshVersusStored {
  const entry = compared(season).find((each) => each.storage === storage);
  expect(entry).toBeDefined();
  return entry!;
}

interface CrudeCase {
  readonly crude_difference: number;
  readonly newcombe10: readonly [number, number];
  readonly by_pair: {
    readonly strata_with_both: number;
    readonly mh_odds_ratio: number;
    readonly mh_or_ci: readonly [number, number];
  };
}

// k_seasons.json: R with Newcombe's method 10 and Mantel–Haenszel over pairs, stored against fresh; ours is fresh
// against stored, so differences change sign and ratios are inverted.
describe.each(['40', '150', '600', '5000'])('frozen pollen in the season of %s flowers', (size) => {
  const entry = entryOf(referenceSeason(`k-season${size}.csv`), 'frozen');
  const expected = referenceCase<CrudeCase>(`k-season${size}-crude-vs-stratified`);

  it('differs from fresh as R says, all flowers together', () => {
    expect(entry.difference.estimate).toBeCloseTo(-expected.crude_difference, 10);
    expect(entry.difference.lower).toBeCloseTo(-expected.newcombe10[1], 9);
    expect(entry.difference.upper).toBeCloseTo(-expected.newcombe10[0], 9);
  });

  it('has the common odds ratio over pairs of R, turned over', () => {
    const { strata_with_both, mh_odds_ratio, mh_or_ci } = expected.by_pair;
    expect(entry.pairsWithBoth).toBe(strata_with_both);
    expect(entry.commonOddsRatio.estimate! * mh_odds_ratio).toBeCloseTo(1, 8);
    expect(entry.commonOddsRatio.lower! * mh_or_ci[1]).toBeCloseTo(1, 8);
    expect(entry.commonOddsRatio.upper! * mh_or_ci[0]).toBeCloseTo(1, 8);
  });
});

interface ConditionalCase {
  readonly data: string;
  readonly storage: string;
  readonly estimate: number;
  readonly lower: number;
  readonly upper: number;
  readonly pairsWithBoth: number;
  readonly informativePairs: number;
}

const { cases, tolerance } = JSON.parse(
  readFileSync(new URL('../reference/fresh-versus-stored.json', import.meta.url), 'utf8'),
) as { cases: ConditionalCase[]; tolerance: number };

// R 4.2.2, survival::clogit(method = 'exact'): scripts/reference/fresh-versus-stored.R.
it.each(cases)(
  'within pairs, $storage pollen in $data has the odds ratio of exact conditional logistic regression',
  (expected) => {
    const entry = entryOf(referenceSeason(expected.data), expected.storage);
    expect([entry.pairsWithBoth, entry.informativePairs]).toEqual([
      expected.pairsWithBoth,
      expected.informativePairs,
    ]);
    for (const end of ['estimate', 'lower', 'upper'] as const) {
      expect(Math.abs(entry.conditionalOddsRatio[end]! / expected[end] - 1)).toBeLessThan(tolerance);
    }
  },
);

describe('freshVersusStored', () => {
  const frozen = { storage: 'frozen', ageDays: 90 };

  it('lists stored methods, most flowers first, and hands the informative pairs on', () => {
    const season = seasonOf([
      ...flowersOf(2, 3),
      ...flowersOf(1, 2, { storage: 'room', ageDays: 1 }),
      ...flowersOf(1, 3, frozen),
    ]);
    const asked: [string, number][] = [];
    const entries = freshVersusStored(season, {
      adjusted: (storage, informativePairs) => {
        asked.push([storage, informativePairs]);
        return { estimate: 0.1, lower: -0.1, upper: 0.3 };
      },
    });
    expect(entries.map(({ storage }) => storage)).toEqual(['frozen', 'room']);
    expect(asked).toEqual([
      ['frozen', 1],
      ['room', 1],
    ]);
    expect(entries[0]!.adjusted).toEqual({ estimate: 0.1, lower: -0.1, upper: 0.3 });
  });

  it('takes the median over known ages', () => {
    const season = seasonOf([
      {},
      ...[10, 30, 50, 400].map((ageDays) => ({ storage: 'frozen', ageDays })),
      { storage: 'frozen', ageDays: null },
    ]);
    expect(entryOf(season, 'frozen').medianAgeDays).toBe(40);
    expect(entryOf(seasonOf([{}, { storage: 'frozen', ageDays: null }]), 'frozen').medianAgeDays).toBeNull();
  });

  it('does not take B × A for A × B', () => {
    const season = seasonOf([
      ...flowersOf(2, 3, { seedParent: 'A', pollenParent: 'B' }),
      ...flowersOf(1, 3, { seedParent: 'B', pollenParent: 'A', ...frozen }),
    ]);
    const { pairsWithBoth, commonOddsRatio, conditionalOddsRatio } = entryOf(season, 'frozen');
    expect(pairsWithBoth).toBe(0);
    expect([commonOddsRatio.because, conditionalOddsRatio.because]).toEqual([
      'no-pairs-with-both',
      'no-pairs-with-both',
    ]);
  });

  it('has no ratio where the pairs with both kinds always took or always failed', () => {
    const season = seasonOf([...flowersOf(2, 2), ...flowersOf(2, 2, frozen)]);
    const { pairsWithBoth, informativePairs, commonOddsRatio } = entryOf(season, 'frozen');
    expect([pairsWithBoth, informativePairs]).toEqual([1, 0]);
    expect(commonOddsRatio).toEqual(unknown('no-informative-pairs'));
  });

  it('has no conditional ratio where fresh pollen always did better', () => {
    const season = seasonOf([...flowersOf(3, 3), ...flowersOf(0, 3, frozen)]);
    expect(entryOf(season, 'frozen').conditionalOddsRatio).toEqual(unknown('separated'));
  });

  it('says that there is no fresh flower, and is empty without a stored one', () => {
    expect(entryOf(seasonOf(flowersOf(1, 3, frozen)), 'frozen').difference).toEqual(
      unknown('no-fresh-flower'),
    );
    expect(compared(seasonOf(flowersOf(1, 3)))).toEqual([]);
  });
});
