import { describe, expect, it } from 'vitest';
import { columnOf, sheetCells, unescaped } from '../../lib/season/sheet-cells.ts';
import { ZipFault } from '../../lib/season/zip.ts';

const CONTEXT = { texts: ['zero', 'one'], styles: ['number', 'day', 'month'], dateSystem: 1900 } as const;
const read = (xml: string, after = '') =>
  sheetCells(`<worksheet><sheetData>${xml}</sheetData>${after}</worksheet>`, CONTEXT);
const rows = (xml: string) => read(xml).rows;

describe('columnOf', () => {
  it('counts letters as columns', () => {
    expect(['A1', 'Z9', 'AA1', 'XFD1', 'XFE1', '11'].map(columnOf)).toEqual([0, 25, 26, 16_383, -1, -1]);
  });
});

describe('unescaped', () => {
  it('reads characters that XML cannot hold', () => {
    expect(unescaped('a_x000D_b_x005F_c_xyz_')).toBe('a\rb_c_xyz_');
  });
});

describe('sheetCells', () => {
  it('reads every kind of cell where it stands', () => {
    const xml =
      '<row r="3"><c r="B3" t="s"><v>1</v></c><c r="D3"><v>0.30000000000000004</v></c><c t="b"><v>1</v></c></row>' +
      '<row><c t="str"><f>A1</f><v>made</v></c><c t="e"><f>B1</f><v>#REF!</v></c>' +
      '<c t="inlineStr"><is><r><t>in</t></r><r><t>line</t></r><rPh><t>no</t></rPh></is></c><c t="d"><v>2025-06-01</v></c></row>';
    expect(rows(xml)).toEqual([
      { row: 3, cells: ['', 'one', '', '0.3', 'true'] },
      { row: 4, cells: ['made', '#REF!', 'inline', '2025-06-01'] },
    ]);
  });

  it('shows a number as its style does', () => {
    const xml =
      '<row r="1"><c s="1"><v>45809.5</v></c><c s="2"><v>45809</v></c><c s="0"><v>45809</v></c><c s="1"><v>3</v></c></row>';
    expect(rows(xml)[0].cells).toEqual(['2025-06-01', '2025-06', '45809', '3']);
  });

  it('passes over rows that hold nothing', () => {
    expect(rows('<row r="1"/><row r="2"><c r="A2" s="1"/></row><row r="9"><c><v>1</v></c></row>')).toEqual([
      { row: 9, cells: ['1'] },
    ]);
  });

  it('fills cells joined over rows, in one column and where rows are filled, and counts hidden rows', () => {
    const xml =
      '<row r="1"><c r="A1"><v>1</v></c><c r="B1" t="str"><v>Selma</v></c></row>' +
      '<row r="2" hidden="1"><c r="A2"><v>2</v></c><c r="B2" s="1"/></row><row r="3"><c r="A3"><v>3</v></c></row>' +
      '<row r="5"><c r="A5"><v>5</v></c></row>';
    const merges = ['B1:B4', 'A1:B1', 'C1:C9', 'nonsense'].map((ref) => `<mergeCell ref="${ref}"/>`).join('');
    expect(read(xml, `<mergeCells>${merges}</mergeCells>`)).toEqual({
      rows: [
        { row: 1, cells: ['1', 'Selma'] },
        { row: 2, cells: ['2', 'Selma'] },
        { row: 3, cells: ['3', 'Selma'] },
        { row: 5, cells: ['5'] },
      ],
      hiddenRows: 1,
      merged: ['B1:B4'],
    });
    const many = Array.from({ length: 40 }, () => '<mergeCell ref="A1:A1048576"/>').join('');
    expect(() => read(xml, many)).toThrow('too-large');
  });

  it('refuses rows and columns that no sheet has', () => {
    for (const xml of ['<row r="1048577"/>', '<row r="x"/>', '<row r="1"><c r="XFE1"><v>1</v></c></row>'])
      expect(() => rows(xml)).toThrow(ZipFault);
  });

  it('stops where blank cells between others would fill the memory', () => {
    const far = '<c r="XFD1"><v>1</v></c>';
    const many = Array.from({ length: 2000 }, (_, i) => `<row r="${i + 1}">${far}</row>`).join('');
    expect(() => rows(many)).toThrow('too-large');
  });
});
