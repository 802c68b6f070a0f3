import { describe, expect, it } from 'vitest';
import { NameTally } from '../../lib/season/name-tally.ts';
import { RowCells } from '../../lib/season/row-cells.ts';
import { layOut } from '../../lib/season/sheet.ts';

const bytes = new TextEncoder().encode('seed_parent,flowers\nA,1\nB,1\n');
const [sheet] = layOut({ name: 'x.csv', bytes }, { map: new Map() });
const [one, two] = sheet.rows.map((row) => new RowCells(sheet, row));

describe('NameTally', () => {
  it('counts uses and keeps the first place', () => {
    const tally = new NameTally();
    tally.add('__proto__', 'seed_parent', one);
    tally.add('A', 'seed_parent', one);
    tally.add('__proto__', 'pollen_parent', two);
    expect(
      tally.names().map(({ name, uses, first }) => [name, uses, first.column, first.cells.place.row]),
    ).toEqual([
      ['__proto__', 2, 'seed_parent', 2],
      ['A', 1, 'seed_parent', 2],
    ]);
    expect([tally.has('A'), tally.has('constructor')]).toEqual([true, false]);
  });
});
