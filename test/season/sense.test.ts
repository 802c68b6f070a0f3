import { describe, expect, it } from 'vitest';
import { readSeason } from '../../lib/season/read-season.ts';

/** One flower with what is said of it besides, and the codes of what was found. */
function flower(said: Readonly<Record<string, string>>, asOf?: string) {
  const row = {
    cross_id: 'T1',
    pollination_date: '2025-06-01',
    seed_parent: 'A',
    pollen_parent: 'B',
    storage: 'fresh',
    outcome: 'fruit',
    ...said,
  };
  const text = `${Object.keys(row).join(',')}\n${Object.values(row).join(',')}\n`;
  const season = readSeason(
    [{ name: 'crosses.csv', bytes: new TextEncoder().encode(text) }],
    asOf ? { asOf } : {},
  );
  return { cross: season.crosses[0], codes: season.files[0].problems.map(({ code }) => code) };
}

describe('sensible', () => {
  it('lets a sound record be', () => {
    const { cross, codes } = flower({
      checked_on: '2025-06-15',
      harvested_on: '2025-08-20',
      seeds: '300',
      sown: '50',
      germinated: '50',
      fruit_weight_g: '210.5',
    });
    expect(codes).toEqual([]);
    expect(cross).toMatchObject({
      checkedOn: '2025-06-15',
      harvestedOn: '2025-08-20',
      seeds: 300,
      sown: 50,
      germinated: 50,
      fruitWeightGrams: 210.5,
    });
  });

  it('takes back what cannot be, and nothing else', () => {
    expect(flower({ checked_on: '2025-05-31', seeds: '3' }).cross).toMatchObject({
      checkedOn: null,
      seeds: 3,
    });
    expect(flower({ harvested_on: '2025-05-31' }).cross.harvestedOn).toBeNull();
    expect(flower({ outcome: 'none', harvested_on: '2025-08-31' }).cross.harvestedOn).toBeNull();
    expect(flower({ outcome: 'dropped', seeds: '3' }).cross).toMatchObject({
      seeds: null,
      outcome: 'dropped',
    });
    expect(flower({ sown: '5', germinated: '6' }).cross).toMatchObject({ sown: 5, germinated: null });
    expect(flower({ seeds: '5', sown: '6' }).cross).toMatchObject({ seeds: 5, sown: null });
  });

  it('has nothing against no seeds without a fruit', () => {
    expect(flower({ outcome: 'none', seeds: '0' })).toMatchObject({ cross: { seeds: 0 }, codes: [] });
  });

  it('warns of a fruit seen too early, but not of a flower that has fallen', () => {
    // Common practice, no source: the outcome shows after about two weeks, never in the first.
    expect(flower({ checked_on: '2025-06-03' }).codes).toEqual(['checked-too-early']);
    expect(flower({ checked_on: '2025-06-07' }).codes).toEqual(['checked-too-early']);
    expect(flower({ checked_on: '2025-06-07', outcome: 'dropped' }).codes).toEqual(['checked-too-early']);
    expect(flower({ checked_on: '2025-06-08' }).codes).toEqual([]);
    expect(flower({ checked_on: '2025-06-03', outcome: 'none' }).codes).toEqual([]);
  });

  it('does not believe a check after a year or a harvest after two', () => {
    // Common practice, no source: the check is at two weeks, the harvest within months.
    expect(flower({ checked_on: '2052-06-15' })).toMatchObject({
      cross: { checkedOn: null, outcome: 'fruit' },
      codes: ['checked-too-late'],
    });
    expect(flower({ checked_on: '2026-06-02' }).codes).toEqual([]);
    expect(flower({ checked_on: '2026-06-03' }).codes).toEqual(['checked-too-late']);
    expect(flower({ harvested_on: '2027-06-03' })).toMatchObject({
      cross: { harvestedOn: null },
      codes: ['harvested-too-late'],
    });
    expect(flower({ harvested_on: '2027-06-02' }).codes).toEqual([]);
  });

  it('warns of own pollen, except in a control', () => {
    expect(flower({ pollen_parent: 'A' })).toMatchObject({ cross: { control: null }, codes: ['own-pollen'] });
    expect(flower({ pollen_parent: 'A', control: 'selfed' })).toMatchObject({
      cross: { control: 'selfed' },
      codes: [],
    });
  });

  it('knows nothing of what comes after asOf', () => {
    expect(flower({}, '2025-05-31')).toEqual({ cross: undefined, codes: ['future-date'] });
    const harvested = flower({ harvested_on: '2025-08-20' }, '2025-07-01');
    expect(harvested).toMatchObject({
      cross: { outcome: 'fruit', harvestedOn: null },
      codes: ['future-date'],
    });
    const checked = flower({ checked_on: '2025-06-15' }, '2025-06-10');
    expect(checked).toMatchObject({ cross: { outcome: 'pending' }, codes: ['outcome-after-as-of'] });
  });
});
