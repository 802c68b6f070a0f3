import { describe, expect, it } from 'vitest';
import { MOST_BYTES, readRows } from '../../lib/season/read.ts';

const NO_MAP = new Map<string, string>();
const read = (text: string) => readRows(new TextEncoder().encode(text), NO_MAP)[0];

describe('readRows', () => {
  it('finds the header below title lines and passes over blank rows', () => {
    const rows = read('Night garden 2025\n\nseed_parent,flowers\n\nA,3\n,\nB,4\n');
    expect(rows.titles).toBe(1);
    expect(rows.rows.map(({ line, row, cells }) => [line, row, cells[0]])).toEqual([
      [3, 3, 'seed_parent'],
      [5, 5, 'A'],
      [7, 7, 'B'],
    ]);
  });

  it.each([',', ';', '\t', '|'])('finds the separator %j by the header that it makes', (delimiter) => {
    const rows = read(`seed_parent${delimiter}flowers\n"A, B; C | D"${delimiter}3\n`);
    expect(rows.delimiter).toBe(delimiter);
    expect(rows.rows[1].cells).toEqual(['A, B; C | D', '3']);
  });

  it('takes the separator of a leading sep= line, which a spreadsheet does not show as a row', () => {
    const rows = read('sep=^\r\nseed_parent^flowers\r\nA^3\r\n');
    expect(rows.delimiter).toBe('^');
    expect(rows.rows.map(({ line, row }) => [line, row])).toEqual([
      [2, 1],
      [3, 2],
    ]);
  });

  it('reads on as the lines stand after a quotation mark that is never closed', () => {
    const rows = read('seed_parent,flowers\n"A\nB",3\nC,4\n"D,5\nE,6\n');
    expect(rows.openQuote?.line).toBe(5);
    expect(rows.rows.map(({ line, cells }) => [line, ...cells])).toEqual([
      [1, 'seed_parent', 'flowers'],
      [2, 'A\nB', '3'],
      [4, 'C', '4'],
      [5, '"D', '5'],
      [6, 'E', '6'],
    ]);
  });

  it('counts a line end of any kind inside cells once', () => {
    expect(read('seed_parent,flowers\r\n"A\r\nB\rC\nD",3\r\nE,4').rows.at(-1)?.line).toBe(6);
  });

  it('says why there is nothing to read', () => {
    expect(read('').fault).toBe('file-empty');
    expect(read(' \n ,\n').fault).toBe('file-empty');
    expect(read('\u0001\u0002\u0003').fault).toBe('not-text');
    expect(read('PK\u0003\u0004').fault).toBe('workbook-broken');
    expect(read('%PDF-1.7\n')).toMatchObject({ fault: 'other-format', format: 'pdf' });
  });

  it('reads no file above its limit, whatever stands in it', () => {
    const bytes = new TextEncoder().encode(`seed_parent,flowers\nA,3\n`.padEnd(MOST_BYTES + 1));
    expect(readRows(bytes, NO_MAP)).toMatchObject([{ fault: 'file-too-large', rows: [] }]);
    expect(readRows(bytes.subarray(0, -1), NO_MAP)).toMatchObject([{ fault: null, rows: { length: 2 } }]);
  });

  it('reads a cell of 200 kB and a row of 10,000 columns', () => {
    const long = 'x'.repeat(200_000);
    expect(read(`seed_parent,flowers\n${long},3\n`).rows[1].cells[0]).toHaveLength(200_000);
    const wide = Array.from({ length: 10_000 }, (_, i) => `c${i}`).join(',');
    expect(read(`${wide},seed_parent,flowers\n${wide},A,3\n`).rows[1].cells).toHaveLength(10_002);
  });
});
