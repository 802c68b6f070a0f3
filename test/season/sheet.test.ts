import { describe, expect, it } from 'vitest';
import { foldedMap, layOut } from '../../lib/season/sheet.ts';

const source = (text: string) => ({ name: 'x.csv', bytes: new TextEncoder().encode(text) });
const NO_MAP = new Map<string, string>();

describe('layOut', () => {
  it('places our columns and counts the rows below the header', () => {
    const [sheet] = layOut(source('Flowers;moon;MOTHER\n3;full;A\n4;new;B\n'), { map: NO_MAP });
    expect(sheet).toMatchObject({ kind: 'flowers', delimiter: ';', encoding: 'utf-8', readable: true });
    expect([...sheet.columns]).toEqual([
      ['seed_parent', { index: 2, header: 'MOTHER' }],
      ['flowers', { index: 0, header: 'Flowers' }],
    ]);
    expect(sheet.rows.map(({ line }) => line)).toEqual([2, 3]);
  });

  it('decides the date order of each column for itself', () => {
    const text =
      'seed_parent,flowers,opens_from,opens_to\nA,1,25/06/2026,06/28/2026\nB,1,01/06/2026,06/02/2026\n';
    const [sheet] = layOut(source(text), { map: NO_MAP });
    expect([...sheet.dateForms]).toEqual([
      ['opens_from', 'dmy'],
      ['opens_to', 'mdy'],
    ]);
  });

  it('asks where a column gives no evidence and its neighbours disagree or give none', () => {
    const [unclear] = layOut(source('seed_parent,flowers,opens_from\nA,1,01/06/2026\n'), { map: NO_MAP });
    expect(unclear.readable).toBe(false);
    expect(unclear.problems.map(({ code }) => code)).toEqual(['date-order-unclear']);
    // The only date of opens_to is the same day either way, which says nothing about its neighbour.
    const [same] = layOut(source('seed_parent,flowers,opens_from,opens_to\nA,1,01/06/2026,06/06/2026\n'), {
      map: NO_MAP,
    });
    expect(same.problems.map(({ code, column }) => [code, column])).toEqual([
      ['date-order-unclear', 'opens_from'],
    ]);
  });

  it('takes the order that the grower gives for all columns, without a question or a notice', () => {
    const [sheet] = layOut(source('seed_parent,flowers,opens_from\nA,1,01/06/2026\n'), {
      map: NO_MAP,
      dateOrder: 'mdy',
    });
    expect([...sheet.dateForms]).toEqual([['opens_from', 'mdy']]);
    expect(sheet.problems).toEqual([]);
  });

  it('names a missing column once each, and reads no row then', () => {
    const [sheet] = layOut(source('cross_id,pollination_date,seed_parent\nT1,2025-06-01,A\n'), {
      map: NO_MAP,
    });
    expect(sheet.problems.map(({ code, details }) => [code, details.column])).toEqual([
      ['column-missing', 'pollen_parent'],
      ['column-missing', 'storage'],
      ['column-missing', 'outcome'],
    ]);
    expect([sheet.readable, sheet.rows.length]).toEqual([false, 1]);
  });
});

describe('foldedMap', () => {
  it('compares headers as it compares all headers, and maps no blank one', () => {
    expect([
      ...foldedMap(
        new Map([
          ['Mutter-Pflanze', 'seed_parent'],
          [' ', 'outcome'],
        ]),
      ),
    ]).toEqual([['mutterpflanze', 'seed_parent']]);
  });
});
