import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainRecords } from '../../lib/season/plain-records.ts';
import { anyRecords } from '../../lib/season/records.ts';

describe('plainRecords', () => {
  // csv-parse is the slow, patient second reader.
  it('reads what it reads as csv-parse does, lines counted', () => {
    const piece = fc.constantFrom(
      'a',
      'bb',
      'é',
      ',',
      ';',
      '"',
      '""',
      '\n',
      '\r',
      '\r\n',
      ' ',
      '"a,b"',
      '"a\r\nb"',
      '"c""d"',
    );
    const text = fc.array(piece, { maxLength: 30 }).map((pieces) => pieces.join(''));
    let read = 0;
    fc.assert(
      fc.property(text, fc.constantFrom(',', ';'), fc.constantFrom(undefined, 2), (csv, delimiter, limit) => {
        const plain = plainRecords(csv, delimiter, limit);
        if (plain === null) return;
        read += 1;
        const { records, lines } = anyRecords(csv, delimiter, limit === undefined ? {} : { limit });
        expect(plain).toEqual({ records, lines });
      }),
      { seed: 7, numRuns: 3000 },
    );
    expect(read).toBeGreaterThan(300);
  });

  it('leaves misplaced quotation marks to the patient reader', () => {
    expect(['"a" b,c', '"a', 'x\n"a"b"'].map((text) => plainRecords(text, ','))).toEqual([null, null, null]);
  });

  it('keeps apart texts of one hash, and thousands of texts of one column', () => {
    // "Aa" and "BB" have one hash of the kind 31 h + c.
    const texts = Array.from({ length: 30_000 }, (_, i) => (i % 2 ? `Aa${i >> 1}` : `BB${i >> 1}`));
    const read = plainRecords(texts.join('\n'), ',')!;
    expect(read.records.map(([cell]) => cell)).toEqual(texts);
  });
});

// The files of csv-spectrum, a public set of CSV files with what they mean in JSON.
describe('csv-spectrum', () => {
  const folder = dirname(createRequire(import.meta.url).resolve('csv-spectrum/package.json'));
  const names = readdirSync(join(folder, 'csvs')).map((file) => file.replace('.csv', ''));

  it('is all there', () => expect(names.length).toBeGreaterThanOrEqual(12));

  /** In one pair the JSON is a single object, and has another telephone number than its CSV: that column is left out. */
  const FAULTY = 'Contact Phone Number';

  it.each(names)('%s reads as it is meant, in both readers', (name) => {
    const text = readFileSync(join(folder, 'csvs', `${name}.csv`), 'utf8');
    const meant = [JSON.parse(readFileSync(join(folder, 'json', `${name}.json`), 'utf8'))].flat();
    const comparable = (row: object) => Object.entries(row).filter(([key]) => key !== FAULTY);
    for (const { records } of [plainRecords(text, ',')!, anyRecords(text, ',', {})]) {
      const [header, ...rows] = records;
      const read = rows.map((row) => Object.fromEntries(header.map((key, i) => [key, row[i]])));
      expect(read.map(comparable)).toEqual(meant.map(comparable));
    }
  });
});
