import { describe, expect, it } from 'vitest';
import { linesOf, splitRecords } from '../../lib/season/records.ts';

describe('splitRecords', () => {
  // RFC 4180, section 2, rules 5 to 7.
  it('reads quoted cells with commas, line ends and doubled quotation marks', () => {
    expect(splitRecords('"aaa","b,bb","c""cc"\r\n"zzz","y\r\nyy",xxx\r\n', ',')).toEqual({
      records: [
        ['aaa', 'b,bb', 'c"cc'],
        ['zzz', 'y\r\nyy', 'xxx'],
      ],
      lines: [0, 1],
      quoteOpen: false,
    });
  });

  it('takes CR, LF and CRLF in one file, and keeps empty lines', () => {
    expect(splitRecords('a\rb\nc\r\n\nd', ',').records).toEqual([['a'], ['b'], ['c'], [''], ['d']]);
  });

  it('keeps a stray quotation mark and a record of another length', () => {
    expect(splitRecords('5" pot,x\n"q" z\n', ',').records).toEqual([['5" pot', 'x'], ['"q" z']]);
  });

  it('tells of a quotation mark left open, with the records before it', () => {
    expect(splitRecords('a,b\n"c,d\ne,f', ',')).toEqual({
      records: [['a', 'b']],
      lines: [0],
      quoteOpen: true,
    });
    expect(splitRecords('"c,d\ne,f', ',', { quotes: false }).records).toEqual([
      ['"c', 'd'],
      ['e', 'f'],
    ]);
  });

  it('stops at a limit', () =>
    expect(splitRecords('a\nb\nc', ',', { limit: 2 }).records).toEqual([['a'], ['b']]));
});

describe('linesOf', () => {
  it('counts the line ends inside cells', () => {
    expect([['a', 'b'], ['a\nb'], ['a\r\nb', 'c\rd']].map(linesOf)).toEqual([1, 2, 3]);
  });
});
