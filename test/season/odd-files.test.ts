import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { unzipSync, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { readSeason } from '../../lib/season/read-season.ts';
import { problemWords } from '../../lib/words/english-problems.ts';
import { inlineRow, madeWorkbook } from './workbook-files.ts';

const HEADER = 'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome';
const ROW = 'T1,2025-06-01,A,B,fresh,fruit';
const utf8 = (text: string) => new TextEncoder().encode(text);

/** What must hold of any bytes: every row is accounted for, every finding has a sentence, nothing is thrown. */
function account(bytes: Uint8Array) {
  const { files } = readSeason([{ name: 'x', bytes }]);
  expect(files.length).toBeGreaterThan(0);
  for (const file of files) {
    expect(file.used + file.leftOut).toBe(file.rows);
    for (const problem of file.problems) {
      const { message, fix } = problemWords(problem);
      expect(message + fix).not.toMatch(/undefined|null|NaN|\[object/);
    }
  }
  return files.flatMap(({ problems }) => problems.map(({ code }) => code));
}

describe('odd files', () => {
  it('with a cell of 200 kB are read, and the sentence that cites it is short', () => {
    const long = 'x'.repeat(200_000);
    expect(account(utf8(`${HEADER}\nT1,${long},A,B,fresh,fruit`))).toEqual(['date-not-understood']);
    expect(account(utf8(`${HEADER}\nT1,2025-06-01,${long},${long}y,fresh,fruit`))).toEqual([]);
    const { files } = readSeason([{ name: 'x', bytes: utf8(`${HEADER}\nT1,${long},A,B,fresh,fruit`) }]);
    expect(problemWords(files[0].problems[0]).message.length).toBeLessThan(300);
  });

  it('with a header of 200 kB or 10,000 columns are read, and the columns counted', () => {
    expect(account(utf8(`${HEADER},${'x'.repeat(200_000)}\n${ROW},`))).toEqual(['column-unknown']);
    const many = Array.from({ length: 10_000 }, (_, i) => `c${i}`).join(',');
    const codes = account(utf8(`${HEADER},${many}\n${ROW},${many}`));
    expect(codes).toHaveLength(51);
    expect(codes.at(-1)).toBe('columns-unknown');
  });

  it('with a NUL in a cell lose that row alone; of NULs only, all', () => {
    expect(account(utf8(`${HEADER}\nT\0,2025-06-01,A,B,fresh,fruit\n${ROW}`))).toEqual(['control-character']);
    expect(account(new Uint8Array(5000))).toEqual(['not-text']);
  });

  it('of pictures, programs and folders of other files are refused with a message', () => {
    const png = Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0, 0, 13, 73, 72, 68, 82);
    expect(account(png)).toEqual(['other-format']);
    expect(account(zipSync({ 'photo.jpg': png }))).toEqual(['other-format']);
  });

  it('where a quotation mark is never closed are read on below it', () => {
    const codes = account(utf8(`${HEADER}\n"${ROW}\n${ROW.replace('T1', 'T2')}`));
    expect(codes).toEqual(['quote-not-closed']);
  });
});

describe('damaged files', () => {
  const clean = readFileSync(new URL('./fixtures/clean.csv', import.meta.url));
  const rows = inlineRow(1, ...HEADER.split(',')) + inlineRow(2, ...ROW.split(','));
  const workbook = madeWorkbook({
    sheets: [{ name: 'A', rows }],
    styles: '<cellXfs><xf numFmtId="14"/></cellXfs>',
  });

  /** Bytes changed, cut off, or doubled somewhere. */
  function damaged(whole: Uint8Array): fc.Arbitrary<Uint8Array> {
    const changes = fc.array(fc.tuple(fc.nat(whole.length - 1), fc.nat(255)), { maxLength: 20 });
    return fc.tuple(changes, fc.nat(whole.length), fc.nat(whole.length)).map(([list, from, to]) => {
      const bytes = Uint8Array.from([...whole.subarray(0, from), ...whole.subarray(to)]);
      for (const [at, byte] of list) if (at < bytes.length) bytes[at] = byte;
      return bytes;
    });
  }

  it.each([
    ['text', clean],
    ['workbook', workbook],
  ])('%s: whatever happened to the bytes, there is an account and no exception', (_, whole) => {
    fc.assert(
      fc.property(damaged(whole), (bytes) => void account(bytes)),
      { seed: 21, numRuns: 600 },
    );
  });

  it('workbook: whatever happened to its sheet, there is an account and no exception', () => {
    const parts = unzipSync(workbook);
    const sheet = parts['xl/worksheets/sheet0.xml'];
    fc.assert(
      fc.property(damaged(sheet), (bytes) => {
        void account(zipSync({ ...parts, 'xl/worksheets/sheet0.xml': bytes }));
      }),
      { seed: 22, numRuns: 300 },
    );
  });
});
