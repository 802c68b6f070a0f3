import { describe, expect, it } from 'vitest';
import { otherFormat } from '../../lib/season/other-format.ts';
import { readSeason } from '../../lib/season/read-season.ts';
import { problemWords } from '../../lib/words/english-problems.ts';

const text = (start: string) => new TextEncoder().encode(start.padEnd(600));
const bytes = (...start: number[]) => Uint8Array.from([...start, ...new Uint8Array(40)]);

// Signatures: ISO 32000-1 7.5.2, WHATWG MIME Sniffing, RFC 8259, the RTF, PNG, JPEG, GIF and TIFF specifications.
describe('otherFormat', () => {
  it.each([
    ['pdf', text('%PDF-1.7\n%âãÏÓ')],
    ['html', text('\ufeff<!DOCTYPE html>\n<html>')],
    ['html', text('  <html lang="de">')],
    ['json', text('{"crosses": [')],
    ['json', text('[\n  {"cross_id"')],
    ['rtf', text('{\\rtf1\\ansi')],
    ['picture', bytes(0xff, 0xd8, 0xff, 0xe0)],
    ['picture', bytes(0x89, 0x50, 0x4e, 0x47)],
    ['picture', bytes(0, 0, 0, 24, 0x66, 0x74, 0x79, 0x70)],
  ] as const)('tells %s', (format, file) => expect(otherFormat(file)).toBe(format));

  it.each(['cross_id,date', '"{a}",b', '[1] Tag;Datum', '<my list>', 'PDF,no', ''])('lets %j be', (start) =>
    expect(otherFormat(text(start))).toBeNull(),
  );

  it('is told in words, with what to do', () => {
    const [{ problems }] = readSeason([{ name: 'crosses.csv', bytes: text('%PDF-1.7') }]).files;
    expect(problems.map(({ code }) => code)).toEqual(['other-format']);
    expect(problemWords(problems[0]).message).toBe(
      'The file is a PDF document, not a table, whatever it is called.',
    );
  });
});
