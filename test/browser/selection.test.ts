import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { rawRates } from '../../lib/analysis/raw.ts';
import { packFlowers, unpackFlowers } from '../../lib/browser/explored-flowers.ts';
import {
  alone,
  chosenFlowers,
  everything,
  groupsOf,
  keysOf,
  pairsOf,
  totalOf,
  UNKNOWN_AGE,
  withChosen,
} from '../../lib/browser/selection.ts';
import { readSeason } from '../../lib/season/read-season.ts';
import type { Cross } from '../../lib/season/season.ts';
import { root } from './finished-pages.ts';

const bytes = new Uint8Array(readFileSync(join(root, 'data-demo', 'crosses.csv')));
const season = readSeason([{ name: 'crosses.csv', bytes }]);
const flowers = unpackFlowers(packFlowers(season));

/** The library's rates of a season with other rows left out: the second writing of every count here. */
const ratesOf = (fits: (cross: Cross) => boolean) =>
  rawRates({ ...season, crosses: season.crosses.filter(fits) });
const frozen2024 = withChosen(
  withChosen(everything, 'storage', new Set(['frozen'])),
  'season',
  new Set(['2024']),
);

describe('the chosen flowers', () => {
  it('are all of them at first, counted as the library counts them', () => {
    const raw = ratesOf(() => true);
    expect(totalOf(chosenFlowers(flowers, everything))).toEqual(raw.overall);
    expect(groupsOf(flowers, everything, 'storage').map(({ key, chosen, ...rate }) => [key, rate])).toEqual(
      raw.byStorage.map(({ storage, ...rate }) => [storage, rate]),
    );
    expect(
      groupsOf(flowers, everything, 'pollenParent').map(({ key, chosen, ...rate }) => [key, rate]),
    ).toEqual(raw.byPollenParent.map(({ pollenParent, ...rate }) => [pollenParent, rate]));
  });

  it('fit every choice, with the counts and ranges of the library for just these rows', () => {
    const raw = ratesOf((cross) => cross.storage === 'frozen' && cross.season === '2024');
    expect(raw.overall.flowers).toBeGreaterThan(10);
    const chosen = chosenFlowers(flowers, frozen2024);
    expect(totalOf(chosen)).toEqual(raw.overall);
    const order = (a: { flowers: number }, b: { flowers: number }) => b.flowers - a.flowers;
    expect(pairsOf(chosen)).toEqual([...raw.byPair].sort(order));
  });

  it('leave to each value of a dimension what the other choices leave, chosen or not', () => {
    const all = groupsOf(flowers, frozen2024, 'storage');
    const raw = ratesOf((cross) => cross.season === '2024');
    expect(
      all
        .filter((group) => group.flowers > 0)
        .map(({ key, fruits, flowers: n }) => [key, fruits, n])
        .sort(),
    ).toEqual(raw.byStorage.map(({ storage, fruits, flowers: n }) => [storage, fruits, n]).sort());
    expect(all.filter(({ chosen }) => chosen).map(({ key }) => key)).toEqual(['frozen']);
  });

  it('stand in the bands of age that the library counts by', () => {
    const frozen = alone(everything, 'storage', 'frozen');
    const bands = groupsOf(flowers, frozen, 'age').filter((group) => group.flowers > 0);
    const raw = ratesOf((cross) => cross.storage === 'frozen').byAge;
    const known = bands.filter(({ key }) => key !== UNKNOWN_AGE);
    expect(known.map(({ key, fruits, flowers: n }) => [Number(key), fruits, n])).toEqual(
      raw.map(({ from, fruits, flowers: n }) => [from, fruits, n]),
    );
  });

  it('have ages from young to old, those not known last', () => {
    const [first] = flowers;
    const some = [400, null, 0, 5].map((ageDays) => ({ ...first!, ageDays }));
    expect(keysOf(some, 'age')).toEqual(['0', '3', '366', UNKNOWN_AGE]);
  });

  it('are none where nothing of a dimension is chosen: no rate, and no value is lost', () => {
    const none = withChosen(everything, 'season', new Set());
    expect(totalOf(chosenFlowers(flowers, none))).toMatchObject({ flowers: 0, estimate: null });
    expect(groupsOf(flowers, none, 'storage').map(({ flowers: n, estimate }) => [n, estimate])).toEqual(
      keysOf(flowers, 'storage').map(() => [0, null]),
    );
  });
});

describe('one value alone', () => {
  it('comes by one click and goes by the next', () => {
    const once = alone(frozen2024, 'storage', 'fresh');
    expect(once.get('storage')).toEqual(new Set(['fresh']));
    expect(once.get('season')).toEqual(new Set(['2024']));
    expect(alone(once, 'storage', 'fresh').get('storage')).toBeNull();
    expect(frozen2024.get('storage')).toEqual(new Set(['frozen']));
  });

  it('takes names that objects have', () => {
    const odd = [
      { ...flowers[0]!, seedParent: '__proto__' },
      { ...flowers[0]!, seedParent: 'constructor' },
    ];
    expect(
      groupsOf(odd, alone(everything, 'seedParent', '__proto__'), 'seedParent').map((g) => [g.key, g.chosen]),
    ).toEqual([
      ['__proto__', true],
      ['constructor', false],
    ]);
  });
});
