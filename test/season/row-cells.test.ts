import { describe, expect, it } from 'vitest';
import { RowCells } from '../../lib/season/row-cells.ts';
import { layOut } from '../../lib/season/sheet.ts';

/** The cells of the first row of a flowers file, and the sheet that its findings go to. */
function firstRow(line: string) {
  const bytes = new TextEncoder().encode(`Mother,flowers,opens_from\n${line}\n`);
  const [sheet] = layOut({ name: 'flowers.csv', bytes }, { map: new Map() });
  sheet.problems.length = 0;
  return { cells: new RowCells(sheet, sheet.rows[0]), sheet };
}

describe('RowCells', () => {
  it('reads cells by our column names; a column that the file lacks is blank', () => {
    const { cells, sheet } = firstRow(' A ,12,2026-06-01');
    expect(cells.name('seed_parent', true)).toBe('A');
    expect(cells.number('flowers', { highest: 100, whole: true })).toBe(12);
    expect(cells.date('opens_from')).toBe('2026-06-01');
    expect([cells.raw('opens_to'), cells.date('opens_to'), cells.text('note')]).toEqual(['', null, null]);
    expect([cells.leftOut, sheet.problems]).toEqual([false, []]);
  });

  it('reports a fault at the grower’s own header, with the cell as it stands', () => {
    const { cells, sheet } = firstRow('A,a dozen,2026-02-30');
    expect(cells.number('flowers', { highest: 100, required: true })).toBeNull();
    expect(cells.leftOut).toBe(true);
    expect(cells.name('seed_parent')).toBe('A');
    cells.report('warning', 'own-pollen', { column: 'seed_parent' });
    expect(sheet.problems.map(({ column, value, line }) => [column, value, line])).toEqual([
      ['flowers', 'a dozen', 2],
      ['Mother', 'A', 2],
    ]);
  });

  it('leaves the row out for a fault in a required cell only', () => {
    const { cells } = firstRow('A,12,2026-02-30');
    expect(cells.date('opens_from')).toBeNull();
    expect([cells.leftOut, cells.reported('opens_from'), cells.reported('flowers')]).toEqual([
      false,
      true,
      false,
    ]);
    cells.date('opens_from', true);
    expect(cells.leftOut).toBe(true);
  });

  it('leaves out a row of another length before any cell is read', () => {
    expect(firstRow('A').cells.leftOut).toBe(true);
    expect(firstRow('A,12,,x').cells.leftOut).toBe(true);
    expect(firstRow('A,12,,,').cells.leftOut).toBe(false);
  });

  it('uses a row that lacks blank cells at its end, and says so once', () => {
    const bytes = new TextEncoder().encode('Mother,flowers,opens_from,,\nA,12\nB,3\nC,4,2026-06-01\n');
    const [sheet] = layOut({ name: 'flowers.csv', bytes }, { map: new Map() });
    const rows = sheet.rows.map((row) => new RowCells(sheet, row));
    expect(rows.map(({ leftOut }) => leftOut)).toEqual([false, false, false]);
    expect(sheet.problems.map(({ code, row, details }) => [code, row, details.meant])).toEqual([
      ['column-guessed', 1, undefined],
      ['row-short', 2, 'opens_from'],
    ]);
  });
});
