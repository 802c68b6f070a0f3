import { describe, expect, it } from 'vitest';
import { readSeason } from '../../lib/season/read-season.ts';

const REGISTER = 'vial,pollen_parent,collected,storage\nV1,B,2025-05-01,frozen\nV2,B,,frozen\n';
const HEADER =
  'cross_id,pollination_date,seed_parent,pollen_parent,storage,pollen_collected,pollen_age_days,vial,outcome';

/** The age of one flower's pollen, and the codes of what was found about it. */
function aged(row: string, register: string | null = REGISTER) {
  const file = (name: string, text: string) => ({ name, bytes: new TextEncoder().encode(text) });
  const crosses = file('crosses.csv', `${HEADER}\nT1,2025-06-01,A,${row},fruit\n`);
  const season = readSeason(register === null ? [crosses] : [crosses, file('vials.csv', register)]);
  expect(season.files[0].used).toBe(1);
  return [season.crosses[0].ageDays, ...season.files[0].problems.map(({ code }) => code)];
}

describe('pollenAge', () => {
  // Days counted by hand: 1 May to 1 June are 31, 12 May to 1 June 20, 31 May to 1 June 1.
  it('comes from the date of collection, the days given, or the vial', () => {
    expect(aged('B,frozen,2025-05-12,,')).toEqual([20]);
    expect(aged('B,frozen,,9,')).toEqual([9]);
    expect(aged('B,frozen,,,V1')).toEqual([31]);
    expect(aged('B,frozen,2025-06-01,,')).toEqual([0]);
  });

  it('trusts the date before the days and the days before the vial, and says that they disagree', () => {
    expect(aged('B,frozen,2025-05-01,31,V1')).toEqual([31]);
    expect(aged('B,frozen,2025-05-12,31,V1')).toEqual([20, 'age-disagrees']);
    expect(aged('B,frozen,,9,V1')).toEqual([9, 'age-disagrees']);
    expect(aged('B,frozen,2025-05-12,,V1')).toEqual([20, 'age-disagrees']);
  });

  it('is 0 for fresh pollen, whatever its date; more than a day is a warning', () => {
    expect(aged('B,fresh,,,')).toEqual([0]);
    expect(aged('B,fresh,2025-05-31,,')).toEqual([0]);
    expect(aged('B,fresh,2025-05-30,,')).toEqual([0, 'fresh-collected-earlier']);
    expect(aged('B,fresh,,2,')).toEqual([0, 'fresh-collected-earlier']);
    expect(aged('B,fresh,2025-06-02,,')).toEqual([0, 'collected-after-pollination']);
  });

  it('is unknown for stored pollen that nothing dates, with one finding each', () => {
    expect(aged('B,frozen,,,')).toEqual([null, 'age-missing']);
    expect(aged('B,frozen,2025-06-02,,')).toEqual([null, 'collected-after-pollination']);
    expect(aged('B,frozen,2025-02-30,,')).toEqual([null, 'date-does-not-exist']);
    expect(aged('B,frozen,,,V9')).toEqual([null, 'vial-unknown']);
    expect(aged('B,frozen,,,V2')).toEqual([null, 'age-missing']);
    expect(aged('B,frozen,,,V9', null)).toEqual([null, 'age-missing']);
  });

  it('does not need a vial that no file lists, where the row gives the date', () => {
    expect(aged('B,frozen,2025-05-12,,V9', null)).toEqual([20]);
    expect(aged('B,frozen,2025-05-12,,V9')).toEqual([20, 'vial-unknown']);
  });

  it('finds a vial that was used before it was filled', () => {
    const late = REGISTER.replace('2025-05-01', '2025-06-05');
    expect(aged('B,frozen,,,V1', late)).toEqual([null, 'vial-before-collected']);
    expect(aged('B,frozen,2025-05-12,,V1', late)).toEqual([20, 'vial-before-collected']);
  });

  it('compares father and storage with the register', () => {
    expect(aged('C,frozen,,,V1')).toEqual([31, 'vial-father-differs']);
    expect(aged('B,room,,,V1')).toEqual([31, 'vial-storage-differs']);
  });

  it('past ten years is a warning', () => {
    expect(aged('B,frozen,2015-06-01,,')).toEqual([3653]);
    expect(aged('B,frozen,2015-05-31,,')).toEqual([3654, 'age-over-ten-years']);
  });
});
