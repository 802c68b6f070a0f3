import { describe, expect, it } from 'vitest';
import { type ReadOptions, readSeason } from '../../lib/season/read-season.ts';

const HEADER = 'cross_id,pollination_date,seed_parent,pollen_parent,storage,pollen_collected,outcome';

function read(
  dates: readonly (readonly [pollinated: string, collected: string])[],
  options: ReadOptions = {},
) {
  const rows = dates.map(([date, collected], i) => `T${i},${date},A,B,frozen,${collected},fruit`);
  const bytes = new TextEncoder().encode([HEADER, ...rows].join('\n'));
  const { crosses, files } = readSeason([{ name: 'x.csv', bytes }], options);
  return {
    dates: crosses.map(({ pollinationDate, pollenCollected }) => [pollinationDate, pollenCollected]),
    found: files[0].problems.map(({ code, column, details }) => [code, column, details.row ?? null]),
  };
}

describe('dateFormsOf', () => {
  it("reads a column of a spreadsheet's own numbers, and names the first", () => {
    // 45809 is 2025-06-01 in the 1900 system: 45658 is 2025-01-01 (from memory), and 151 days of January to May follow.
    expect(
      read([
        ['45809', '45717'],
        ['45810', ''],
      ]),
    ).toEqual({
      dates: [
        ['2025-06-01', '2025-03-01'],
        ['2025-06-02', null],
      ],
      found: [
        ['date-serial-read', 'pollination_date', 2],
        ['date-serial-read', 'pollen_collected', 2],
        ['age-missing', null, null],
      ],
    });
  });

  it('reads them in the system that the grower names, without a notice', () => {
    expect(read([['44347', '44255']], { dateSystem: 1904 })).toEqual({
      dates: [['2025-06-01', '2025-03-01']],
      found: [],
    });
  });

  it('takes a number among other dates for a fault', () => {
    const { dates, found } = read([
      ['2025-06-01', '2025-03-01'],
      ['45810', '2025-03-01'],
    ]);
    expect(dates).toHaveLength(1);
    expect(found).toEqual([['date-serial', 'pollination_date', null]]);
  });

  it('tells two-digit years behind names of months as well', () => {
    expect(read([['3. Mai 25', '2025-03-01']])).toEqual({
      dates: [['2025-05-03', '2025-03-01']],
      found: [['two-digit-years', 'pollination_date', 2]],
    });
  });
});
