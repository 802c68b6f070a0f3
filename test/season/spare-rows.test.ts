import { describe, expect, it } from 'vitest';
import { readSeason } from '../../lib/season/read-season.ts';

const HEADER = 'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome,seeds,remarks on it';
const ROW = 'T1,2025-06-01,A,B,fresh,fruit,12,';

function found(header: string, ...rows: readonly string[]) {
  const [file] = readSeason([
    { name: 'x.csv', bytes: new TextEncoder().encode([header, ...rows].join('\n')) },
  ]).files;
  expect(file.used + file.leftOut).toBe(file.rows);
  const told = file.problems.filter(({ severity }) => severity !== 'notice');
  return told.map(({ code, row, value }) => [code, row, value]);
}

describe('spareRow', () => {
  it.each(['Summe', 'TOTAL:', 'Gesamt 2025', 'Suma', 'Total général', 'Σ', 'Total fruits', 'Sub-total (12)'])(
    'takes a row that begins with %s for a total, one finding',
    (word) => {
      expect(found(HEADER, ROW, `${word},,,,,1,12,`)).toEqual([['total-row', 3, word]]);
      expect(found(HEADER, ROW, `,,${word},,,1,12,`)).toEqual([['total-row', 3, word]]);
      expect(found(HEADER, ROW, `,,,,,,,${word}`)).toEqual([['total-row', 3, word]]);
      // In a row that lacks cells, and above more rows.
      expect(found(HEADER, ROW, `${word},,12`, ROW.replace('T1', 'T2'))).toEqual([['total-row', 3, word]]);
    },
  );

  it('takes a tag written out in advance, or a remark, for one finding', () => {
    expect(found(HEADER, ROW, 'T2,,,,,,,')).toEqual([['row-nearly-blank', 3, 'T2']]);
    expect(found(HEADER, ROW, 'all of them in the greenhouse')).toEqual([
      ['row-nearly-blank', 3, 'all of them in the greenhouse'],
    ]);
    expect(found(HEADER, ROW, ',,,,,,7,')).toEqual([['row-nearly-blank', 3, '7']]);
  });

  it('leaves records to the checks of their cells', () => {
    expect(found(HEADER, ROW, 'T2,,A,B,fresh,fruit,,')).toEqual([['cell-blank', 3, '']]);
    expect(found(HEADER, 'Total,2025-06-01,Total,Summe,fresh,fruit,12,')).toEqual([]);
  });

  it('takes the last row of a list of flowers or vials for a total, but no plant by a longer name', () => {
    expect(found('seed_parent,flowers', 'A,3', 'B,4', 'Total,7')).toEqual([['total-row', 4, 'Total']]);
    expect(found('seed_parent,flowers', 'Total,3', 'B,4', 'Total Eclipse,7')).toEqual([]);
    expect(
      found('vial,pollen_parent,collected,storage,doses_left', 'V1,A,2025-06-01,frozen,3', 'Gesamt,,,,3'),
    ).toEqual([['total-row', 3, 'Gesamt']]);
  });
});
