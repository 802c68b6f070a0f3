import { describe, expect, it } from 'vitest';
import { layOut } from '../../lib/season/sheet.ts';
import { vialRows } from '../../lib/season/vials.ts';

function rows(...lines: string[]) {
  const bytes = new TextEncoder().encode(
    ['Tube;Father;date collected;storage;doses left;thaws', ...lines].join('\n'),
  );
  const [sheet] = layOut({ name: 'vials.csv', bytes }, { map: new Map() });
  return { vials: vialRows(sheet).map(({ vial }) => vial), sheet };
}

describe('vialRows', () => {
  it('reads a pollen lot, with or without its doses and thaws', () => {
    const { vials } = rows('V1;Ivo;2025-06-01;freezer;4;1', 'V2;Ivo;2025-06-02;fridge;;');
    expect(vials).toEqual([
      {
        file: 'vials.csv',
        line: 2,
        row: 2,
        vial: 'V1',
        pollenParent: 'Ivo',
        collected: '2025-06-01',
        storage: 'frozen',
        dosesLeft: 4,
        thaws: 1,
        note: null,
      },
      {
        file: 'vials.csv',
        line: 3,
        row: 3,
        vial: 'V2',
        pollenParent: 'Ivo',
        collected: '2025-06-02',
        storage: 'refrigerated',
        dosesLeft: null,
        thaws: null,
        note: null,
      },
    ]);
  });

  it('leaves out a lot without a date, and drops a number of doses that cannot be', () => {
    const { vials, sheet } = rows('V1;Ivo;;frozen;4;1', 'V2;Ivo;2025-06-02;frozen;-1;0');
    expect(vials.map(({ vial, dosesLeft, thaws }) => [vial, dosesLeft, thaws])).toEqual([['V2', null, 0]]);
    const found = sheet.problems
      .filter(({ severity }) => severity !== 'notice')
      .map(({ code, line }) => [code, line]);
    expect(found).toEqual([
      ['cell-blank', 2],
      ['number-negative', 3],
    ]);
  });
});
