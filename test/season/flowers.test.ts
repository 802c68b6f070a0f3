import { describe, expect, it } from 'vitest';
import { flowerRows } from '../../lib/season/flowers.ts';
import { layOut } from '../../lib/season/sheet.ts';

function rows(...lines: string[]) {
  const bytes = new TextEncoder().encode(['seed_parent,flowers,opens_from,opens_to', ...lines].join('\n'));
  const [sheet] = layOut({ name: 'flowers.csv', bytes }, { map: new Map() });
  return {
    flowers: flowerRows(sheet).map(({ flowers }) => flowers),
    codes: sheet.problems.map(({ code }) => code),
  };
}

describe('flowerRows', () => {
  it('reads expected flowers, with or without the days on which they open', () => {
    expect(rows('A,12,2026-06-01,2026-06-20', 'B,0,,').flowers).toEqual([
      {
        file: 'flowers.csv',
        line: 2,
        row: 2,
        seedParent: 'A',
        flowers: 12,
        opensFrom: '2026-06-01',
        opensTo: '2026-06-20',
      },
      { file: 'flowers.csv', line: 3, row: 3, seedParent: 'B', flowers: 0, opensFrom: null, opensTo: null },
    ]);
  });

  it('takes one plant on other days as another wave, on the same days as a likely repeat', () => {
    expect(rows('A,12,2026-06-01,2026-06-03', 'A,5,2026-07-10,2026-07-12').codes).toEqual([]);
    expect(rows('A,12,,', 'A,5,,').codes).toEqual(['flowers-repeated']);
  });

  it('leaves out a row without a whole number of flowers', () => {
    expect(rows('A,,,', 'B,2.5,,', 'C,3,,')).toMatchObject({
      flowers: [{ seedParent: 'C' }],
      codes: ['cell-blank', 'number-not-understood'],
    });
  });
});
