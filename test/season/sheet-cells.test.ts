import { describe, expect, it } from 'vitest';
import { columnOf, sheetRows, unescaped } from '../../lib/season/sheet-cells.ts';
import { ZipFault } from '../../lib/season/zip.ts';

const CONTEXT = { texts: ['zero', 'one'], styles: ['number', 'day', 'month'], dateSystem: 1900 } as const;
const rows = (xml: string) => sheetRows(`<worksheet><sheetData>${xml}</sheetData></worksheet>`, CONTEXT);

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

describe('sheetRows', () => {
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
