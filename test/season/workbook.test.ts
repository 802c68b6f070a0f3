import { zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import writeExcelFile from 'write-excel-file/node';
import { readWorkbook, sharedTexts } from '../../lib/season/workbook.ts';
import { inlineRow, madeWorkbook, workbookParts } from './workbook-files.ts';

describe('readWorkbook', () => {
  // Written by write-excel-file, a writer from outside the project.
  it('reads what an outside writer wrote', async () => {
    const date = new Date(Date.UTC(2025, 5, 1));
    const buffer = await writeExcelFile([
      [{ value: 'name' }, { value: 'n' }, { value: 'day' }, { value: 'yes' }],
      [
        { value: ' Zoë & <Ivo> ' },
        { value: 3.5, type: Number },
        { value: date, type: Date, format: 'dd.mm.yyyy' },
        { value: true, type: Boolean },
      ],
    ]).toBuffer();
    expect(readWorkbook(new Uint8Array(buffer))).toMatchObject({
      sheets: [
        {
          rows: [
            { row: 1, cells: ['name', 'n', 'day', 'yes'] },
            { row: 2, cells: [' Zoë & <Ivo> ', '3.5', '2025-06-01', 'true'] },
          ],
        },
      ],
    });
  });

  it('counts days from 1904 where the workbook says so', () => {
    const styles = '<cellXfs><xf numFmtId="14"/></cellXfs>';
    const sheets = [{ name: 'A', rows: '<row r="1"><c s="0"><v>44347</v></c></row>' }];
    const book = readWorkbook(madeWorkbook({ sheets, styles, workbookPr: '<workbookPr date1904="1"/>' }));
    expect(book).toMatchObject({ sheets: [{ rows: [{ cells: ['2025-06-01'] }] }] });
  });

  it('reads several sheets by their names', () => {
    const sheets = ['One', 'Two &amp; Three'].map((name) => ({ name, rows: inlineRow(1, name) }));
    expect(readWorkbook(madeWorkbook({ sheets }))).toEqual({
      dateSystem: 1900,
      sheets: ['One', 'Two & Three'].map((name) => ({
        ...{ name, hidden: false, hiddenRows: 0, merged: [] },
        rows: [{ row: 1, cells: [name] }],
      })),
    });
  });

  it('says why a file cannot be read', () => {
    const whole = madeWorkbook({ sheets: [{ name: 'A', rows: inlineRow(1, 'x') }] });
    expect(readWorkbook(whole.subarray(0, whole.length >> 1))).toEqual({ fault: 'workbook-broken' });
    const lacking = workbookParts({ sheets: [{ name: 'A', rows: inlineRow(1, 'x') }] });
    delete lacking['xl/worksheets/sheet0.xml'];
    expect(readWorkbook(zipSync(lacking))).toEqual({ fault: 'workbook-broken' });
    const badXml = workbookParts({ sheets: [{ name: 'A', rows: '<row><c>' }] });
    expect(readWorkbook(zipSync(badXml))).toEqual({ fault: 'workbook-broken' });
    expect(readWorkbook(zipSync({ 'content.xml': new Uint8Array(9) }))).toEqual({
      fault: 'other-format',
      format: 'archive',
    });
    const old = Uint8Array.of(0xd0, 0xcf, 0x11, 0xe0, 1, 2, 3);
    expect(readWorkbook(old)).toEqual({ fault: 'spreadsheet-file' });
    const locked = [...'EncryptedPackage'].flatMap((letter) => [letter.charCodeAt(0), 0]);
    expect(readWorkbook(Uint8Array.from([...old, ...locked]))).toEqual({ fault: 'workbook-locked' });
  });

  it('stops at a workbook that holds far more than it weighs', () => {
    const parts = workbookParts({ sheets: [{ name: 'A', rows: '' }] });
    const bomb = { ...parts, 'xl/worksheets/sheet0.xml': new Uint8Array(310_000_000).fill(32) };
    expect(readWorkbook(zipSync(bomb, { level: 1 }))).toEqual({ fault: 'workbook-too-large' });
  });
});

describe('sharedTexts', () => {
  it('joins formatted runs and leaves readings out', () => {
    expect(
      sharedTexts(
        '<sst><si><t>a</t></si><si><r><t>b</t></r><r><t> c</t></r><rPh><t>d</t></rPh></si><si><t/></si></sst>',
      ),
    ).toEqual(['a', 'b c', '']);
  });
});
