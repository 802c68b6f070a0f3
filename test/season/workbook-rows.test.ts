import { describe, expect, it } from 'vitest';
import { questions } from '../../lib/season/problems.ts';
import { readSeason } from '../../lib/season/read-season.ts';
import { workbookRows } from '../../lib/season/workbook-rows.ts';
import { inlineRow, madeWorkbook } from './workbook-files.ts';

const CROSSES = 'cross_id pollination_date seed_parent pollen_parent storage outcome'.split(' ');
const VIALS = 'vial pollen_parent collected storage'.split(' ');
const crosses = inlineRow(2, ...CROSSES) + inlineRow(5, 'T1', '2025-06-01', 'A', 'B', 'fresh', 'fruit');

function read(...sheets: { name: string; rows: string }[]) {
  return readSeason([{ name: 'book.xlsx', bytes: madeWorkbook({ sheets }) }]);
}

describe('workbookRows', () => {
  it('fills rows up to the widest, so that a blank cell at the end is no missing one', () => {
    const [rows] = workbookRows(
      madeWorkbook({
        sheets: [{ name: 'A', rows: inlineRow(1, ...VIALS, 'note') + inlineRow(2, 'V1', 'B') }],
      }),
      new Map(),
    );
    expect(rows.rows.map(({ cells }) => cells.length)).toEqual([5, 5]);
  });

  it('reads one sheet without a word, with rows as the spreadsheet counts them', () => {
    const {
      crosses: [cross],
      files,
    } = read({ name: 'A', rows: crosses });
    expect(files).toMatchObject([
      { file: 'book.xlsx', kind: 'crosses', encoding: 'xlsx', rows: 1, used: 1, problems: [] },
    ]);
    expect([cross.row, cross.line]).toEqual([5, 5]);
  });

  it('reads each sheet that is understood, and says which', () => {
    const vials = inlineRow(1, ...VIALS) + inlineRow(2, 'V1', 'B', '2025-05-01', 'frozen');
    const season = read(
      { name: 'Notes', rows: inlineRow(1, 'hello') },
      { name: 'Flowers', rows: crosses },
      { name: 'Pollen', rows: vials },
    );
    expect(season.files.map(({ file, kind, used }) => [file, kind, used])).toEqual([
      ['book.xlsx, sheet Flowers', 'crosses', 1],
      ['book.xlsx, sheet Pollen', 'vials', 1],
    ]);
    expect(
      season.files.map(({ problems }) => problems.map(({ code, details }) => [code, details.others])),
    ).toEqual([[['sheet-read', 'Notes']], [['sheet-read', '']]]);
    expect(questions(season)).toEqual([]);
  });

  it('passes over a hidden sheet beside one that shows, and tells of hidden rows and joined cells', () => {
    const rows =
      inlineRow(1, ...CROSSES) +
      inlineRow(2, 'T1', '2025-06-01', 'A', 'B', 'fresh', 'fruit') +
      inlineRow(3, 'T2', '', 'A', 'B', 'fresh', 'none').replace('<row ', '<row hidden="1" ');
    const after = '<mergeCells><mergeCell ref="B2:B3"/></mergeCells>';
    const sheets = [
      { name: 'Old', rows: crosses, hidden: true },
      { name: 'New', rows, after },
    ];
    const season = readSeason([{ name: 'book.xlsx', bytes: madeWorkbook({ sheets }) }]);
    expect(season.crosses.map(({ crossId, pollinationDate }) => [crossId, pollinationDate])).toEqual([
      ['T1', '2025-06-01'],
      ['T2', '2025-06-01'],
    ]);
    expect(
      season.files.map(({ problems }) => problems.map(({ code, value, details }) => [code, value, details])),
    ).toEqual([
      [
        ['sheet-read', null, { sheet: 'New', others: 'Old' }],
        ['rows-hidden', null, { rows: 1 }],
        ['cells-merged', 'B2:B3', {}],
      ],
    ]);
    const alone = madeWorkbook({ sheets: sheets.slice(0, 1) });
    expect(readSeason([{ name: 'book.xlsx', bytes: alone }]).crosses).toHaveLength(1);
  });

  it('reads days without a style by the system of the workbook itself', () => {
    const flower = inlineRow(2, 'T1', '44347', 'A', 'B', 'fresh', 'fruit');
    const sheets = [{ name: 'A', rows: inlineRow(1, ...CROSSES) + flower }];
    const bytes = madeWorkbook({ sheets, workbookPr: '<workbookPr date1904="1"/>' });
    const [cross] = readSeason([{ name: 'b.xlsx', bytes }]).crosses;
    expect(cross.pollinationDate).toBe('2025-06-01');
    const said = readSeason([{ name: 'b.xlsx', bytes }], { dateSystem: 1900 }).crosses[0];
    expect(said.pollinationDate).toBe('2021-05-31');
  });

  it("takes a spreadsheet's own errors for faults of their cells", () => {
    const rows =
      inlineRow(1, ...CROSSES) +
      inlineRow(2, 'T1', '2025-06-01', '#REF!', 'B', 'fresh', 'fruit') +
      inlineRow(3, 'T2', '#VALUE!', 'A', 'B', 'fresh', '#N/A');
    const [file] = read({ name: 'A', rows }).files;
    expect(file.problems.map(({ code, row, column, value }) => [code, row, column, value])).toEqual([
      ['cell-error', 2, 'seed_parent', '#REF!'],
      ['cell-error', 3, 'pollination_date', '#VALUE!'],
      ['cell-error', 3, 'outcome', '#N/A'],
    ]);
  });

  it('says of an empty workbook that it is empty', () => {
    expect(read({ name: 'A', rows: '' }).files[0].problems.map(({ code }) => code)).toEqual(['file-empty']);
  });
});
