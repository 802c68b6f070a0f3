import { readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { seedList } from '../../lib/analysis/seed-list.ts';
import { readSeason } from '../../lib/season/read-season.ts';
import type { Cross } from '../../lib/season/season.ts';
import { seasonOf } from '../season-of.ts';

const spread = { lotCorrelation: { estimate: 0 } };
const listOf = (crosses: readonly Partial<Cross>[]) => seedList(seasonOf(crosses), spread);
const ripe = { harvestedOn: '2025-08-01', bagged: true };

describe('the seed list', () => {
  it('keeps the direction and the season of a cross apart, in order of names', () => {
    const { entries } = listOf([
      { ...ripe, seedParent: 'B', pollenParent: 'A' },
      { ...ripe, seedParent: 'A', pollenParent: 'B', season: '2025' },
      { ...ripe, seedParent: 'A', pollenParent: 'B', season: '2024' },
    ]);
    expect(entries.map(({ seedParent, season }) => [seedParent, season])).toEqual([
      ['A', '2024'],
      ['A', '2025'],
      ['B', '2025'],
    ]);
  });

  it('counts ripe fruits of bagged flowers only, and says what it leaves out', () => {
    const { entries, unbagged, unharvested, harvestsRecorded } = listOf([
      { ...ripe, seeds: 100, sown: 20, germinated: 15 },
      { ...ripe, bagged: null },
      { ...ripe, bagged: false, seeds: 500 },
      { ...ripe, harvestedOn: null },
      { ...ripe, outcome: 'dropped' },
      { ...ripe, control: 'selfed', seeds: 70 },
      { ...ripe, control: 'unpollinated', pollenParent: null, storage: null, seeds: 70 },
    ]);
    expect(entries).toHaveLength(1);
    expect(entries[0]).toMatchObject({ fruits: 2, bagNotSaid: 1, countedFruits: 1, seeds: 100, unsown: 80 });
    expect({ unbagged, unharvested, harvestsRecorded }).toEqual({
      unbagged: 1,
      unharvested: 1,
      harvestsRecorded: true,
    });
  });

  // By hand: logit(0.75) = 1.0986, se = 1 / √(20 · 0.75 · 0.25) = 0.5164, ends of the logit 0.0865 and 2.1107.
  it('has the logit range of independent seeds where sowings do not differ', () => {
    const { germination } = listOf([{ ...ripe, seeds: 100, sown: 20, germinated: 15 }]).entries[0]!;
    expect(germination).toMatchObject({ lots: 1, germinated: 15, sown: 20, estimate: 0.75 });
    expect(germination.lower).toBeCloseTo(0.5216, 3);
    expect(germination.upper).toBeCloseTo(0.8919, 3);
  });

  it('never has fewer than no seeds left, and takes every fruit where no harvest is written down', () => {
    const { entries, harvestsRecorded } = listOf([
      { seeds: 10, sown: 30, germinated: 3 },
      { seeds: 10, sown: null },
    ]);
    expect(entries[0]).toMatchObject({ fruits: 2, bagNotSaid: 2, seeds: 20, unsown: 10 });
    expect(harvestsRecorded).toBe(false);
  });

  it('tells plants of one name apart by their grower, unless they are said to be the same', () => {
    const crosses = ['Ivo', 'Mara'].map((grower) => ({ ...ripe, grower }));
    expect(listOf(crosses).entries.map(({ seedParent }) => seedParent)).toEqual([
      'Lantern Creek (Ivo)',
      'Lantern Creek (Mara)',
    ]);
    expect(seedList(seasonOf(crosses), { ...spread, samePlants: true }).entries).toHaveLength(1);
  });

  it('holds any name, and refuses a level that is none', () => {
    const names = listOf([{ ...ripe, seedParent: '__proto__', pollenParent: 'constructor' }]).entries;
    expect(names[0]).toMatchObject({ seedParent: '__proto__', pollenParent: 'constructor', fruits: 1 });
    expect(listOf([]).entries).toEqual([]);
    expect(() => seedList(seasonOf([]), { ...spread, level: 1 })).toThrow(/level must be between 0 and 1/);
  });

  // A slow second count of the demo file, row by row, by csv-parse alone; rows that the reader leaves out are skipped.
  it('agrees with a plain count of the demo season', () => {
    const bytes = readFileSync(new URL('../../data-demo/crosses.csv', import.meta.url));
    const season = readSeason([{ name: 'crosses.csv', bytes }]);
    const read = new Set(season.crosses.map(({ crossId }) => crossId));
    const rows: Record<string, string>[] = parse(bytes, {
      columns: true,
      bom: true,
      relax_column_count: true,
    });
    const fruits = rows.filter(
      (row) =>
        read.has(row.cross_id!) &&
        row.outcome === 'fruit' &&
        row.harvested_on !== '' &&
        row.control === '' &&
        row.bagged !== 'no',
    );
    const { entries } = seedList(season, spread);
    const total = (of: (entry: (typeof entries)[number]) => number) =>
      entries.reduce((sum, e) => sum + of(e), 0);
    const sum = (column: string) => fruits.reduce((all, row) => all + Number(row[column]), 0);
    expect(fruits.length).toBeGreaterThan(50);
    expect(total((entry) => entry.fruits)).toBe(fruits.length);
    expect(total((entry) => entry.seeds)).toBe(sum('seeds'));
    expect(total((entry) => entry.germination.germinated)).toBe(sum('germinated'));
  });
});
