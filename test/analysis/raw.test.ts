import { describe, expect, it } from 'vitest';
import { rawRates } from '../../lib/analysis/raw.ts';
import { rowCounts } from '../../lib/analysis/rows.ts';
import type { Proportion } from '../../lib/proportions/interval.ts';
import { referenceCase, referenceSeason } from '../reference-season.ts';
import { flowersOf, seasonOf } from '../season-of.ts';

interface Groups {
  readonly group: readonly string[];
  readonly fruit: readonly number[];
  readonly n: readonly number[];
  readonly rate: readonly number[];
  readonly wilson_lower: readonly number[];
  readonly wilson_upper: readonly number[];
}

interface RatesCase {
  readonly overall: { readonly fruit: number; readonly n: number; readonly wilson: readonly number[] };
  readonly by_storage: Groups;
  readonly by_storage_age_bin: Groups;
  readonly by_pair: Groups;
  readonly by_mother: Groups;
  readonly by_father: Groups;
}

interface CountsCase {
  readonly rows: number;
  readonly by_outcome: {
    readonly fruit: number;
    readonly failed: number;
    readonly unknown: number;
    readonly pending: number;
  };
  readonly analysed: number;
}

/** The reference calls methods by other words than this project does. */
const METHODS = new Map([
  ['fridge', 'refrigerated'],
  ['freezer', 'frozen'],
]);
const methodOf = (word: string) => METHODS.get(word) ?? word;

function expectRates(
  actual: ReadonlyMap<string, Proportion>,
  expected: Groups,
  name = (group: string) => group,
) {
  expect([...actual.keys()].sort()).toEqual(expected.group.map(name).sort());
  expected.group.forEach((group, i) => {
    const rate = actual.get(name(group))!;
    expect([rate.fruits, rate.flowers]).toEqual([expected.fruit[i], expected.n[i]]);
    expect(rate.estimate).toBeCloseTo(expected.rate[i]!, 13);
    expect(rate.lower).toBeCloseTo(expected.wilson_lower[i]!, 11);
    expect(rate.upper).toBeCloseTo(expected.wilson_upper[i]!, 11);
  });
}

// The simulated seasons: counts by R, Wilson's ranges by R's prop.test (k_seasons.json).
describe.each(['40', '150', '600', '5000'])('the raw rates of the season of %s flowers', (size) => {
  const season = referenceSeason(`k-season${size}.csv`);
  const rates = rawRates(season);
  const expected = referenceCase<RatesCase>(`k-season${size}-raw-rates`);

  it('count the rows as R does', () => {
    const counts = referenceCase<CountsCase>(`k-season${size}-counts`);
    const { read, used, leftOut, byOutcome } = rowCounts(season);
    expect([read, used, leftOut]).toEqual([counts.rows, counts.analysed, counts.rows - counts.analysed]);
    expect(byOutcome.map(({ rows }) => rows)).toEqual([
      counts.by_outcome.fruit,
      0,
      counts.by_outcome.failed,
      counts.by_outcome.unknown,
      counts.by_outcome.pending,
    ]);
  });

  it('are those of R overall, by storage and by parent', () => {
    expect([rates.overall.fruits, rates.overall.flowers]).toEqual([
      expected.overall.fruit,
      expected.overall.n,
    ]);
    expect(rates.overall.lower).toBeCloseTo(expected.overall.wilson[0]!, 11);
    expect(rates.overall.upper).toBeCloseTo(expected.overall.wilson[1]!, 11);
    expectRates(new Map(rates.byStorage.map((r) => [r.storage, r])), expected.by_storage, methodOf);
    expectRates(new Map(rates.bySeedParent.map((r) => [r.seedParent, r])), expected.by_mother);
    expectRates(new Map(rates.byPollenParent.map((r) => [r.pollenParent, r])), expected.by_father);
  });

  it('are those of R by pair, mother first', () => {
    const byPair = rates.byPair.map((r) => [`${r.seedParent} x ${r.pollenParent}`, r] as const);
    expectRates(new Map(byPair), expected.by_pair);
  });

  it('are those of R by age of stored pollen, in narrower bands past half a year', () => {
    const wide = new Map<string, number[]>();
    for (const { storage, from, to, fruits, flowers } of rates.byAge) {
      if (storage === 'fresh') continue;
      const band = from >= 181 ? '181+' : from === to ? `${from}` : `${from}-${to}`;
      const counts = wide.get(`${storage}:${band}`) ?? [0, 0];
      wide.set(`${storage}:${band}`, [counts[0]! + fruits, counts[1]! + flowers]);
    }
    const { group, fruit, n } = expected.by_storage_age_bin;
    const reference = new Map(
      group.map((name, i) => [name.replace(/^\w+/, methodOf), [fruit[i], n[i]]] as const),
    );
    for (const name of reference.keys()) if (name.startsWith('fresh')) reference.delete(name);
    expect(Object.fromEntries(wide)).toEqual(Object.fromEntries(reference));
  });
});

describe('rawRates', () => {
  it('gives fresh pollen the age of 0 days and leaves pollen of unknown age out of the bands', () => {
    const season = seasonOf([
      ...flowersOf(1, 2),
      ...flowersOf(1, 3, { storage: 'frozen', ageDays: null }),
      ...flowersOf(0, 1, { storage: 'frozen', ageDays: 366 }),
    ]);
    const { byAge, byStorage } = rawRates(season);
    expect(byAge.map(({ storage, from, to, flowers }) => [storage, from, to, flowers])).toEqual([
      ['fresh', 0, 0, 2],
      ['frozen', 366, null, 1],
    ]);
    expect(byStorage[1]).toMatchObject({ storage: 'frozen', fruits: 1, flowers: 4 });
  });

  // By hand: of 4 + 1 fresh and 3 + 2 frozen flowers; the worst case for fresh fails its lost tag and takes the others'.
  it('bounds what lost tags could hide', () => {
    const season = seasonOf([
      ...flowersOf(3, 4),
      ...flowersOf(1, 3, { storage: 'frozen', ageDays: 90 }),
      { outcome: 'unknown' },
      { outcome: 'unknown', storage: 'frozen', ageDays: 90 },
      { outcome: 'unknown', storage: 'frozen', ageDays: 90 },
      { outcome: 'pending' },
    ]);
    const { overall, byStorage, difference } = rawRates(season).lostTags;
    expect([overall.lost, overall.lowest.estimate, overall.highest.estimate]).toEqual([3, 0.4, 0.7]);
    expect(byStorage.map(({ lowest, highest }) => [lowest.fruits, highest.fruits, highest.flowers])).toEqual([
      [3, 4, 5],
      [1, 3, 5],
    ]);
    expect(difference).toHaveLength(1);
    expect(difference[0]!.lowest.estimate).toBeCloseTo(3 / 5 - 3 / 5, 12);
    expect(difference[0]!.highest.estimate).toBeCloseTo(4 / 5 - 1 / 5, 12);
  });

  it('counts controls apart', () => {
    const bare = { control: 'unpollinated', pollenParent: null, storage: null, ageDays: null } as const;
    const season = seasonOf([
      ...flowersOf(1, 2),
      ...flowersOf(0, 3, bare),
      ...flowersOf(1, 2, { control: 'selfed', pollenParent: 'Lantern Creek' }),
      { ...bare, outcome: 'unknown' },
    ]);
    const { overall, controls } = rawRates(season);
    expect(overall.flowers).toBe(2);
    expect(controls.map(({ control, fruits, flowers }) => [control, fruits, flowers])).toEqual([
      ['unpollinated', 0, 3],
      ['selfed', 1, 2],
    ]);
  });

  it('has no rate and no group where nothing can be counted', () => {
    const { overall, byStorage, lostTags } = rawRates(seasonOf([{ outcome: 'pending' }]));
    expect(overall).toMatchObject({ fruits: 0, flowers: 0, estimate: null, because: 'no-flowers' });
    expect([byStorage, lostTags.difference]).toEqual([[], []]);
  });

  // Newcombe (1998) Stat Med 17:857, Table I: Wilson's 95 % limits of 81 of 263 are 0.2553 and 0.3662; narrower at 90 %.
  it('takes the level it is given', () => {
    const season = seasonOf(flowersOf(81, 263));
    expect(rawRates(season).overall.lower).toBeCloseTo(0.2553, 4);
    expect(rawRates(season, { level: 0.9 }).overall.lower).toBeGreaterThan(0.2553);
    expect(() => rawRates(season, { level: 95 })).toThrow(RangeError);
  });

  it('pools fruits over flowers: a plant of many flowers counts for more than one of few', () => {
    // 9 of 10 and 0 of 2 by hand: 9 / 12, where the mean of both rates is 0.45.
    const named = (seedParent: string, fruits: number, flowers: number) =>
      flowersOf(fruits, flowers).map((cross) => ({ ...cross, seedParent }));
    const { overall, bySeedParent } = rawRates(seasonOf([...named('Ash', 9, 10), ...named('Elm', 0, 2)]));
    expect(overall.estimate).toBe(9 / 12);
    expect(bySeedParent.map(({ estimate }) => estimate)).toEqual([0.9, 0]);
  });

  // Common practice, no source: two plants in flower allow two fresh crosses, n plants n(n − 1).
  it.each([2, 3, 7])(
    'has n(n − 1) pairs where each of %i plants was crossed with every other, both ways',
    (n) => {
      const plants = Array.from({ length: n }, (_, i) => `Plant ${i}`);
      const crosses = plants.flatMap((seedParent) =>
        plants
          .filter((pollenParent) => pollenParent !== seedParent)
          .map((pollenParent) => ({ seedParent, pollenParent })),
      );
      expect(rawRates(seasonOf(crosses)).byPair).toHaveLength(n * (n - 1));
    },
  );

  it('keeps plants called __proto__ and constructor', () => {
    const season = seasonOf([{ seedParent: '__proto__', pollenParent: 'constructor' }]);
    expect(rawRates(season).byPair).toMatchObject([{ seedParent: '__proto__', pollenParent: 'constructor' }]);
  });
});
