import { describe, expect, it } from 'vitest';
import type { SeedList, SeedListEntry } from '../../lib/analysis/seed-list.ts';
import * as said from '../../lib/words/seed-list.ts';
import { seedGroups } from '../../lib/words/told/seeds.ts';

const none = { lots: 0, germinated: 0, sown: 0, estimate: null, lower: null, upper: null };

function entry(more: Partial<SeedListEntry> = {}): SeedListEntry {
  const cross = { seedParent: 'Nightjar 3', pollenParent: 'Salt Moon', season: '2023' };
  const counts = { fruits: 3, bagNotSaid: 0, countedFruits: 2, seeds: 358, unsown: 338 };
  const germination = { lots: 1, germinated: 15, sown: 20, estimate: 0.75, lower: 0.52, upper: 0.89 };
  return { ...cross, ...counts, germination, ...more };
}

const uncounted = entry({
  season: '2024',
  fruits: 1,
  countedFruits: 0,
  seeds: 0,
  unsown: 0,
  germination: none,
});

function list(entries: readonly SeedListEntry[], more: Partial<SeedList> = {}): SeedList {
  return { entries, unbagged: 0, unharvested: 0, harvestsRecorded: true, ...more };
}

// Sentences are held to the rules of the report: counts first, a range with every rate that has one.
describe('the words of the seed list', () => {
  it('answer in one sentence, a cross of two seasons counted once', () => {
    expect(said.seedListAnswer(list([entry(), uncounted]))).toBe(
      '1 cross has given 4 ripe fruits; 2 of 4 had their seeds counted and held 358 seeds, of which 338 were not sown.',
    );
    expect(said.seedListAnswer(list([uncounted, entry({ ...uncounted, seedParent: 'B' })]))).toBe(
      '2 crosses have given 2 ripe fruits; the seeds of none were counted.',
    );
    expect(said.seedListAnswer(list([]))).toBe(
      'No ripe fruit of a cross is written down, so there is no seed to offer.',
    );
  });

  it('fill a row a cross and season, and say what was not counted', () => {
    const rows = said.seedListRows(list([entry(), uncounted]));
    for (const row of rows) expect(row).toHaveLength(said.SEED_LIST_COLUMNS.length);
    expect(rows).toEqual([
      [
        ...['Nightjar 3 × Salt Moon', '2023', '3', '358', '338'],
        ...['15 of 20 (about 8 in 10; could be 5 to 9 in 10)', 'seeds of 1 of 3 fruits not counted'],
      ],
      ['Nightjar 3 × Salt Moon', '2024', '1', 'not counted', 'not known', 'not counted', 'none'],
    ]);
  });

  it('say counts alone where none or all germinated, and name selfed seed and bags that are not said', () => {
    const all = { ...none, lots: 1, germinated: 9, sown: 9, estimate: 1 };
    const selfed = entry({ pollenParent: 'Nightjar 3', countedFruits: 3, bagNotSaid: 2, germination: all });
    expect(said.seedListRows(list([selfed]))[0]!.slice(5)).toEqual([
      '9 of 9',
      'selfed; bag not written down for 2 of 3 fruits',
    ]);
    const failed = entry({ germination: { ...all, germinated: 0, estimate: 0 } });
    expect(said.seedListRows(list([failed]))[0]![5]).toBe('0 of 9');
  });

  it('say what is left out, and why', () => {
    expect(said.seedListLeftOut(list([], { unbagged: 2, unharvested: 1 }))).toEqual([
      '2 fruits of flowers without a bag are not offered: an insect may have brought other pollen.',
      '1 fruit has no harvest date and is not counted as ripe.',
      'Fruits of control flowers are not offered.',
    ]);
    expect(said.seedListLeftOut(list([], { harvestsRecorded: false }))[0]).toMatch(/^No harvest date/);
  });

  it('adds up each seed parent, by its name', () => {
    const germination = { lots: 0, germinated: 0, sown: 0, estimate: null, lower: null, upper: null };
    const entry = {
      season: '2024',
      fruits: 2,
      bagNotSaid: 0,
      countedFruits: 1,
      seeds: 40,
      unsown: 40,
      germination,
    };
    const entries = [
      { ...entry, seedParent: 'A', pollenParent: 'B' },
      { ...entry, seedParent: 'A', pollenParent: 'B', season: '2025' },
      { ...entry, seedParent: '__proto__', pollenParent: 'B', fruits: 1 },
    ];
    expect(seedGroups({ entries }).map(said.seedParentSaid)).toEqual([
      'A: 1 cross, 4 ripe fruits, 80 seeds counted',
      '__proto__: 1 cross, 1 ripe fruit, 40 seeds counted',
    ]);
  });
});
