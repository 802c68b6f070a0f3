import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { asMeant, csvText, withoutFormula } from '../../lib/season/csv-text.ts';

/** Cells that a spreadsheet could run, quote or split. */
const cell = fc.oneof(
  fc.string({ unit: 'grapheme' }),
  fc.string({
    unit: fc.constantFrom("'", '=', '+', '-', '@', '\t', '\r', '\n', '"', ',', ';', '|', ' ', 'a', '１'),
  }),
);

// The signs are those of OWASP's page "CSV Injection" (tab, CR, LF and the full-width forms from memory).
describe('withoutFormula', () => {
  it.each(['=1+1', '+49 1', '-x', '@me', '\tx', '\rx', '\nx', '＝1', "'=1", "''-x"])('marks %j', (text) => {
    expect(withoutFormula(text)).toBe(`'${text}`);
  });

  it.each(['', 'a=1', "'", "'a", "O'Hara", ' =1', '1-2', '×'])('leaves %j as it stands', (text) => {
    expect([withoutFormula(text), asMeant(text)]).toEqual([text, text]);
  });

  it('never lets a formula through, and is undone by asMeant', () => {
    fc.assert(
      fc.property(cell, (text) => {
        const safe = withoutFormula(text);
        expect('=+-@\t\r\n＝＋－＠'.includes(safe.charAt(0)) && safe !== '').toBe(false);
        expect(asMeant(safe)).toBe(text);
      }),
    );
  });
});

describe('csvText', () => {
  it('is RFC 4180 with a byte-order mark', () => {
    expect(
      csvText([
        ['a', 'b"c'],
        ['d,e', 'f\ng'],
        ['', ' h'],
      ]),
    ).toBe('\uFEFFa,"b""c"\r\n"d,e","f\ng"\r\n," h"\r\n');
  });

  // csv-parse with its defaults, not as this project's reader calls it.
  it('is read back cell by cell', () => {
    fc.assert(
      fc.property(fc.array(fc.array(cell, { minLength: 2, maxLength: 2 }), { minLength: 1 }), (rows) => {
        const read: string[][] = parse(csvText(rows), { bom: true, record_delimiter: '\r\n' });
        expect(read.map((cells) => cells.map(asMeant))).toEqual(rows);
      }),
    );
  });
});
