import { describe, expect, it } from 'vitest';
import { crossingSheet, crossingSheetCsv, sheetOf } from '../../lib/decisions/crossing-sheet.ts';
import type { AllocationLine, Mix } from '../../lib/decisions/mix.ts';
import { readSeason } from '../../lib/season/read-season.ts';
import { seasonOf } from '../season-of.ts';
import { offer, vialOf } from './planned.ts';

function line(seedParent: string, pollenParent: string, more: Partial<AllocationLine> = {}): AllocationLine {
  const fresh = { source: 'fresh' as const, vial: null, flowers: 1, from: null, to: null, noFruit: 0.5 };
  return { seedParent, pollenParent, ...fresh, ...more };
}

function mixOf(allocation: readonly AllocationLine[]): Mix {
  const expected = { name: null, expectedVarieties: 1, expectedFruits: 1, expectedSeeds: null, within: 0 };
  return { ...expected, fruits: { percentile10: 0, percentile90: 2 }, allocation };
}

const vials = [vialOf('F-01', 'Cold Ember', { storage: 'frozen', collected: '2025-07-01' })];

describe('crossingSheet', () => {
  it('has a line a flower, with the vial to thaw and a tag of its own', () => {
    const mix = mixOf([
      line('Blue Hour', 'Ash Lantern', { flowers: 2 }),
      line('Ash Lantern', 'Cold Ember', { source: 'vial', vial: 'F-01' }),
    ]);
    const flowers = crossingSheet(mix, vials, '2026');
    expect(flowers.map(({ crossId, seedParent }) => [crossId, seedParent])).toEqual([
      ['2026-001', 'Ash Lantern'],
      ['2026-002', 'Blue Hour'],
      ['2026-003', 'Blue Hour'],
    ]);
    expect(flowers[0]).toMatchObject({ storage: 'frozen', vial: 'F-01', pollenCollected: '2025-07-01' });
    expect(flowers[1]).toMatchObject({ storage: 'fresh', vial: null, pollenCollected: null, morning: null });
  });

  it('spreads a plant’s flowers over its days, each on one that its pollen allows', () => {
    // Four flowers over 8 days: one every two days, on days 2, 4, 6 and 8; the fresh one can only be early.
    const days = { from: '2026-06-01', to: '2026-06-08' };
    const mix = mixOf([
      line('Blue Hour', 'Cold Ember', { source: 'vial', vial: 'F-01', flowers: 3, ...days }),
      line('Blue Hour', 'Ash Lantern', { from: '2026-06-01', to: '2026-06-03' }),
    ]);
    const flowers = crossingSheet(mix, vials, '2026');
    expect(flowers.map(({ morning, pollenParent }) => [morning, pollenParent])).toEqual([
      ['2026-06-02', 'Ash Lantern'],
      ['2026-06-04', 'Cold Ember'],
      ['2026-06-06', 'Cold Ember'],
      ['2026-06-08', 'Cold Ember'],
    ]);
  });

  it('keeps every flower within the days of its pollen, and loses none', () => {
    const allocation = [
      line('Blue Hour', 'Ash Lantern', { flowers: 3, from: '2026-06-05', to: '2026-06-05' }),
      line('Blue Hour', 'Cold Ember', { flowers: 2, from: '2026-06-01', to: '2026-06-20' }),
      line('Blue Hour', 'Elder Moth', { flowers: 1, from: '2026-06-01', to: null }),
    ];
    const flowers = crossingSheet(mixOf(allocation), vials, '2026');
    expect(flowers).toHaveLength(6);
    for (const { pollenParent, morning } of flowers) {
      const { from, to } = allocation.find((one) => one.pollenParent === pollenParent)!;
      if (morning === null) expect(to).toBeNull();
      else expect(from! <= morning && morning <= to!).toBe(true);
    }
    expect(flowers.at(-1)!.morning).toBeNull();
  });

  it('numbers more than 999 flowers with as many digits as they need', () => {
    const flowers = crossingSheet(mixOf([line('Blue Hour', 'Ash Lantern', { flowers: 1000 })]), [], '2026');
    expect([flowers[0]!.crossId, flowers[999]!.crossId]).toEqual(['2026-0001', '2026-1000']);
  });
});

describe('sheetOf', () => {
  it('counts tags from the year of the first flowers, else of the day of use', () => {
    const season = { ...seasonOf([]), vials };
    const mix = mixOf([line('Blue Hour', 'Ash Lantern')]);
    const flowers = [offer('Blue Hour', 1, '2027-01-05'), offer('Blue Hour', 1, null, '2026-12-01')];
    expect(sheetOf({ ...season, flowers }, mix, '2028-01-01')[0]!.crossId).toBe('2026-001');
    expect(sheetOf(season, mix, '2028-01-01')[0]!.crossId).toBe('2028-001');
    expect(sheetOf(season, mix, null)[0]!.crossId).toBe('next-001');
  });
});

describe('crossingSheetCsv', () => {
  const mix = mixOf([
    line('Blue "Hour", the', 'Ash Lantern'),
    line('Ash Lantern', 'Cold Ember', { source: 'vial', vial: 'F-01' }),
  ]);
  const csv = crossingSheetCsv(crossingSheet(mix, vials, '2026'), () => 'as planned');

  function read(text: string) {
    return readSeason([{ name: 'sheet.csv', bytes: new TextEncoder().encode(text) }]);
  }

  it('is next season’s crosses file once it is filled in', () => {
    const filled = csv
      .replace(/^(2026-001),,(.*),,,,,as planned/m, '$1,2026-06-10,$2,fruit,2026-06-26,,,as planned')
      .replace(/^(2026-002),,(.*),,,,,as planned/m, '$1,2026-06-11,$2,none,2026-06-26,,,as planned');
    const { crosses, files } = read(filled);
    expect(files[0]!.problems).toEqual([]);
    expect(files[0]).toMatchObject({ kind: 'crosses', rows: 2, used: 2, leftOut: 0 });
    expect(crosses).toMatchObject([
      {
        crossId: '2026-001',
        seedParent: 'Ash Lantern',
        pollenParent: 'Cold Ember',
        storage: 'frozen',
        vial: 'F-01',
        ageDays: 344,
        outcome: 'fruit',
      },
      { crossId: '2026-002', seedParent: 'Blue "Hour", the', storage: 'fresh', ageDays: 0, outcome: 'none' },
    ]);
  });

  it('counts no flower before it is filled in', () => {
    const { crosses, files } = read(csv);
    expect(crosses).toEqual([]);
    expect(files[0]).toMatchObject({ kind: 'crosses', rows: 2, leftOut: 2 });
  });
});
