import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { usedFlowers } from '../../lib/analysis/flowers.ts';
import { packFlowers, unpackFlowers } from '../../lib/browser/explored-flowers.ts';
import { readSeason } from '../../lib/season/read-season.ts';
import { root } from './finished-pages.ts';

const season = (text: string) => readSeason([{ name: 'crosses.csv', bytes: new TextEncoder().encode(text) }]);

it('brings back every used flower of a season, in order', () => {
  const demo = season(readFileSync(join(root, 'data-demo', 'crosses.csv'), 'utf8'));
  const expected = usedFlowers(demo).map(
    ({ storage, season: year, seedParent, pollenParent, ageDays, fruit }) => ({
      storage,
      season: year,
      seedParent,
      pollenParent,
      ageDays,
      fruit,
    }),
  );
  expect(expected.length).toBeGreaterThan(200);
  expect(unpackFlowers(packFlowers(demo))).toEqual(expected);
});

it('keeps names of any kind, and an age that is not known', () => {
  const head = 'cross_id,pollination_date,seed_parent,pollen_parent,storage,pollen_age_days,outcome,season\n';
  const rows =
    '1,2025-06-01,__proto__,<script>,frozen,,fruit,constructor\n2,2025-06-02,<script>,__proto__,fresh,,none,\n';
  expect(unpackFlowers(packFlowers(season(head + rows)))).toEqual([
    {
      storage: 'frozen',
      season: 'constructor',
      seedParent: '__proto__',
      pollenParent: '<script>',
      ageDays: null,
      fruit: 1,
    },
    {
      storage: 'fresh',
      season: '2025',
      seedParent: '<script>',
      pollenParent: '__proto__',
      ageDays: 0,
      fruit: 0,
    },
  ]);
});

it('knows a season without a flower', () => {
  const empty = { ...season('cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome\n') };
  expect(unpackFlowers(packFlowers(empty))).toEqual([]);
});
