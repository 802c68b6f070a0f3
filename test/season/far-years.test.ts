import { describe, expect, it } from 'vitest';
import { readSeason } from '../../lib/season/read-season.ts';

/** The rows called odd in a file of these pollinations, in this order; the first flower stands in row 2. */
function oddRows(dates: readonly string[]): number[] {
  const rows = dates.map((date, i) => `T${i},${date},A,B,fresh,fruit`);
  const text = ['cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome', ...rows].join('\n');
  const [file] = readSeason([{ name: 'crosses.csv', bytes: new TextEncoder().encode(text) }]).files;
  expect(new Set(file.problems.map(({ code }) => code)).size).toBeLessThan(2);
  expect(file.used).toBe(dates.length);
  return file.problems.filter(({ code }) => code === 'year-stands-alone').map(({ row }) => row);
}

const season = (year: number, flowers: number): string[] =>
  Array.from({ length: flowers }, (_, i) => `${year}-06-${String(10 + (i % 15))}`);

// The bounds of five years and a tenth of the flowers: common practice, no source.
describe('reportFarYears', () => {
  it('finds a year that was mistyped, later or earlier, wherever it stands', () => {
    expect(oddRows(['2052-06-12', ...season(2025, 9)])).toEqual([2]);
    expect(oddRows([...season(2025, 3), '2052-06-12'])).toEqual([5]);
    expect(oddRows([...season(2025, 5), '1952-06-12', ...season(2025, 5)])).toEqual([7]);
    expect(oddRows([...season(2025, 20), '2052-06-12', '2005-06-12'])).toEqual([22, 23]);
  });

  it('finds several slips in a longer file, and the far one of seasons that follow each other', () => {
    expect(oddRows([...season(2025, 28), '2052-06-12', '2052-06-13'])).toEqual([30, 31]);
    expect(oddRows(['1996-06-01', ...[2015, 2018, 2021, 2024].flatMap((year) => season(year, 3))])).toEqual([
      2,
    ]);
  });

  it('lets honest seasons be, many years of them, and one after a long break', () => {
    expect(oddRows([2001, 2005, 2010, 2014, 2019, 2023].flatMap((year) => season(year, 2)))).toEqual([]);
    expect(oddRows([...season(2010, 2), ...season(2025, 12)])).toEqual([]);
    expect(oddRows([...season(2010, 8), ...season(2025, 8)])).toEqual([]);
    expect(oddRows(['2020-06-11', ...season(2025, 12).map(() => '2025-06-11')])).toEqual([]);
  });

  it('does not tell from three flowers which is the odd one', () => {
    expect(oddRows(['2025-06-12', '2025-06-13', '2052-06-12'])).toEqual([]);
  });

  it('names the nearest of the others', () => {
    const text = [
      'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome',
      ...[...season(2025, 4), '2052-06-12'].map((date, i) => `T${i},${date},A,B,fresh,fruit`),
    ].join('\n');
    const [{ problems }] = readSeason([{ name: 'a.csv', bytes: new TextEncoder().encode(text) }]).files;
    expect(problems).toMatchObject([{ column: 'pollination_date', details: { nearest: '2025-06-13' } }]);
  });

  it('finds stray years of collection and of flowering too, but not pollen that is told as too old', () => {
    const bytes = (...lines: string[]) => new TextEncoder().encode(lines.join('\n'));
    const frozen = (i: number, collected: string) => `T${i},2025-07-01,A,B,frozen,${collected},none`;
    const { files, asOf } = readSeason([
      {
        name: 'crosses.csv',
        bytes: bytes(
          'cross_id,pollination_date,seed_parent,pollen_parent,storage,pollen_collected,outcome',
          ...[...season(2025, 30), '2018-05-03', '1998-05-03', '2052-05-03'].map((day, i) => frozen(i, day)),
        ),
      },
      {
        name: 'vials.csv',
        bytes: bytes(
          'vial,pollen_parent,collected,storage',
          'V1,A,2025-05-01,frozen',
          'V2,A,2015-05-01,room',
        ),
      },
      {
        name: 'flowers.csv',
        bytes: bytes('seed_parent,flowers,opens_from', 'A,3,2026-06-01', 'B,3,2062-06-01'),
      },
    ]);
    expect(files.map(({ problems }) => problems.map(({ code, row, column }) => [code, row, column]))).toEqual(
      [
        [
          ['year-stands-alone', 32, 'pollen_collected'],
          ['age-over-ten-years', 33, 'pollen_collected'],
          ['collected-after-pollination', 34, 'pollen_collected'],
        ],
        [['year-stands-alone', 3, 'collected']],
        [['year-stands-alone', 3, 'opens_from']],
      ],
    );
    // A date that is not believed does not move the day up to which things have happened.
    expect(asOf).toBe('2025-07-01');
  });
});
