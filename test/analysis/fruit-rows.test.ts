import { describe, expect, it } from 'vitest';
import { byCodePoint } from '../../lib/analysis/flowers.ts';
import { joinedRows } from '../../lib/analysis/fruit-rows.ts';
import { nameFreeRanks } from '../../lib/analysis/name-free-order.ts';
import { flowersOf, smallSeason } from './flowers-of.ts';

describe('joinedRows', () => {
  it('joins flowers that are alike in everything, and only those', () => {
    const alike = flowersOf([
      { fruit: 1 },
      { fruit: 0 },
      { fruit: 1, morning: '2025-06-21' },
      { fruit: 0 },
      { fruit: 1, storage: 'frozen', ageDays: 30, vial: 'V1' },
      { fruit: 1, storage: 'frozen', ageDays: 31, vial: 'V1' },
      { fruit: 1, seedParent: 'Salt Moon', pollenParent: 'Lantern Creek' },
    ]);
    const rows = joinedRows(alike, nameFreeRanks(alike));
    const told = rows.map(({ seedParent, storage, ageDays, fruits, flowers: count }) => [
      seedParent,
      storage,
      ageDays,
      fruits,
      count,
    ]);
    expect(told.sort((a, b) => byCodePoint(String(a), String(b)))).toEqual([
      ['Lantern Creek', 'fresh', 0, 1, 1],
      ['Lantern Creek', 'fresh', 0, 1, 3],
      ['Lantern Creek', 'frozen', 30, 1, 1],
      ['Lantern Creek', 'frozen', 31, 1, 1],
      ['Salt Moon', 'fresh', 0, 1, 1],
    ]);
  });

  it('puts rows in one order, whatever order the flowers stand in and whatever they are called', () => {
    const rows = (names: readonly string[], reverse: boolean) => {
      const flowers = reverse ? smallSeason(names).reverse() : smallSeason(names);
      return joinedRows(flowers, nameFreeRanks(flowers)).map((row) => [
        names.indexOf(row.seedParent),
        names.indexOf(row.pollenParent),
        row.storage,
        row.ageDays,
        row.morning,
        row.fruits,
        row.flowers,
      ]);
    };
    const first = rows(['A', 'B', 'C', 'D'], false);
    expect(rows(['D', 'A', 'C', 'B'], true)).toEqual(first);
    expect(first.reduce((sum, row) => sum + Number(row[6]), 0)).toBe(40);
  });
});
