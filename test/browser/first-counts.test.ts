import { expect, it } from 'vitest';
import { analyse } from '../../lib/analyse.ts';
import { firstCounts } from '../../lib/browser/first-counts.ts';
import { flowersOf, seasonOf } from '../season-of.ts';

const season = seasonOf([
  ...flowersOf(3, 4, { storage: 'fresh', grower: 'Ina' }),
  ...flowersOf(1, 4, { storage: 'frozen', ageDays: 30, grower: 'Ole' }),
]);

// The analysis is the second way to the same counts.
it('counts what the whole analysis counts, like for like left open', () => {
  const whole = analyse(season);
  const { rows, raw, freshVersusStored } = firstCounts(season);
  expect(rows).toEqual(whole.rows);
  expect(raw).toEqual(whole.raw);
  expect(freshVersusStored[0]!.difference).toEqual(whole.freshVersusStored[0]!.difference);
  expect(freshVersusStored[0]!.adjusted.estimate).toBeNull();
});

it('takes plants of several growers for one only where that is said', () => {
  expect(firstCounts(season).raw.byPair).toHaveLength(2);
  expect(firstCounts(season, { samePlants: true }).raw.byPair).toHaveLength(1);
});
